// Survey and opening up: the list with its cursor, the six words, the part in
// hand and the drawing. One act per press; nothing is asked back.

import { button, el } from "../shared/dom.ts";
import { Grid } from "./grid.ts";
import { Drawing } from "../shared/thiscar/drawn.ts";
import { actOf } from "./keys.ts";
import { markWord, wordButtons } from "./words.ts";
import { cellOf, panelHead, panelMore, panelNow } from "./panel.ts";
import { allRows, beside, firstOf, groupOf, groupsOf, lastOf, step } from "./order.ts";
import { recordAt, stageOf, standing } from "../shared/thiscar/record.ts";
import { Acts } from "./acts.ts";
import { swap } from "../shared/swap.ts";
import { boxState, countsText, listFoot, listHead, zoneLinks } from "./listparts.ts";
import { lookAgainHere, lookAgainLine } from "./secondlook.ts";

export class ListView {
  node = el("div", { class: "survey" });
  #job;
  #host;
  #grid;
  #drawing;
  #acts;
  #opening = false;
  #groups = [];
  #at = null;
  #finding = false;
  #odds = "";
  #refused = "";
  #boxes = {};
  #foot = el("div", {});

  /** host: say(text), help(), uk(), address(zone), moved(group), recorded(on) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
    this.#grid = new Grid({
      cell: (on) => cellOf(job, on),
      stand: (on) => this.stand(on),
      key: (event) => this.#key(event),
    });
    this.#drawing = new Drawing({
      condition: (on) => standing(job.car, on)?.condition ?? null,
      tap: (on) => this.#go(on),
    });
    this.#acts = new Acts(job, {
      say: host.say,
      refuse: (text) => this.#refuse(text),
      stand: (on) => this.#go(on),
      done: (on) => this.#done(on),
      next: (on) => this.#next(on),
    });
    for (const name of ["head", "list", "hand", "now", "more", "picture", "groups"])
      this.#boxes[name] = el("div", { class: `survey-${name}` });
    this.#boxes.list.append(this.#grid.node, this.#foot);
    this.node.append(
      el(
        "p",
        { class: "on-paper" },
        "One part of the survey. All of it is on the survey sheet, under Papers.",
      ),
      ...Object.values(this.#boxes),
    );
  }

  get at() {
    return this.#at;
  }
  get opening() {
    return this.#opening;
  }
  get group() {
    return groupOf(this.#groups, this.#at);
  }

  /** Shows the list; group: which zone or box to stand in, if known; on: which part. */
  show(opening, groupId, focus, on = null) {
    const { sheet } = this.#job;
    this.#opening = opening;
    if (on) this.#at = on;
    this.#groups = groupsOf(sheet, opening);
    const wanted = this.#groups.find((g) => g.id === groupId);
    const known = this.#groups.some((g) => g.rows.some((row) => row.cells.includes(this.#at)));
    if (wanted && (!known || this.group !== wanted)) this.#at = firstOf(wanted, this.#down);
    else if (!known) this.#at = firstOf(this.#groups[0], this.#down);
    this.#boxes.hand.replaceChildren(
      el("p", { class: "counts" }),
      el("div", { class: "hand-place" }),
      el("div", { class: "hand-alert" }),
      wordButtons(sheet.conditions, { act: (name, value) => this.act(name, value) }),
    );
    this.#boxes.picture.replaceChildren(this.#drawing.node);
    this.#drawing.show(sheet.drawing, sheet.conditions).then(
      () => this.#drawing.outline(this.#at),
      () => {
        this.#boxes.picture.replaceChildren(
          el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."),
        );
      },
    );
    this.#draw(focus);
  }

  get #rows() {
    return this.#opening ? allRows(this.#groups, (g) => boxState(this.#job, g)) : this.group.rows;
  }
  get #down() {
    return this.#job.ways.down;
  }

  #draw(focus) {
    this.node.classList.toggle("is-opening", this.#opening);
    const sides = this.#host.uk() ? ["LEFT (nearside)", "RIGHT (offside)"] : ["LEFT", "RIGHT"];
    this.#grid.draw({
      label: this.#opening ? "Closed boxes" : this.group.name,
      heads: this.#opening ? ["Recorded"] : sides,
      rows: this.#rows,
      at: this.#at,
      hint: "Arrow keys move. The first letter of a word records it. The question mark shows all keys.",
    });
    if (focus) this.#grid.focus();
    this.#foot.replaceChildren(listFoot(this.#job, this, this.#opening));
    this.counted();
    this.#hand();
  }

  /** The counts, as the engine last gave them. */
  counted() {
    if (this.#groups.length === 0) return;
    const { group } = this;
    this.#boxes.hand.querySelector(".counts").textContent = countsText(this.#job);
    swap(this.#boxes.head, !this.#opening && listHead(this.#job, this.#groups, group, this.#host.address));
    swap(this.#boxes.groups, !this.#opening && zoneLinks(this.#job, this.#groups, group, this.#host.address));
    this.#lookAgain();
    const rest = this.#job.tally?.zones?.find((z) => z.id === group.id);
    const node = this.#boxes.list.querySelector("[data-rest]");
    if (node) {
      node.textContent = rest?.rest_line ?? "Rest of the seen parts here: sound";
      node.disabled = !rest?.seen_left;
    }
    this.#grid.refresh();
    const job = this.#job;
    if (
      this.#boxes.now.querySelector(".error") ||
      this.#boxes.hand.querySelector(".look-again") ||
      job.faultOn(this.#at) ||
      job.again.at(job.car, this.#at)
    )
      this.#hand();
  }

  #hand() {
    const record = recordAt(this.#job.car, this.#at, stageOf(this.#job.car, this.#job.sheet.items[this.#at]));
    markWord(this.#boxes.hand, record?.condition, record?.could_not_see);
    const at = this.#at;
    const host = {
      act: (name, value) => this.act(name, value),
      go: (on) => this.#go(on),
      text: (name, value) => this.#acts.text(at, name, value),
    };
    swap(this.#boxes.hand.querySelector(".hand-place"), panelHead(this.#job, at, host));
    swap(
      this.#boxes.hand.querySelector(".hand-alert"),
      this.#refused && el("p", { class: "error" }, this.#refused),
      lookAgainHere(this.#job, at, host.act),
    );
    swap(this.#boxes.now, panelNow(this.#job, at, this.#odds));
    swap(this.#boxes.more, panelMore(this.#job, at, host, this.#finding));
    this.#drawing.outline(this.#at);
  }

  /** Stands on an item of this group. */
  stand(on, focus = this.#grid.hasFocus) {
    if (on === this.#at) return;
    this.#finding = false;
    this.#odds = this.#refused = "";
    this.#at = on;
    // What stands at the part first: the list then scrolls clear of it.
    this.#hand();
    this.#grid.stand(on, focus);
  }

  /** Goes to an item anywhere in the list. */
  #go(on, focus = this.#grid.hasFocus) {
    if (!on) return;
    const target = groupOf(this.#groups, on);
    if (!target.rows.some((row) => row.cells.includes(on))) return;
    if (target === this.group || this.#opening) {
      this.stand(on, focus);
      return;
    }
    this.#finding = false;
    this.#odds = this.#refused = "";
    this.#at = on;
    this.#draw(focus);
    this.#host.moved(target.id);
  }

  #next(on) {
    const next = step(this.#groups, on, 1, this.#down);
    if (next) this.#go(next);
    else this.#host.say("That was the last part of the list.");
  }

  #lookAgain() {
    swap(
      this.#foot.querySelector("[data-again]"),
      lookAgainLine(this.#job, (on) => this.#go(on, true)),
    );
  }

  /** An act that cannot be: said, and shown at the part until the next act. */
  #refuse(text) {
    this.#host.say(text);
    this.#refused = text;
    this.#hand();
    this.#grid.stand(this.#at, false);
  }

  #done(on) {
    if (this.#opening) this.#draw(this.#grid.hasFocus);
    else this.#grid.refresh();
    this.#drawing.refresh();
    this.#lookAgain();
    for (const node of this.node.querySelectorAll("[data-whole]"))
      node.setAttribute(
        "aria-pressed",
        String(Boolean(this.#job.car.whole_car?.includes(node.dataset.whole))),
      );
    this.#hand();
    this.#host.recorded(on);
  }

  /** What the engine says of an entry, while the range is shown. */
  saidOdds(on, line) {
    this.#odds = line ? `${this.#job.sheet.items[on].name}: ${line}` : "";
    this.#hand();
  }

  #key(event) {
    const act = actOf(event, {
      conditions: this.#job.sheet.conditions,
      findings: this.#job.sheet.findings,
      letters: this.#job.ways.keys,
      finding: this.#finding,
    });
    if (!act) return;
    event.preventDefault();
    this.act(...act);
  }

  /** What a key, a tap or a button does. */
  act(name, value, column) {
    const on = this.#at;
    this.#refused = "";
    const group = this.group;
    if (name === "beside") return this.stand(beside(this.#rows, on, value, column), true);
    if (name === "end") return this.stand((value === "first" ? firstOf : lastOf)(group, this.#down), true);
    if (name === "group") return this.toGroup(value);
    if (name === "panel") return this.#boxes.more.querySelector("[data-entry=note]")?.focus();
    if (name === "away") {
      this.#finding = false;
      this.#hand();
      return this.#grid.focus();
    }
    if (name === "words")
      return this.#boxes.hand.querySelector('[data-word][aria-pressed="true"], [data-word]').focus();
    if (name === "help") return this.#host.help();
    if (name === "finding") {
      this.#finding = true;
      this.#hand();
      this.#host.say("Found: press its letter, or Escape.");
      return this.#grid.hasFocus
        ? null
        : this.#boxes.more.querySelector(".find-fold").scrollIntoView({ block: "nearest" });
    }
    const wasFinding = this.#finding;
    if (wasFinding && name.endsWith("found")) this.#finding = name === "found" && !this.#grid.hasFocus;
    if (name === "condition" && this.#opening && !this.#acts.mayRecordInside(on))
      return this.#host.say("Press O first: this box is not opened.");
    return this.#acts.do(name, on, value, group);
  }

  /** The group before or after; each end leads to the other. */
  toGroup(by) {
    const n = this.#groups.length;
    const next = this.#groups[(this.#groups.indexOf(this.group) + by + n) % n];
    this.#go(firstOf(next, this.#down), true);
  }

  setDown(down) {
    this.#job.setWays({ down });
  }
  setKeys(keys) {
    this.#job.setWays({ keys });
  }
  focus() {
    this.#grid.focus();
  }
}
