// The papers of one car. The letter and the changes to agree are made here and shown as they
// are printed; the survey sheet is a view of its own.

import type { CarFile } from "../shared/carfile.ts";
import { encode } from "../shared/carurl.ts";
import { button, type Child, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { EngineReply, ToDoCard } from "../shared/replies.ts";
import { isRefusal } from "../shared/requests.ts";
import { scanCode } from "../shared/scancode.ts";
import { swap } from "../shared/swap.ts";
import type { CarContext, Shop } from "../shared/thiscar/context.ts";
import { Gathered, isDone, type Replies, replyOf, type Wanted } from "../shared/thiscar/gather.ts";
import { letter, letterNeeds } from "../shared/thiscar/letter.ts";
import { Changes, changesNeed, partsNeed } from "./changes.ts";
import { type ChangesHost, changesPick } from "./changespick.ts";
import { changesSheet } from "./changessheet.ts";
import type { OpenCar } from "./opencar.ts";

const PAPERS: readonly (readonly [address: string, name: string])[] = [
  ["papers", "Letter"],
  ["papers/changes", "Changes to agree"],
  ["paper", "Survey sheet"],
];

/** The ways to the papers. Plain links, so that Back works. now: the address of the one that
 *  is shown. */
export function paperLinks(now: string): HTMLElement {
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

export interface PapersHost {
  openCar: OpenCar;
  shop: Shop;
  engine: EngineClient;
}

export class PapersView {
  node = el("div", { class: "papers" });
  #host: PapersHost;
  #letters: Gathered;
  #sheets: Gathered;
  #changes = new Changes();
  #links = el("div", {});
  #print = button("Print", () => print(), { class: "go no-paper", "data-key": "print" });
  #note = el("p", { class: "hint no-paper paper-note" });
  #pick = el("div", {});
  #paper = el("article", { class: "paper-sheet" });

  constructor(host: PapersHost) {
    this.#host = host;
    this.#letters = new Gathered(host.engine);
    this.#sheets = new Gathered(host.engine);
    this.node.append(this.#links, this.#note, this.#print, this.#pick, this.#paper);
  }

  get #context(): CarContext {
    const { openCar, shop } = this.#host;
    return { openCar, opened: shop.opened, q: shop.q };
  }

  /** Another view is shown: nobody waits for what was asked. */
  leave(): void {
    this.#letters.leave();
    this.#sheets.leave();
  }

  /** rest: what follows "papers/" in the address. */
  show(rest: string): void {
    this.leave();
    const changes = rest === "changes";
    this.#links.replaceChildren(paperLinks(changes ? "papers/changes" : "papers"));
    this.#pick.replaceChildren();
    this.#paper.replaceChildren();
    this.#paper.dataset.paper = changes ? "changes" : "letter";
    this.node.dataset.state = "working";
    this.#print.hidden = true;
    if (changes) this.#sheet();
    else this.#letter();
  }

  async #letter(): Promise<void> {
    const { car } = this.#host.openCar;
    const address = await this.#address(car);
    const code = address === null ? null : await scanCode(address).catch(() => null);
    const wanted = letterNeeds(car);
    const draw = (replies: Replies) =>
      this.#draw(letter(this.#context, replies, address, code), repliesTo(wanted, replies));
    draw(this.#letters.about(car));
    if (await this.#letters.fetch(car, wanted, draw)) draw(this.#letters.about(car));
  }

  /** The address of the customer's page with this car, or null where it cannot be made. */
  async #address(car: CarFile): Promise<string | null> {
    const page = location.href.replace(/#.*$/s, "").replace(/survey\/[^/]*$/, "");
    try {
      return page + (await encode(toShare(car, null, this.#host.shop.opened.rates, today())));
    } catch {
      return null;
    }
  }

  async #sheet(): Promise<void> {
    const { car, sheet } = this.#host.openCar;
    this.#changes.about(sheet);
    const draw = () => this.#drawSheet(car);
    draw();
    if (!(await this.#sheets.fetch(car, changesNeed(car), draw))) return;
    if (await this.#sheets.fetch(car, this.#partsNeed(car), draw)) draw();
  }

  #cards(car: CarFile): readonly ToDoCard[] {
    return replyOf(this.#sheets.about(car), "to_do", "to_do")?.cards ?? [];
  }

  #partsNeed(car: CarFile): Wanted[] {
    return partsNeed(car, this.#changes.chosen(this.#cards(car)));
  }

  #drawSheet(car: CarFile): void {
    const replies = this.#sheets.about(car);
    const cards = this.#cards(car);
    const host: ChangesHost = { ...this.#context, redraw: (key) => this.#again(key) };
    if (cards.length > 0) swap(this.#pick, changesPick(host, this.#changes, cards));
    else this.#pick.replaceChildren();
    const wanted = [...changesNeed(car), ...this.#partsNeed(car)];
    this.#draw(changesSheet(this.#context, this.#changes, replies), repliesTo(wanted, replies));
  }

  /** The shop changed what is on the sheet. key: of what was pressed, or null where nothing
   *  new is asked for. */
  #again(key: string | null): void {
    if (key === null) {
      const replies = this.#sheets.about(this.#host.openCar.car);
      this.#draw(changesSheet(this.#context, this.#changes, replies), null);
      return;
    }
    this.#sheet();
  }

  /** replies: all that the paper waits for, or null when nothing new came. */
  #draw(content: readonly Child[], replies: readonly (EngineReply | undefined)[] | null): void {
    this.#paper.replaceChildren(...el("article", {}, content).childNodes);
    if (replies) {
      const broken = replies.some((reply) => reply && isRefusal(reply));
      const whole = replies.every(isDone);
      this.node.dataset.state = whole ? "whole" : broken ? "refused" : "working";
      this.#note.textContent = whole
        ? "Below is the paper as it will be printed."
        : broken
          ? "Something is missing from this paper; it says what."
          : "Still being worked out; what is missing says so.";
      this.#print.hidden = !this.#paper.querySelector(".paper-head");
    }
  }
}

const repliesTo = (wanted: readonly Wanted[], replies: Replies): (EngineReply | undefined)[] =>
  wanted.map(([name]) => replies.get(name));
