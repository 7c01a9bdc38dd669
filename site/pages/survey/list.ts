// Survey and opening up: the list with its cursor, the six words, the current part and the
// drawing. Each press is one act, and the page asks nothing back.

import { el } from "../shared/dom.ts";
import { Acts } from "./acts.ts";
import { CurrentPart } from "./currentpart.ts";
import { Cursor } from "./cursor.ts";
import { Grid } from "./grid.ts";
import { type Act, actOf, type RecordAct } from "./keys.ts";
import { ListFrame } from "./listframe.ts";
import type { AddressOf } from "./listparts.ts";
import type { OpenCar } from "./opencar.ts";
import { cellOf, itemOf } from "./partwords.ts";
import { Picture } from "./picture.ts";

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

export class ListView {
  node = el("div", { class: "survey" });
  #openCar: OpenCar;
  #host: ListHost;
  #grid: Grid;
  #picture: Picture;
  #acts: Acts;
  #part: CurrentPart;
  #cursor: Cursor;
  #frame: ListFrame;
  #list = el("div", { class: "survey-list" });

  constructor(openCar: OpenCar, host: ListHost) {
    this.#openCar = openCar;
    this.#host = host;
    this.#cursor = new Cursor(openCar);
    this.#grid = new Grid({
      cell: (on) => cellOf(openCar, on),
      stand: (on) => this.stand(on),
      key: (event) => this.#key(event),
    });
    this.#picture = new Picture({
      car: () => openCar.car,
      at: () => this.at,
      tap: (on) => this.#go(on),
    });
    this.#acts = new Acts(openCar, {
      say: host.say,
      refuse: (text) => this.#refuse(text),
      stand: (on) => this.#go(on),
      done: (on) => this.#done(on),
      next: (on) => this.#next(on),
    });
    this.#part = new CurrentPart(openCar, {
      act: (...act) => this.act(...act),
      go: (on) => this.#go(on),
      text: (on, name, value) => this.#acts.text(on, name, value),
      panelFit: (on, fit, said) => this.#acts.panelFit(on, fit, said),
    });
    this.#frame = new ListFrame(openCar, {
      at: () => this.at,
      act: (...act) => this.act(...act),
      go: (on) => this.#go(on, true),
      address: host.address,
    });
    this.#list.append(this.#grid.node, this.#frame.foot);
    this.node.append(
      el(
        "p",
        { class: "on-paper" },
        "One part of the survey. All of it is on the survey sheet, under Papers.",
      ),
      this.#frame.head,
      this.#list,
      this.#part.words,
      this.#part.now,
      this.#part.more,
      this.#picture.node,
      this.#frame.links,
    );
  }

  /** The current part. */
  get at(): string {
    return this.#cursor.at;
  }
  get opening(): boolean {
    return this.#cursor.opening;
  }

  /** Shows the list, at a group and at a part of it where they are given. */
  show(opening: boolean, groupId: string, focus: boolean, on: string | null = null): void {
    this.#cursor.begin(opening, groupId, on);
    this.#part.begin();
    this.#picture.show(this.#openCar.sheet);
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
    this.#frame.draw(opening);
    this.counted();
    this.#showPart();
  }

  /** Shows the counts, as the engine last gave them. */
  counted(): void {
    if (this.#cursor.groups.length === 0) return;
    this.#frame.counted(this.#cursor);
    this.#grid.refresh();
    this.#part.counted(this.at);
  }

  #showPart(): void {
    this.#part.show(this.at);
    this.#picture.outline();
  }

  /** Goes to an item of this group. */
  stand(on: string, focus = this.#grid.hasFocus): void {
    if (on === this.at) return;
    this.#part.reset();
    this.#cursor.at = on;
    // The panel is drawn first, so that the list then scrolls clear of it.
    this.#showPart();
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
    this.#part.reset();
    this.#cursor.at = on;
    this.#draw(focus);
    this.#host.moved(target.id);
  }

  #next(on: string): void {
    const next = this.#cursor.after(on);
    if (next) this.#go(next);
    else this.#host.say("That was the last part of the list.");
  }

  /** Says why an act cannot be, and shows it at the part until the next act. */
  #refuse(text: string): void {
    this.#host.say(text);
    this.#part.refused = text;
    this.#showPart();
    this.#grid.stand(this.at, false);
  }

  #done(on: string | null): void {
    if (this.opening) this.#draw(this.#grid.hasFocus);
    else this.#grid.refresh();
    this.#picture.refresh();
    this.#frame.recorded();
    this.#showPart();
    this.#host.recorded(on);
  }

  /** Shows what the engine says about an entry; a blank line takes it away. */
  saidOdds(on: string | null, line: string): void {
    this.#part.odds = on && line ? `${itemOf(this.#openCar.sheet, on).name}: ${line}` : "";
    this.#showPart();
  }

  #key(event: KeyboardEvent): void {
    const { conditions, findings } = this.#openCar.sheet;
    const letters = this.#openCar.settings.keys;
    const act = actOf(event, { conditions, findings, letters, finding: this.#part.finding });
    if (!act) return;
    event.preventDefault();
    this.act(...act);
  }

  /** What a key, a tap or a button does. */
  act(...act: Act): void {
    this.#part.refused = "";
    switch (act[0]) {
      case "beside":
        this.stand(this.#cursor.beside(act[1], act[2]), true);
        break;
      case "end":
        this.stand(this.#cursor.end(act[1]), true);
        break;
      case "group":
        this.#go(this.#cursor.inGroup(act[1]), true);
        break;
      case "panel":
        this.#part.focusNote();
        break;
      case "words":
        this.#part.focusWord();
        break;
      case "help":
        this.#host.help();
        break;
      case "away":
        this.#setFinding(false);
        this.focus();
        break;
      case "finding":
        this.#setFinding(true);
        this.#host.say("Found: press its letter, or Escape.");
        if (!this.#grid.hasFocus) this.#part.scrollToFindings();
        break;
      default:
        this.#record(act);
    }
  }

  #setFinding(on: boolean): void {
    this.#part.finding = on;
    this.#showPart();
  }

  #record(act: RecordAct): void {
    const { at, group } = this.#cursor;
    const isLetter = act[0] === "found" || act[0] === "not_found";
    if (this.#part.finding && isLetter) this.#part.finding = act[0] === "found" && !this.#grid.hasFocus;
    if (act[0] === "condition" && this.opening && !this.#acts.mayRecordInside(at))
      this.#host.say("Press O first: this box is not opened.");
    else this.#acts.do(act, at, group);
  }

  focus(): void {
    this.#grid.focus();
  }
}
