// Lists and drawings listen once for all their entries: this says which one was meant.

/** The value of an attribute on the element of an event, or on the nearest one around it
 *  that has the attribute; null where there is none. */
export function attributeAt(event: Event, attribute: string): string | null {
  if (!(event.target instanceof Element)) return null;
  return event.target.closest(`[${attribute}]`)?.getAttribute(attribute) ?? null;
}
