// Puts new content into a box and leaves the focus and what is unfolded as they are, for
// whoever is working there.

import type { Child } from "./dom.ts";

const NAMES = ["data-entry", "data-find", "data-act", "data-whole", "data-key", "href"];

/** A selector that finds the same element in the new content, or null. */
function selectorOf(node: Element): string | null {
  for (const name of NAMES) {
    const value = node.getAttribute(name);
    if (value !== null) return `[${name}="${CSS.escape(value)}"]`;
  }
  return null;
}

export function swap(box: HTMLElement, ...content: (Child | readonly Child[])[]): void {
  const active = document.activeElement;
  const selector = active && box.contains(active) ? selectorOf(active) : null;
  const open = new Set([...box.querySelectorAll("details[open]")].map((d) => d.className));
  box.replaceChildren(...content.flat().flatMap((child) => (child ? [nodeOf(child)] : [])));
  for (const fold of box.querySelectorAll<HTMLDetailsElement>("details[data-stays]"))
    if (open.has(fold.className)) fold.open = true;
  if (selector) box.querySelector<HTMLElement>(selector)?.focus({ preventScroll: true });
}

const nodeOf = (child: NonNullable<Child>): Node | string => (child instanceof Node ? child : String(child));
