// The pages of the talk, one idea each, at addresses after the "#". Next, Back, the arrow
// keys and Space turn them; no page turns by itself.

import { button, byId, el } from "../shared/dom.ts";
import type { Replies } from "../shared/thiscar/gather.ts";
import type { Need } from "./sums.ts";

export interface TalkPage {
  readonly id: string;
  readonly title: string;
  readonly line: string;
  readonly node: HTMLElement;
  /** The request that the page waits for. */
  readonly needs: Need | null;
  /** Where a reader begins when the talk begins with this page. */
  readonly focus?: HTMLElement;
  draw(replies: Replies): void;
  /** What Space does on this page; false when it is to turn the page. */
  act?(): boolean;
}

export interface TalkHost {
  replies(): Replies;
  /** A page was opened. */
  seen(page: TalkPage): void;
}

export class Talk {
  #pages: readonly TalkPage[];
  #host: TalkHost;
  #now: TalkPage | null = null;
  #back = button("Back", () => this.#turn(-1), { class: "big", "data-key": "back" });
  #next = button("Next", () => this.#turn(1), { class: "big go", "data-key": "next" });
  #count = el("p", { class: "page-count" });
  #nav = el("nav", { class: "turn", "aria-label": "Pages" }, this.#back, this.#count, this.#next);

  constructor(pages: readonly [TalkPage, ...TalkPage[]], host: TalkHost) {
    this.#pages = pages;
    this.#host = host;
    addEventListener("keydown", (event) => this.#key(event));
  }

  /** Shows the page of the address. focus: moves the focus to where a reader goes on;
   *  first: the talk begins. */
  show({ focus = true, first = false }: { focus?: boolean; first?: boolean } = {}): void {
    const id = location.hash.slice(1);
    const at = Math.max(
      0,
      this.#pages.findIndex((p) => p.id === id),
    );
    const page = this.#pages[at];
    if (!page) return;
    this.#now = page;
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

  /** A reply came from the engine. */
  drawn(): void {
    this.#now?.draw(this.#host.replies());
  }

  #turn(by: number): void {
    if (!this.#now) return;
    const next = this.#pages[this.#pages.indexOf(this.#now) + by];
    if (next) location.hash = next.id;
  }

  /** Leaves to a control of the page the keys that the control uses. */
  #key(event: KeyboardEvent): void {
    if (
      !this.#now ||
      event.defaultPrevented ||
      event.ctrlKey ||
      event.altKey ||
      event.metaKey ||
      event.shiftKey
    )
      return;
    const within = (names: string) => event.target instanceof Element && event.target.closest(names);
    if (within("input, select, textarea, summary")) return;
    if (event.key === "ArrowRight") this.#turn(1);
    else if (event.key === "ArrowLeft") this.#turn(-1);
    else if (event.key === " " && !within("button, a")) {
      if (!this.#now.act?.()) this.#turn(1);
    } else return;
    event.preventDefault();
  }
}
