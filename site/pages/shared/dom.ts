// Building elements. Text always goes in as text, never as markup.

const SVG = "http://www.w3.org/2000/svg";

function fill(node, props, children) {
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === null || value === false) continue;
    if (name === "on") {
      for (const [event, listener] of Object.entries(value)) node.addEventListener(event, listener);
    } else node.setAttribute(name, value === true ? "" : String(value));
  }
  for (const child of children.flat(2)) {
    if (child === undefined || child === null || child === false || child === "") continue;
    node.append(child);
  }
  return node;
}

/** el("p", {class: "x"}, "text", otherNode, null) */
export function el(name, props = {}, ...children) {
  return fill(document.createElement(name), props, children);
}

export function svg(name, props = {}, ...children) {
  return fill(document.createElementNS(SVG, name), props, children);
}

/** A button that acts. */
export function button(text, act, props = {}) {
  return el("button", { type: "button", ...props, on: { click: act } }, text);
}

export function list(items, props = {}) {
  return el("ul", props, items.map((item) => el("li", {}, item)));
}

/** Numbers for ids that tie labels to what they label. */
let last = 0;
export function freshId(stem) { return `${stem}-${++last}`; }

/** A word explained where it is first met: one press, and nothing on paper. */
export function what(question, text) {
  return el("details", { class: "what" }, el("summary", {}, question), el("p", {}, text));
}
