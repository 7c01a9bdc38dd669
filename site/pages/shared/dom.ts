// Building elements. Text always goes in as text, never as markup.

const SVG = "http://www.w3.org/2000/svg";

/** What an element may hold: nothing stands for itself left out. */
export type Child = Node | string | number | null | undefined | false;
export type Children = Child | readonly Children[];

type Listener = (event: never) => unknown;

/** Attributes by name; true gives one without a value, nothing none. on: listeners by
 *  the name of their event. */
export interface Props {
  on?: Record<string, Listener | undefined>;
  [attribute: string]: string | number | boolean | null | undefined | Record<string, Listener | undefined>;
}

function fill<E extends Element>(node: E, props: Props, children: readonly Children[]): E {
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === null || value === false) continue;
    if (typeof value === "object") {
      for (const [event, listener] of Object.entries(value)) {
        if (listener) node.addEventListener(event, listener as EventListener);
      }
    } else node.setAttribute(name, value === true ? "" : String(value));
  }
  append(node, children);
  return node;
}

function append(node: Element, children: readonly Children[]): void {
  for (const child of children) {
    if (Array.isArray(child)) append(node, child);
    else if (child instanceof Node || typeof child === "number") node.append(child as Node | string);
    else if (typeof child === "string" && child !== "") node.append(child);
  }
}

/** el("p", {class: "x"}, "text", otherNode, null) */
export function el<K extends keyof HTMLElementTagNameMap>(
  name: K,
  props: Props = {},
  ...children: Children[]
): HTMLElementTagNameMap[K] {
  return fill(document.createElement(name), props, children);
}

export function svg<K extends keyof SVGElementTagNameMap>(
  name: K,
  props: Props = {},
  ...children: Children[]
): SVGElementTagNameMap[K] {
  return fill(document.createElementNS(SVG, name), props, children);
}

/** A button that acts. */
export function button(
  text: Children,
  act: (event: MouseEvent) => unknown,
  props: Props = {},
): HTMLButtonElement {
  return el("button", { type: "button", ...props, on: { click: act } }, text);
}

export function list(items: readonly Children[], props: Props = {}): HTMLUListElement {
  return el(
    "ul",
    props,
    items.map((item) => el("li", {}, item)),
  );
}

/** Numbers for ids that tie labels to what they label. */
let last = 0;
export function freshId(stem: string): string {
  return `${stem}-${++last}`;
}

/** A word explained where it is first met: one press, and nothing on paper. */
export function what(question: string, text: string): HTMLDetailsElement {
  return el("details", { class: "what" }, el("summary", {}, question), el("p", {}, text));
}

/** An element of the page's own markup; a page without it is a mistake of ours. */
export function byId(id: string): HTMLElement {
  const node = document.getElementById(id);
  if (!node) throw new Error(`the page has no element "${id}"`);
  return node;
}
