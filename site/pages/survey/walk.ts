// The walk-round: one list of looks in the order in which one walks. Yes, No and
// Could not by key or press; a look that was not made stays not made, and says
// nothing. The line in hand shows how, with what, and what may hurt.

import { button, el, freshId } from "../shared/dom.ts";
import { lookAt, withLook } from "../shared/thiscar/record.ts";
import { WalkZones } from "./walkzones.ts";

const RESULTS = [
  ["yes", "Yes", "y"],
  ["no", "No", "n"],
  ["could_not", "Could not", "c"],
];
const SAID = { yes: "yes", no: "no", could_not: "could not look" };
const keyOf = (line) => `${line.look} ${line.on}`;

export class WalkView {
  node = el("div", { class: "walk" });
  #job;
  #host;
  #rows = new Map();
  #at = null;
  #tool = "";
  #zones;

  /** host: say(text) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
  }

  show() {
    const { sheet } = this.#job;
    this.#rows.clear();
    const list = el(
      "div",
      {
        class: "walk-list",
        on: { keydown: (event) => this.#key(event), focusin: (event) => this.#focused(event) },
      },
      sheet.walk_round.map((section) => this.#section(section)),
    );
    this.#zones = new WalkZones(sheet.walk_round, {
      goTo: (section) => this.#goTo(section),
      made: (line) => this.#result(line) !== null,
    });
    this.node.replaceChildren(
      ...[
        el("p", {}, "Press the word you see. Untouched means not known, never good."),
        this.#safety(),
        this.#theirs(),
        this.#filter(),
        this.#zones.node,
        list,
      ].filter(Boolean),
    );
    if (!this.#rows.has(this.#at)) this.#at = this.#first();
    this.#stand(this.#at, false);
    this.#narrow();
  }

  /** Stands on the first look of a section: of those for the tool in hand, or of all
   *  where that tool is for none. */
  #goTo(section) {
    const first = () => this.#shown().find((key) => section.lines.some((line) => keyOf(line) === key));
    if (!first()) {
      this.#tool = "";
      this.node.querySelector("select").value = "";
      this.#narrow();
    }
    const key = first();
    this.#stand(key, true);
    this.#rows.get(key).node.closest("section").scrollIntoView();
  }

  #result(line) {
    return lookAt(this.#job.car, line.look, line.on, "shop")?.result ?? null;
  }

  #first() {
    return [...this.#rows].find(([, row]) => !row.line.not_here)?.[0] ?? null;
  }

  #safety() {
    const all = (this.#job.sheet.cautions ?? []).filter(
      (c) => c.id === "lifting" || c.where === "walk_round",
    );
    return (
      all.length > 0 &&
      el(
        "div",
        {},
        all.map((c) => el("p", { class: "caution" }, c.text)),
      )
    );
  }

  /** Looks of the customer that have no line of their own here. */
  #theirs() {
    const lines = new Set(this.#job.sheet.walk_round.flatMap((s) => s.lines.map(keyOf)));
    const rest = (this.#job.car.looks ?? []).filter((l) => l.by === "customer" && !lines.has(keyOf(l)));
    if (rest.length === 0) return null;
    const words = new Map(this.#job.sheet.walk_round.flatMap((s) => s.lines.map((l) => [l.look, l.name])));
    return el(
      "div",
      {},
      el("h2", {}, "Looked by the customer"),
      el(
        "ul",
        {},
        rest.map((l) =>
          el("li", {}, `${this.#place(l.on)}: ${words.get(l.look) ?? l.look}: ${SAID[l.result]}`),
        ),
      ),
    );
  }

  /** front_either and either stand for one side or the other. */
  #place(on) {
    const { items } = this.#job.sheet;
    const left = items[on.replace("either", "left")];
    return items[on]?.name ?? (left ? `${left.name.replace(/,? ?left$/, "")}, left or right` : on);
  }

  #filter() {
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
      this.#job.sheet.tools.map((t) => el("option", { value: t.id }, t.lines_text)),
    );
    select.value = this.#tool;
    return el("p", { class: "filter" }, el("label", { for: id }, "With what in hand"), select);
  }

  #section(section) {
    const id = freshId("walk");
    return el(
      "section",
      { "aria-labelledby": id, class: "walk-section" },
      el("h2", { id }, section.name),
      el(
        "ul",
        { class: "walk-lines" },
        section.lines.map((line) => this.#row(line)),
      ),
    );
  }

  #row(line) {
    const id = freshId("look");
    const marks = el("div", { class: "marks", role: "group", "aria-labelledby": id });
    const more = el("div", { class: "look-more", hidden: true });
    const theirs = lookAt(this.#job.car, line.look, line.on, "customer");
    const node = el(
      "li",
      { class: line.not_here ? "look is-grey" : "look", "data-look": keyOf(line) },
      el("p", { class: "look-text", id }, line.text),
      theirs && el("p", { class: "look-theirs" }, `Looked by the customer: ${SAID[theirs.result]}`),
      (line.not_here || line.beside_lead) &&
        el("p", { class: "look-why" }, line.not_here || line.beside_lead),
      !line.not_here && marks,
      more,
    );
    marks.append(
      ...RESULTS.map(([result, text]) =>
        button(text, () => this.#answer(keyOf(line), result, false), {
          class: "mark",
          "data-result": result,
          tabindex: "-1",
        }),
      ),
    );
    this.#rows.set(keyOf(line), { line, node, marks, more });
    this.#mark(keyOf(line));
    return node;
  }

  #mark(key) {
    const { line, marks } = this.#rows.get(key);
    const result = this.#result(line);
    for (const node of marks.children)
      node.setAttribute("aria-pressed", String(node.dataset.result === result));
  }

  #answer(key, result, move) {
    const row = this.#rows.get(key);
    if (!row || row.line.not_here) return;
    const { look, on, text } = row.line;
    const had = this.#result(row.line);
    const next = had === result ? null : result;
    this.#job.act("walk", withLook(this.#job.car, look, on, "shop", next), {
      stage: "walk_round",
      at: key,
      said: text,
    });
    this.#mark(key);
    this.#zones.count();
    this.#host.say(next ? `${text}: ${SAID[next]}` : `${text}: taken back`);
    if (move) this.#step(1);
    else this.#stand(key, false);
  }

  #shown() {
    return [...this.#rows].filter(([, row]) => !row.node.hidden && !row.line.not_here).map(([key]) => key);
  }

  #step(by) {
    const all = this.#shown();
    const next = all[all.indexOf(this.#at) + by];
    if (next) this.#stand(next, true);
    else if (by > 0) this.#host.say("That was the last look of the list.");
  }

  #stand(key, focus) {
    const old = this.#rows.get(this.#at);
    if (old) {
      old.node.classList.remove("in-hand");
      old.more.hidden = true;
      for (const b of old.marks.children) b.tabIndex = -1;
    }
    this.#at = key;
    const row = this.#rows.get(key);
    if (!row) return;
    const { how, needs, caution } = row.line;
    row.node.classList.add("in-hand");
    row.more.hidden = false;
    row.more.replaceChildren(
      ...[how, needs && `Needs: ${needs}`].filter(Boolean).map((t) => el("p", {}, t)),
      ...(caution ? [el("p", { class: "caution" }, caution)] : []),
    );
    for (const b of row.marks.children) b.tabIndex = 0;
    if (focus) {
      row.marks.firstChild.focus({ preventScroll: true });
      row.node.scrollIntoView({ block: "nearest" });
    }
  }

  #focused(event) {
    const key = event.target.closest("[data-look]")?.dataset.look;
    if (key && key !== this.#at) this.#stand(key, false);
  }

  #key(event) {
    if (event.altKey || ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() !== "z")) return;
    const answer = RESULTS.find(([, , letter]) => letter === event.key.toLowerCase());
    const moves = { ArrowDown: 1, ArrowUp: -1 };
    if (event.key === "Backspace" || event.ctrlKey || event.metaKey) this.#undo();
    else if (moves[event.key]) this.#step(moves[event.key]);
    else if (event.key === "ArrowRight" || event.key === "ArrowLeft") this.#sideways(event);
    else if (answer && this.#job.ways.keys) this.#answer(this.#at, answer[0], true);
    else return;
    event.preventDefault();
  }

  #sideways(event) {
    const all = [...this.#rows.get(this.#at).marks.children];
    all[
      Math.min(2, Math.max(0, all.indexOf(document.activeElement) + (event.key === "ArrowRight" ? 1 : -1)))
    ].focus();
  }

  #undo() {
    const last = this.#job.takeBack("walk");
    if (!last) {
      this.#host.say("Nothing to take back.");
      return;
    }
    this.#mark(last.at);
    this.#zones.count();
    this.#host.say(`Taken back: ${last.said}`);
    this.#stand(last.at, true);
  }

  #narrow() {
    for (const [, row] of this.#rows) row.node.hidden = this.#tool !== "" && row.line.tool !== this.#tool;
    for (const section of this.node.querySelectorAll(".walk-section"))
      section.hidden = !section.querySelector(".look:not([hidden])");
    if (this.#rows.get(this.#at)?.node.hidden) this.#stand(this.#shown()[0] ?? this.#at, false);
  }

  /** Faults of looks, as the engine last gave them. */
  counted() {
    const { car, tally } = this.#job;
    for (const { node } of this.#rows.values()) {
      node.classList.remove("has-fault");
      node.querySelector(".look-fault")?.remove();
    }
    for (const fault of tally?.faults ?? []) {
      const n = /^looks\[(\d+)\]/.exec(fault.path)?.[1];
      const row = n === undefined ? null : this.#rows.get(keyOf(car.looks[n] ?? {}));
      if (row) {
        row.node.classList.add("has-fault");
        row.node.append(el("p", { class: "error look-fault" }, `Does not count: ${fault.text}`));
      }
    }
  }

  focus() {
    this.#rows.get(this.#at)?.marks.firstChild?.focus();
  }
}
