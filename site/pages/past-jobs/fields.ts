// One entry of a form with its hint and its error, and groups of entries. An amount stays as
// it was typed; the engine says what is wrong with it.

import { type Children, el, freshId, type Props } from "../shared/dom.ts";

export interface EntryProps {
  /** Where the entry is in the job, such as "said.low". */
  path: string;
  label: string;
  hint?: string;
  kind?: "text" | "date" | "money" | "number";
  value?: string;
  unit?: string;
  /** The most characters that can be typed. */
  length?: number;
  /** What to say when it is empty; "" where it may be. */
  required?: string;
}

export class Entry {
  node: HTMLElement;
  path: string;
  required: string;
  /** The text at the beginning. */
  first: string;
  #input: HTMLInputElement;
  #error: HTMLElement;

  constructor(props: EntryProps) {
    const { path, label, hint, kind = "text", value = "", unit = "", length = 60, required = "" } = props;
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
    this.first = this.text;
    this.node = el(
      "div",
      { class: "entry" },
      el("label", { for: id }, label, unit && el("span", { class: "unit" }, `, ${unit}`)),
      hint && el("p", { id: `${id}-hint`, class: "hint" }, hint),
      this.#error,
      this.#input,
    );
  }

  get text(): string {
    return this.#input.value.trim();
  }
  focus(): void {
    this.#input.focus();
  }

  clear(): void {
    this.#error.hidden = true;
    this.#input.removeAttribute("aria-invalid");
  }

  wrong(text: string): void {
    this.#error.replaceChildren(el("span", { class: "visually-hidden" }, "Error: "), text);
    this.#error.hidden = false;
    this.#input.setAttribute("aria-invalid", "true");
  }
}

export const group = (legend: string, hint: string, ...content: Children[]): HTMLFieldSetElement =>
  el(
    "fieldset",
    { class: "group" },
    el("legend", {}, legend),
    hint && el("p", { class: "hint" }, hint),
    ...content,
  );

/** A list to choose from, with a label. changed: called with the value that is chosen. */
export function choice(
  label: string,
  options: readonly (readonly [value: string, text: string])[],
  value: string,
  hint: string,
  changed: (value: string) => void = () => {},
): { select: HTMLSelectElement; node: HTMLElement } {
  const id = freshId("choice");
  const select: HTMLSelectElement = el(
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
export function tick(
  label: Children,
  on: boolean,
  changed: (on: boolean) => void,
  more: Props = {},
): HTMLElement {
  const id = freshId("tick");
  const box: HTMLInputElement = el("input", {
    id,
    type: "checkbox",
    ...more,
    on: { change: () => changed(box.checked) },
  });
  box.checked = on;
  return el("div", { class: "tick-line" }, box, el("label", { for: id }, label));
}
