// One entry of a form with its hint and its error, and groups of them. An amount
// stays as it was typed; the engine says what is wrong with it.

import { el, freshId } from "../shared/dom.ts";

export class Entry {
  node;
  #input;
  #error;
  /** path: where the entry stands in the job, as "said.low". */
  constructor({ path, label, hint, kind = "text", value = "", unit = "", length = 60, required = "" }) {
    this.path = path;
    this.required = required;
    const id = freshId("entry");
    this.#error = el("p", { id: `${id}-error`, class: "error", hidden: true });
    this.#input = el("input", {
      id,
      type: kind === "date" ? "date" : "text",
      inputmode: kind === "money" || kind === "number" ? "decimal" : null,
      autocomplete: "off",
      spellcheck: "false",
      maxlength: kind === "date" ? null : length,
      class: kind,
      "data-path": path,
      "aria-required": required ? "true" : null,
      "aria-describedby": [hint && `${id}-hint`, `${id}-error`].filter(Boolean).join(" "),
    });
    this.#input.value = value;
    this.node = el(
      "div",
      { class: "entry" },
      el("label", { for: id }, label, unit && el("span", { class: "unit" }, `, ${unit}`)),
      hint && el("p", { id: `${id}-hint`, class: "hint" }, hint),
      this.#error,
      this.#input,
    );
  }

  get text() {
    return this.#input.value.trim();
  }
  set text(value) {
    this.#input.value = value;
  }
  focus() {
    this.#input.focus();
  }

  clear() {
    this.#error.hidden = true;
    this.#input.removeAttribute("aria-invalid");
  }

  wrong(text) {
    this.#error.replaceChildren(el("span", { class: "visually-hidden" }, "Error: "), text);
    this.#error.hidden = false;
    this.#input.setAttribute("aria-invalid", "true");
  }
}

export const group = (legend, hint, ...content) =>
  el(
    "fieldset",
    { class: "group" },
    el("legend", {}, legend),
    hint && el("p", { class: "hint" }, hint),
    ...content,
  );

/** A choice with a label. options: [value, text] */
export function choice(label, options, value, hint, changed = () => {}) {
  const id = freshId("choice");
  const select = el(
    "select",
    { id, "aria-describedby": hint ? `${id}-hint` : null, on: { change: () => changed(select.value) } },
    options.map(([v, text]) => el("option", { value: v }, text)),
  );
  select.value = value;
  return {
    select,
    node: el(
      "div",
      { class: "entry" },
      el("label", { for: id }, label),
      hint && el("p", { id: `${id}-hint`, class: "hint" }, hint),
      select,
    ),
  };
}

/** A tick box with its label. */
export function tick(label, on, changed, more = {}) {
  const id = freshId("tick");
  const box = el("input", { id, type: "checkbox", ...more, on: { change: () => changed(box.checked) } });
  box.checked = on;
  return el("div", { class: "tick-line" }, box, el("label", { for: id }, label));
}
