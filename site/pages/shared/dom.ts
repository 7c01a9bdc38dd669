// Building elements. Text always becomes text, never markup.

const SVG = "http://www.w3.org/2000/svg";

/** What an element may hold. A null, undefined or false child is left out. */
export type Child = Node | string | number | null | undefined | false;
export type Children = Child | readonly Children[];

/** Listeners by the name of their event. */
export type Listeners = {
  [K in keyof HTMLElementEventMap]?: ((event: HTMLElementEventMap[K]) => unknown) | undefined;
};

/** Attributes by name. The value true gives an attribute without a value; false, null and
 *  undefined leave the attribute out. */
export interface Props {
  on?: Listeners;
  [attribute: string]: string | number | boolean | null | undefined | Listeners;
}

function fill<E extends Element>(node: E, props: Props, children: readonly Children[]): E {
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === null || value === false) continue;
    if (typeof value === "object") {
      for (const [event, listener] of Object.entries(value)) {
        // Listeners ties each name to the kind of its event; Object.entries forgets that.
        if (listener) node.addEventListener(event, listener as EventListener);
      }
    } else node.setAttribute(name, value === true ? "" : String(value));
  }
  append(node, children);
  return node;
}

function append(node: Element, children: Children): void {
  if (isList(children)) for (const child of children) append(node, child);
  else if (typeof children === "number") node.append(String(children));
  else if (children) node.append(children);
}

const isList = (children: Children): children is readonly Children[] => Array.isArray(children);

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

let last = 0;
/** A new id that begins with stem, to tie a label to what it labels. */
export function freshId(stem: string): string {
  return `${stem}-${++last}`;
}

/** Explains a word where it first appears: it opens with one press and is not printed. */
export function what(question: string, text: string): HTMLDetailsElement {
  return el("details", { class: "what" }, el("summary", {}, question), el("p", {}, text));
}

/** An element that the page's own markup always has. Throws if it is missing, because then
 *  the page and its script do not belong together. */
export function byId(id: string): HTMLElement {
  const node = document.getElementById(id);
  if (!node) throw new Error(`the page has no element "${id}"`);
  return node;
}

/** The value of an attribute on the element of an event, or on the nearest one around it that
 *  has the attribute; null where there is none. For lists that listen once for all entries. */
export function attributeAt(event: Event, attribute: string): string | null {
  if (!(event.target instanceof Element)) return null;
  return event.target.closest(`[${attribute}]`)?.getAttribute(attribute) ?? null;
}
