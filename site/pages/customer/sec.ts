// A section of the page with the range: its head, which is in the margin where the window is
// wide enough, and beside it the content.

import { type Children, el } from "../shared/dom.ts";

/** name: the class for styles and tests. id: of the head. */
export function sec(name: string, id: string, head: string, ...content: Children[]): HTMLElement {
  return el(
    "section",
    { class: `sec ${name}`, "aria-labelledby": id },
    el("h2", { id }, head),
    el("div", { class: "sec-in" }, ...content),
  );
}
