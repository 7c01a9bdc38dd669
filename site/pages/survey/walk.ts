// The walk-round: one list of checks in the order of a walk around the car. Yes, No and Could
// not by key or press; a check that nobody made says nothing. The current line shows how to
// make the check, with what, and what may hurt.

import type { CheckResult, Teller } from "../shared/carfile.ts";
import { attributeAt, el, freshId } from "../shared/dom.ts";
import type { WalkLine, WalkSection } from "../shared/replies.ts";
import { lookAt, withLook } from "../shared/thiscar/carmembers.ts";
import { checkKey } from "../shared/thiscar/context.ts";
import type { OpenCar } from "./opencar.ts";
import { customersOther, safety } from "./walkintro.ts";
import { RESULTS, SAID, WalkRow } from "./walkrow.ts";
import { WalkZones } from "./walkzones.ts";

export interface WalkHost {
  say(text: string): void;
}

export class WalkView {
  node = el("div", { class: "walk" });
  #openCar: OpenCar;
  #host: WalkHost;
  #rows = new Map<string, WalkRow>();
  #sections: HTMLElement[] = [];
  /** The key of the current check; blank where there is none. */
  #at = "";
  #tool = "";
  #toolSelect: HTMLSelectElement | null = null;
  #zones: WalkZones | null = null;

  constructor(openCar: OpenCar, host: WalkHost) {
    this.#openCar = openCar;
    this.#host = host;
  }

  show(): void {
    const { walk_round: sections } = this.#openCar.sheet;
    this.#rows.clear();
    this.#sections = sections.map((section) => this.#section(section));
    this.#zones = new WalkZones(sections, {
      goTo: (section) => this.#goTo(section),
      made: (line) => this.#result(line) !== null,
    });
    const list = el(
      "div",
      {
        class: "walk-list",
        on: { keydown: (event) => this.#key(event), focusin: (event) => this.#focused(event) },
      },
      this.#sections,
    );
    const content = el(
      "div",
      {},
      el("p", {}, "Press the word you see. Untouched means not known, never good."),
      safety(this.#openCar.sheet),
      customersOther(this.#openCar),
      this.#filter(),
      this.#zones.node,
      list,
    );
    this.node.replaceChildren(...content.childNodes);
    if (!this.#rows.has(this.#at)) this.#at = this.#first();
    this.#stand(this.#at, false);
    this.#narrow();
  }

  /** Goes to the first check of a section: of those for the chosen tool, or of all where
   *  that tool is for none. */
  #goTo(section: WalkSection): void {
    const first = () => this.#shown.find((row) => section.lines.some((line) => checkKey(line) === row.key));
    if (!first()) {
      this.#tool = "";
      if (this.#toolSelect) this.#toolSelect.value = "";
      this.#narrow();
    }
    const row = first();
    if (!row) return;
    this.#stand(row.key, true);
    row.node.closest("section")?.scrollIntoView();
  }

  #checkBy(line: WalkLine, by: Teller) {
    return lookAt(this.#openCar.car, line.look, line.on, by);
  }

  #result(line: WalkLine): CheckResult | null {
    return this.#checkBy(line, "shop")?.result ?? null;
  }

  /** The key of the first check that can be made. */
  #first(): string {
    return [...this.#rows.values()].find((row) => row.isHere)?.key ?? "";
  }

  #filter(): HTMLElement {
    const id = freshId("tool");
    const select = el(
      "select",
      {
        id,
        on: {
          change: () => {
            this.#tool = select.value;
            this.#narrow();
          },
        },
      },
      el("option", { value: "" }, "Everything, in the order in which one walks"),
      this.#openCar.sheet.tools.map((t) => el("option", { value: t.id }, t.lines_text)),
    );
    select.value = this.#tool;
    this.#toolSelect = select;
    return el("p", { class: "filter" }, el("label", { for: id }, "With what in hand"), select);
  }

  #section(section: WalkSection): HTMLElement {
    const id = freshId("walk");
    const rows = section.lines.map((line) => {
      const row = new WalkRow(line, this.#checkBy(line, "customer"), (pressed, result) =>
        this.#answer(pressed, result, false),
      );
      row.mark(this.#result(line));
      this.#rows.set(row.key, row);
      return row.node;
    });
    return el(
      "section",
      { "aria-labelledby": id, class: "walk-section" },
      el("h2", { id }, section.name),
      el("ul", { class: "walk-lines" }, rows),
    );
  }

  /** Records a result; the same one again removes it. move: goes on to the next check. */
  #answer(row: WalkRow, result: CheckResult, move: boolean): void {
    if (!row.isHere) return;
    const { look, on, text } = row.line;
    const next = this.#result(row.line) === result ? null : result;
    this.#openCar.act("walk", withLook(this.#openCar.car, look, on, "shop", next), {
      stage: "walk_round",
      at: row.key,
      said: text,
    });
    row.mark(this.#result(row.line));
    this.#zones?.count();
    this.#host.say(next ? `${text}: ${SAID[next]}` : `${text}: taken back`);
    if (move) this.#step(1);
    else this.#stand(row.key, false);
  }

  /** The checks that are shown and can be made. */
  get #shown(): WalkRow[] {
    return [...this.#rows.values()].filter((row) => !row.node.hidden && row.isHere);
  }

  #step(by: number): void {
    const all = this.#shown;
    const next = all[all.findIndex((row) => row.key === this.#at) + by];
    if (next) this.#stand(next.key, true);
    else if (by > 0) this.#host.say("That was the last look of the list.");
  }

  #stand(key: string, focus: boolean): void {
    this.#rows.get(this.#at)?.setCurrent(false);
    this.#at = key;
    const row = this.#rows.get(key);
    if (!row) return;
    row.setCurrent(true);
    if (focus) {
      row.focus({ preventScroll: true });
      row.node.scrollIntoView({ block: "nearest" });
    }
  }

  #focused(event: Event): void {
    const key = attributeAt(event, "data-look");
    if (key && key !== this.#at) this.#stand(key, false);
  }

  #key(event: KeyboardEvent): void {
    const { key, altKey, ctrlKey, metaKey } = event;
    const letter = key.toLowerCase();
    if (altKey || ((ctrlKey || metaKey) && letter !== "z")) return;
    const row = this.#rows.get(this.#at);
    const answer = RESULTS.find(([, , own]) => own === letter);
    if (key === "Backspace" || ctrlKey || metaKey) this.#undo();
    else if (key === "ArrowDown") this.#step(1);
    else if (key === "ArrowUp") this.#step(-1);
    else if (key === "ArrowRight") row?.focusBeside(1);
    else if (key === "ArrowLeft") row?.focusBeside(-1);
    else if (row && answer && this.#openCar.settings.keys) this.#answer(row, answer[0], true);
    else return;
    event.preventDefault();
  }

  #undo(): void {
    const last = this.#openCar.undo("walk");
    if (!last) {
      this.#host.say("Nothing to take back.");
      return;
    }
    const row = this.#rows.get(last.at ?? "");
    if (row) row.mark(this.#result(row.line));
    this.#zones?.count();
    this.#host.say(`Taken back: ${last.said}`);
    if (row) this.#stand(row.key, true);
  }

  /** Shows only the checks for the chosen tool. */
  #narrow(): void {
    for (const row of this.#rows.values())
      row.node.hidden = this.#tool !== "" && row.line.tool !== this.#tool;
    for (const section of this.#sections) section.hidden = !section.querySelector(".look:not([hidden])");
    if (this.#rows.get(this.#at)?.node.hidden) this.#stand(this.#shown[0]?.key ?? this.#at, false);
  }

  /** Shows the faults of the checks, as the engine last gave them. */
  counted(): void {
    const { car, tally } = this.#openCar;
    for (const row of this.#rows.values()) row.setFault(null);
    for (const fault of tally?.faults ?? []) {
      const n = /^looks\[(\d+)\]/.exec(fault.path)?.[1];
      const check = n === undefined ? undefined : car.looks?.[Number(n)];
      if (check) this.#rows.get(checkKey(check))?.setFault(fault.text);
    }
  }

  focus(): void {
    this.#rows.get(this.#at)?.focus();
  }
}
