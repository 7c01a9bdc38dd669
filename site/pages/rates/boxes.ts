// What controls are made of: a box to type in, a list to choose from, a label.

import { el } from "../shared/dom.ts";

const PLAIN = /^-?\d+(\.\d+)?$/;
export const asNumber = (text) => (PLAIN.test(text) ? Number(text) : text);
export const asText = (value) => (value === null || value === undefined ? "" : String(value));

/** One box to type in. */
export function box(props, value, leave) {
  const node = el("input", {
    autocomplete: "off",
    spellcheck: "false",
    ...props,
    on: { change: () => leave(node.value.trim()) },
  });
  node.value = value;
  return node;
}

/** A label above what it names, with what stands behind and below. */
export function labelled(id, label, node, ...more) {
  return el("div", { class: "typed" }, el("label", { for: id }, label), node, more);
}

export const unitText = (text) => text && el("span", { class: "unit" }, text);

export function select(props, options, value, leave) {
  const node = el(
    "select",
    { ...props, on: { change: () => leave(node.value) } },
    options.map(([key, text]) => el("option", { value: key }, text)),
  );
  if (!options.some(([key]) => key === value))
    node.prepend(el("option", { value: asText(value) }, asText(value) || "(nothing yet)"));
  node.value = asText(value);
  return node;
}
