// What controls are made of: a box to type in, a list to choose from, a label.

import { type Children, el, type Props } from "../shared/dom.ts";
import type { Figure } from "../shared/ratesfile.ts";

const PLAIN = /^-?\d+(\.\d+)?$/;
/** A number, or the text itself where it is no number. */
export const asNumber = (text: string): Figure => (PLAIN.test(text) ? Number(text) : text);
export const asText = (value: unknown): string =>
  value === null || value === undefined ? "" : String(value);

/** One box to type in. leave gets its text whenever that was changed. */
export function box(props: Props, value: string, leave: (text: string) => void): HTMLInputElement {
  const node: HTMLInputElement = el("input", {
    autocomplete: "off",
    spellcheck: "false",
    ...props,
    on: { change: () => leave(node.value.trim()) },
  });
  node.value = value;
  return node;
}

/** A label above a control, with a unit or a hint after the control. */
export function labelled(id: string, label: string, node: Children, ...more: Children[]): HTMLDivElement {
  return el("div", { class: "typed" }, el("label", { for: id }, label), node, more);
}

export const unitText = (text: string | undefined): Children => text && el("span", { class: "unit" }, text);

/** A list to choose from. options: keys with their texts. A value that is none of the
 *  keys is listed first, unchanged. */
export function select(
  props: Props,
  options: readonly (readonly [key: string, text: string])[],
  value: unknown,
  leave: (key: string) => void,
): HTMLSelectElement {
  const node: HTMLSelectElement = el(
    "select",
    { ...props, on: { change: () => leave(node.value) } },
    options.map(([key, text]) => el("option", { value: key }, text)),
  );
  if (!options.some(([key]) => key === value))
    node.prepend(el("option", { value: asText(value) }, asText(value) || "(nothing yet)"));
  node.value = asText(value);
  return node;
}
