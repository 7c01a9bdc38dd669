// What stands around every screen: the shop, Back, the count of questions, the
// place for bands, the line that is spoken, and the note while loading.

import { el } from "./dom.ts";
import { framed } from "./embedded.ts";

const byId = (id) => document.getElementById(id);
const LOADING_AFTER_MS = 1000;

/** Five questions come before the range; what follows it may be left out. */
const BEFORE_RANGE = 5;
const countOf = (number) =>
  number > BEFORE_RANGE ? "One more (optional)" : `Question ${number} of ${BEFORE_RANGE}`;

export class Frame {
  #bands = new Map();
  #title = document.title;
  #slow = 0;
  #isLoaded = false;
  #size;

  constructor() {
    byId("no-start").remove();
    const [, bytes, ...size] = document.querySelector("meta[name=build]").content.split(" ");
    this.#size = { bytes: Number(bytes), text: size.join(" ") };
    this.#slow = setTimeout(() => {
      if (!this.#isLoaded) byId("loading").hidden = false;
    }, LOADING_AFTER_MS);
    byId("loading-text").textContent =
      `Getting the sums ready${this.#size.text ? `: ${this.#size.text}` : ""}, once only.`;
    byId("top").hidden = false;
  }

  /** Engine bytes so far. */
  loading(bytes) {
    const bar = byId("loading-bar");
    if (this.#size.bytes) {
      bar.max = this.#size.bytes;
      bar.value = bytes;
    }
  }

  loaded() {
    this.#isLoaded = true;
    clearTimeout(this.#slow);
    byId("loading").hidden = true;
  }

  shop({ shop, rates }) {
    byId("shop-name").textContent =
      shop.invented && !/invented/.test(shop.name) ? `${shop.name} (an invented shop)` : shop.name;
    byId("rates-line").textContent = rates.line;
    byId("check-code").textContent = `Rates check code ${rates.check_code}`;
    const contact = byId("contact");
    const safe = /^(mailto:|tel:|https:)/.test(shop.contact_href ?? "");
    contact.replaceChildren(
      safe ? el("a", { href: shop.contact_href, rel: "noopener" }, shop.contact_text) : shop.contact_text,
    );
  }

  /** What the build wrote there holds for no figure. */
  withoutRates() {
    byId("rates-line").textContent = "";
  }

  onBack(act) {
    byId("back").addEventListener("click", act);
  }

  step(step, number, changing) {
    document.body.dataset.step = step;
    byId("back").hidden = step === "body";
    const count = number && !changing ? countOf(number) : "";
    byId("count").textContent = count;
    this.#count = count && `${count}: `;
    delete document.body.dataset.range;
  }
  #count = "";

  /** Draws the screen; moves the focus to its heading unless it is the first. */
  content(main, notes, moved) {
    byId("screen").replaceChildren(...[main, notes].filter(Boolean));
    byId("effect").replaceChildren();
    const heading = byId("screen").querySelector("h1");
    byId("range-title").hidden = document.body.dataset.step !== "range";
    const focus = heading ?? byId("range-title");
    document.title = `${this.#count}${focus.textContent} | ${this.#title}`;
    // A frame as tall as its content cannot scroll: the page around it has to.
    if (moved) {
      scrollTo(0, 0);
      focus.focus({ preventScroll: !framed });
    }
  }

  /** What the last answer did, beside the question. */
  effect(node, put) {
    const box = byId("effect");
    if (!node) box.replaceChildren();
    else if (put) put(box, node);
    else box.replaceChildren(node);
  }

  waiting(on) {
    byId("waiting").hidden = !on;
  }

  /** One band of each kind; null takes it away. */
  put(kind, node) {
    this.#bands.get(kind)?.remove();
    this.#bands.delete(kind);
    if (!node) return;
    this.#bands.set(kind, node);
    byId("bands").append(node);
  }

  say(text) {
    byId("status").textContent = text;
  }

  connection(off) {
    byId("offline").textContent = off
      ? `No connection: everything still works. ${byId("rates-line").textContent}`
      : "";
  }
}
