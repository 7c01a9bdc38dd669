// Survey and opening up: the list with its cursor, the six words, the part in hand and the
// drawing. Each press is one act, and the page asks nothing back.

import { el } from "../shared/dom.ts";
import { swap } from "../shared/swap.ts";
import { Drawing } from "../shared/thiscar/drawn.ts";
import { standing } from "../shared/thiscar/record.ts";
import { Acts } from "./acts.ts";
import { Cursor } from "./cursor.ts";
import { Grid } from "./grid.ts";
import { Hand } from "./hand.ts";
import { type Act, actOf } from "./keys.ts";
import { type AddressOf, listFoot, listHead, zoneLinks } from "./listparts.ts";
import { lookAgainLine } from "./lookagain.ts";
import type { OpenCar } from "./opencar.ts";
import { cellOf, itemOf } from "./partwords.ts";

export interface ListHost {
  say(text: string): void;
  /** Shows the table of keys. */
  help(): void;
  /** Whether the shop is in the UK. */
  uk(): boolean;
  address: AddressOf;
  /** The cursor went to another group. */
  moved(group: string): void;
  /** Something about a part was recorded; null where the part is not known. */
  recorded(on: string | null): void;
}

const box = (name: string) => el("div", { class: `survey-${name}` });

export class ListView {
  node = el("div", { class: "survey" });
  #openCar: OpenCar;
  #host: ListHost;
  #grid: Grid;
  #drawing: Drawing;
  #acts: Acts;
  #hand: Hand;
  #cursor: Cursor;
  #head = box("head");
  #list = box("list");
  #picture = box("picture");
  #links = box("groups");
  #foot = el("div", {});

  constructor(openCar: OpenCar, host: ListHost) {
    this.#openCar = openCar;
    this.#host = host;
    this.#cursor = new Cursor(openCar);
    this.#grid = new Grid({
      cell: (on) => cellOf(openCar, on),
      stand: (on) => this.stand(on),
      key: (event) => this.#key(event),
    });
    this.#drawing = new Drawing({
      condition: (on) => standing(openCar.car, on)?.condition ?? null,
      tap: (on) => this.#go(on),
    });
    this.#acts = new Acts(openCar, {
      say: host.say,
      refuse: (text) => this.#refuse(text),
      stand: (on) => this.#go(on),
      done: (on) => this.#done(on),
      next: (on) => this.#next(on),
    });
    this.#hand = new Hand(openCar, {
      act: (...act) => this.act(...act),
      go: (on) => this.#go(on),
      text: (on, name, value) => this.#acts.text(on, name, value),
    });
    this.#list.append(this.#grid.node, this.#foot);
    this.node.append(
      el(
        "p",
        { class: "on-paper" },
        "One part of the survey. All of it is on the survey sheet, under Papers.",
      ),
      this.#head,
      this.#list,
      this.#hand.words,
      this.#hand.now,
      this.#hand.more,
      this.#picture,
      this.#links,
    );
  }

  /** The part in hand. */
  get at(): string {
    return this.#cursor.at;
  }
  get opening(): boolean {
    return this.#cursor.opening;
  }

  /** Shows the list, at a group and at a part of it where they are given. */
  show(opening: boolean, groupId: string, focus: boolean, on: string | null = null): void {
    const { sheet } = this.#openCar;
    this.#cursor.begin(opening, groupId, on);
    this.#hand.begin();
    this.#picture.replaceChildren(this.#drawing.node);
    this.#drawing.show(sheet.drawing, sheet.conditions).then(
      () => this.#drawing.outline(this.at),
      () => {
        this.#picture.replaceChildren(
          el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."),
        );
      },
    );
    this.#draw(focus);
  }

  #draw(focus: boolean): void {
    const { opening, group, rows, at } = this.#cursor;
    this.node.classList.toggle("is-opening", opening);
    const sides = this.#host.uk() ? ["LEFT (nearside)", "RIGHT (offside)"] : ["LEFT", "RIGHT"];
    this.#grid.draw({
      label: opening ? "Closed boxes" : group.name,
      heads: opening ? ["Recorded"] : sides,
      rows,
      at,
      hint: "Arrow keys move. The first letter of a word records it. The question mark shows all keys.",
    });
    if (focus) this.#grid.focus();
    this.#foot.replaceChildren(listFoot(this.#openCar, this, opening));
    this.counted();
    this.#showHand();
  }

  /** Shows the counts, as the engine last gave them. */
  counted(): void {
    if (this.#cursor.groups.length === 0) return;
    const { opening, groups, group, at } = this.#cursor;
    const { tally } = this.#openCar;
    swap(this.#head, !opening && listHead(this.#openCar, groups, group, this.#host.address));
    swap(this.#links, !opening && zoneLinks(this.#openCar, groups, group, this.#host.address));
    this.#lookAgain();
    const zone = tally?.zones.find((z) => z.id === group.id);
    const rest = this.#list.querySelector<HTMLButtonElement>("[data-rest]");
    if (rest) {
      rest.textContent = zone?.rest_line ?? "Rest of the seen parts here: sound";
      rest.disabled = !zone?.seen_left;
    }
    this.#grid.refresh();
    this.#hand.counted(at);
  }

  #showHand(): void {
    this.#hand.show(this.at);
    this.#drawing.outline(this.at);
  }

  /** Goes to an item of this group. */
  stand(on: string, focus = this.#grid.hasFocus): void {
    if (on === this.at) return;
    this.#hand.reset();
    this.#cursor.at = on;
    // The panel is drawn first, so that the list then scrolls clear of it.
    this.#showHand();
    this.#grid.stand(on, focus);
  }

  /** Goes to an item anywhere in the list. */
  #go(on: string, focus = this.#grid.hasFocus): void {
    const target = this.#cursor.groupWith(on);
    if (!target) return;
    if (target === this.#cursor.group || this.opening) {
      this.stand(on, focus);
      return;
    }
    this.#hand.reset();
    this.#cursor.at = on;
    this.#draw(focus);
    this.#host.moved(target.id);
  }

  #next(on: string): void {
    const next = this.#cursor.after(on);
    if (next) this.#go(next);
    else this.#host.say("That was the last part of the list.");
  }

  #lookAgain(): void {
    const place = this.#foot.querySelector<HTMLElement>("[data-again]");
    if (place)
      swap(
        place,
        lookAgainLine(this.#openCar, (on) => this.#go(on, true)),
      );
  }

  /** Says why an act cannot be, and shows it at the part until the next act. */
  #refuse(text: string): void {
    this.#host.say(text);
    this.#hand.refused = text;
    this.#showHand();
    this.#grid.stand(this.at, false);
  }

  #done(on: string | null): void {
    if (this.opening) this.#draw(this.#grid.hasFocus);
    else this.#grid.refresh();
    this.#drawing.refresh();
    this.#lookAgain();
    const found = this.#openCar.car.whole_car ?? [];
    for (const node of this.node.querySelectorAll<HTMLElement>("[data-whole]"))
      node.setAttribute("aria-pressed", String(found.includes(node.dataset.whole ?? "")));
    this.#showHand();
    this.#host.recorded(on);
  }

  /** Shows what the engine says about an entry; a blank line takes it away. */
  saidOdds(on: string | null, line: string): void {
    this.#hand.odds = on && line ? `${itemOf(this.#openCar.sheet, on).name}: ${line}` : "";
    this.#showHand();
  }

  #key(event: KeyboardEvent): void {
    const { conditions, findings } = this.#openCar.sheet;
    const letters = this.#openCar.settings.keys;
    const act = actOf(event, { conditions, findings, letters, finding: this.#hand.finding });
    if (!act) return;
    event.preventDefault();
    this.act(...act);
  }

  /** What a key, a tap or a button does. */
  act(...act: Act): void {
    const hand = this.#hand;
    hand.refused = "";
    switch (act[0]) {
      case "beside":
        return this.stand(this.#cursor.beside(act[1], act[2]), true);
      case "end":
        return this.stand(this.#cursor.end(act[1]), true);
      case "group":
        return this.#go(this.#cursor.inGroup(act[1]), true);
      case "panel":
        return hand.focusNote();
      case "words":
        return hand.focusWord();
      case "help":
        return this.#host.help();
      case "away":
        hand.finding = false;
        this.#showHand();
        return this.#grid.focus();
      case "finding":
        hand.finding = true;
        this.#showHand();
        this.#host.say("Found: press its letter, or Escape.");
        return this.#grid.hasFocus ? undefined : hand.scrollToFindings();
      case "found":
      case "not_found":
        if (hand.finding) hand.finding = act[0] === "found" && !this.#grid.hasFocus;
        return this.#acts.do(act, this.at, this.#cursor.group);
      case "condition":
        if (this.opening && !this.#acts.mayRecordInside(this.at))
          return this.#host.say("Press O first: this box is not opened.");
        return this.#acts.do(act, this.at, this.#cursor.group);
      default:
        return this.#acts.do(act, this.at, this.#cursor.group);
    }
  }

  setDown(down: boolean): void {
    this.#openCar.change({ down });
  }
  setKeys(keys: boolean): void {
    this.#openCar.change({ keys });
  }
  focus(): void {
    this.#grid.focus();
  }
}
