// The papers of one car: the letter and the changes to agree are made here and
// shown as they are printed; the survey sheet is a view of its own.

import { encode } from "../shared/carurl.ts";
import { button, el } from "../shared/dom.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import { scanCode } from "../shared/scancode.ts";
import { swap } from "../shared/swap.ts";
import { fit } from "../shared/thiscar/fit.ts";
import { Gathered, isDone } from "../shared/thiscar/gather.ts";
import { letter, letterNeeds } from "../shared/thiscar/letter.ts";
import { Changes, changesNeed, changesPick, changesSheet, partsNeed } from "./changes.ts";

const PAPERS = [
  ["papers", "Letter"],
  ["papers/changes", "Changes to agree"],
  ["paper", "Survey sheet"],
];

/** Which of the papers is looked at: plain links, so that Back works. */
export function paperLinks(now) {
  return el(
    "nav",
    { class: "paper-links no-paper", "aria-label": "Papers" },
    el(
      "ul",
      { class: "steps" },
      PAPERS.map(([address, name]) =>
        el("li", {}, el("a", { href: `#${address}`, "aria-current": address === now ? "page" : null }, name)),
      ),
    ),
  );
}

export class PapersView {
  node = el("div", { class: "papers" });
  #host;
  #letters;
  #sheets;
  #changes = new Changes();
  #links = el("div", {});
  #print = button("Print", () => print(), { class: "go no-paper", "data-key": "print" });
  #note = el("p", { class: "hint no-paper paper-note" });
  #pick = el("div", {});
  #paper = el("article", { class: "paper-sheet" });
  #now = "letter";

  /** host: job, shop, link, frame */
  constructor(host) {
    this.#host = host;
    this.#letters = new Gathered(host.link);
    this.#sheets = new Gathered(host.link);
    this.node.append(this.#links, this.#note, this.#print, this.#pick, this.#paper);
    addEventListener("beforeprint", () => {
      if (this.node.isConnected) fit(this.#paper);
    });
  }

  get #given() {
    const { job, shop } = this.#host;
    return { job, opened: shop.opened, q: shop.q, redraw: (key) => this.#again(key) };
  }

  leave() {
    this.#letters.leave();
    this.#sheets.leave();
  }

  /** rest: what follows "papers/" in the address. */
  show(rest) {
    this.leave();
    this.#now = rest === "changes" ? "changes" : "letter";
    this.#links.replaceChildren(paperLinks(this.#now === "changes" ? "papers/changes" : "papers"));
    this.#pick.replaceChildren();
    this.#paper.replaceChildren();
    this.#paper.dataset.paper = this.#now;
    this.node.dataset.state = "working";
    this.#print.hidden = true;
    if (this.#now === "letter") this.#letter();
    else this.#sheet();
  }

  async #letter() {
    const { car } = this.#host.job;
    const address = await this.#address(car);
    const code = address && (await scanCode(address).catch(() => null));
    const draw = (replies) =>
      this.#draw(
        letter(this.#given, replies, address, code),
        letterNeeds(car).map(([name]) => replies.get(name)),
      );
    draw(this.#letters.about(car));
    if (await this.#letters.fetch(car, letterNeeds(car), draw)) draw(this.#letters.about(car));
  }

  /** The customer's page with this car in it, or null where it cannot be made. */
  async #address(car) {
    const page = location.href.split("#")[0].replace(/survey\/[^/]*$/, "");
    try {
      return page + (await encode(toShare(car, null, this.#host.shop.opened.rates, today())));
    } catch {
      return null;
    }
  }

  async #sheet() {
    const { car, sheet } = this.#host.job;
    this.#changes.about(sheet);
    const draw = () => this.#drawSheet();
    draw();
    if (!(await this.#sheets.fetch(car, changesNeed(car), draw))) return;
    const cards = this.#sheets.about(car).get("to_do")?.cards ?? [];
    if (await this.#sheets.fetch(car, partsNeed(car, this.#changes.chosen(cards)), draw)) draw();
  }

  #drawSheet() {
    const { car } = this.#host.job;
    const replies = this.#sheets.about(car);
    const cards = replies.get("to_do")?.cards ?? [];
    const wanted = [...changesNeed(car), ...partsNeed(car, this.#changes.chosen(cards))].map(([name]) =>
      replies.get(name),
    );
    if (cards.length > 0) swap(this.#pick, changesPick(this.#given, this.#changes, cards));
    else this.#pick.replaceChildren();
    this.#draw(changesSheet(this.#given, this.#changes, replies), wanted);
  }

  /** The shop changed what stands on the sheet. key: where the focus stays. */
  #again(key) {
    if (key === null) {
      this.#draw(changesSheet(this.#given, this.#changes, this.#sheets.about(this.#host.job.car)), null);
      return;
    }
    this.#sheet();
  }

  /** replies: all that the paper waits for, or null when nothing new came. */
  #draw(content, replies) {
    this.#paper.replaceChildren(...content.flat(3).filter(Boolean));
    if (replies) {
      const broken = replies.some((r) => r?.kind === "refused" || r?.kind === "broken");
      const whole = replies.every(isDone);
      this.node.dataset.state = whole ? "whole" : broken ? "refused" : "working";
      this.#note.textContent = whole
        ? "Below is the paper as it will be printed."
        : broken
          ? "Something is missing from this paper; it says what."
          : "Still being worked out; what is missing says so.";
      this.#print.hidden = !this.#paper.querySelector(".paper-head");
    }
    if (this.node.dataset.state !== "working") fit(this.#paper);
  }
}
