// The pages of the talk as addresses after the "#", one idea each: Next, Back,
// the arrow keys and Space. Nothing moves on by itself.

import { button, el } from "../shared/dom.ts";

const byId = (id) => document.getElementById(id);

export class Talk {
  #pages;
  #host;
  #now = null;
  #back = button("Back", () => this.#turn(-1), { class: "big", "data-key": "back" });
  #next = button("Next", () => this.#turn(1), { class: "big go", "data-key": "next" });
  #count = el("p", { class: "page-count" });
  #nav = el("nav", { class: "turn", "aria-label": "Pages" }, this.#back, this.#count, this.#next);

  /** pages: {id, title, line, node, needs, draw(replies), act?(), focus?};
   *  host: replies(), seen(page) when a page is opened */
  constructor(pages, host) {
    this.#pages = pages;
    this.#host = host;
    addEventListener("keydown", (event) => this.#key(event));
  }

  get running() {
    return this.#now !== null;
  }

  #place() {
    const id = location.hash.slice(1);
    return this.#pages.find((p) => p.id === id) ?? this.#pages[0];
  }

  /** The page of the address. focus: where a reader goes on. */
  show({ focus = true, first = false } = {}) {
    const page = this.#place();
    this.#now = page;
    const at = this.#pages.indexOf(page);
    const h1 = el("h1", { tabindex: "-1" }, page.title);
    byId("screen").replaceChildren(h1, el("p", { class: "say" }, page.line), page.node, this.#nav);
    document.body.dataset.page = page.id;
    document.title = `${page.title} | Why so wide`;
    this.#count.textContent = `${at + 1} of ${this.#pages.length}`;
    this.#back.hidden = at === 0;
    this.#next.hidden = at === this.#pages.length - 1;
    this.#host.seen(page);
    page.draw(this.#host.replies());
    if (first && page.focus) page.focus.focus({ preventScroll: true });
    else if (focus) {
      scrollTo(0, 0);
      h1.focus({ preventScroll: true });
    }
  }

  /** No car is in hand: nothing of the talk is shown. */
  put() {
    this.#now = null;
    byId("screen").replaceChildren();
    delete document.body.dataset.page;
  }

  /** Something new came from the engine. */
  drawn() {
    this.#now?.draw(this.#host.replies());
  }

  #turn(by) {
    const next = this.#pages[this.#pages.indexOf(this.#now) + by];
    if (next) location.hash = next.id;
  }

  /** Keys that a control of the page wants for itself stay with it. */
  #key(event) {
    if (
      !this.#now ||
      event.defaultPrevented ||
      event.ctrlKey ||
      event.altKey ||
      event.metaKey ||
      event.shiftKey
    )
      return;
    const own = (names) => event.target instanceof Element && event.target.closest(names);
    if (own("input, select, textarea, summary")) return;
    if (event.key === "ArrowRight") this.#turn(1);
    else if (event.key === "ArrowLeft") this.#turn(-1);
    else if (event.key === " " && !own("button, a")) {
      if (!this.#now.act?.()) this.#turn(1);
    } else return;
    event.preventDefault();
  }
}
