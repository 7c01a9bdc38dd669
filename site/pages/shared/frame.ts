// What is around every screen: the shop, Back, the count of questions, the place for bands,
// the line that is spoken, and the note while loading.

import { buildLine } from "./address.ts";
import { byId, el } from "./dom.ts";
import { framed } from "./embedded.ts";
import type { OpenedReply } from "./replies.ts";

const LOADING_AFTER_MS = 1000;

/** Five questions come before the range; the customer may skip those after it. */
const BEFORE_RANGE = 5;
export const countOf = (number: number): string =>
  number > BEFORE_RANGE ? "One more (optional)" : `Question ${number} of ${BEFORE_RANGE}`;

export class Frame {
  #bands = new Map<string, HTMLElement>();
  #title = document.title;
  #slow = 0;
  #isLoaded = false;
  /** The bytes of the engine, 0 where the build does not tell them. */
  #bytes: number;
  #count = "";

  constructor() {
    byId("no-start").remove();
    const [, bytes, ...words] = buildLine().split(" ");
    const size = words.join(" ");
    this.#bytes = Number(bytes) || 0;
    this.#slow = setTimeout(() => {
      if (!this.#isLoaded) byId("loading").hidden = false;
    }, LOADING_AFTER_MS);
    byId("loading-text").textContent = `Getting the sums ready${size ? `: ${size}` : ""}, once only.`;
    byId("top").hidden = false;
  }

  /** bytes: how many of the engine have come so far. */
  loading(bytes: number): void {
    const bar = byId("loading-bar");
    if (this.#bytes && bar instanceof HTMLProgressElement) {
      bar.max = this.#bytes;
      bar.value = bytes;
    }
  }

  loaded(): void {
    this.#isLoaded = true;
    clearTimeout(this.#slow);
    byId("loading").hidden = true;
  }

  shop({
    shop,
    rates,
    words,
    figures_code: figures,
  }: Pick<OpenedReply, "shop" | "rates" | "words" | "figures_code">): void {
    document.documentElement.lang = words === "uk" ? "en-GB" : "en-US";
    byId("shop-name").textContent =
      shop.invented && !/invented/.test(shop.name) ? `${shop.name} (an invented shop)` : shop.name;
    this.#ratesLine(rates.line);
    byId("check-code").textContent = `Rates check code ${rates.check_code}`;
    byId("figures-code").textContent = `Figures code ${figures}`;
    const safe = /^(mailto:|tel:|https:)/.test(shop.contact_href ?? "");
    byId("contact").replaceChildren(
      safe ? el("a", { href: shop.contact_href, rel: "noopener" }, shop.contact_text) : shop.contact_text,
    );
  }

  /** Without figures the line of rates that the build wrote into the page is not true. */
  withoutRates(): void {
    this.#ratesLine("");
  }

  /** At the head, and at the foot for a phone, which has no room at the head. */
  #ratesLine(text: string): void {
    for (const id of ["rates-line", "rates-foot"]) byId(id).textContent = text;
  }

  onBack(act: () => unknown): void {
    byId("back").addEventListener("click", act);
  }

  /** number: of the question, where the step asks one. changing: the customer came from the
   *  range to change one answer, so no count is shown. */
  step(step: string, number?: number, changing = false): void {
    document.body.dataset.step = step;
    byId("back").hidden = step === "body";
    const count = number && !changing ? countOf(number) : "";
    byId("count").textContent = count;
    this.#count = count && `${count}: `;
    delete document.body.dataset.range;
  }

  /** Draws the screen. moved: the visitor came here by a step, so the focus goes to the
   *  heading of the screen. */
  content(main: HTMLElement | null, moved: boolean): void {
    const screen = byId("screen");
    screen.replaceChildren(...(main ? [main] : []));
    byId("effect").replaceChildren();
    byId("range-title").hidden = document.body.dataset.step !== "range";
    const focus =
      screen.querySelector<HTMLElement>("#question-title") ??
      screen.querySelector("h1") ??
      byId("range-title");
    document.title = `${this.#count}${focus.textContent} | ${this.#title}`;
    // A frame that is as tall as its content cannot scroll: the page around it has to.
    if (moved) {
      scrollTo(0, 0);
      focus.focus({ preventScroll: !framed });
    }
  }

  /** What the last answer changed, beside the question. put: how the node gets into its box. */
  effect(node: HTMLElement | null, put?: (box: HTMLElement, node: HTMLElement) => unknown): void {
    const box = byId("effect");
    if (!node) box.replaceChildren();
    else if (put) put(box, node);
    else box.replaceChildren(node);
  }

  waiting(on: boolean): void {
    byId("waiting").hidden = !on;
  }

  /** Shows one band of each kind; null removes it. */
  put(kind: string, node: HTMLElement | null): void {
    this.#bands.get(kind)?.remove();
    this.#bands.delete(kind);
    if (!node) return;
    this.#bands.set(kind, node);
    byId("bands").append(node);
  }

  /** Has a screen reader say a text. */
  say(text: string): void {
    byId("status").textContent = text;
  }

  connection(off: boolean): void {
    byId("offline").textContent = off
      ? `No connection: everything still works. ${byId("rates-line").textContent}`
      : "";
  }
}
