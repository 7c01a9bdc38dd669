// What the rates in hand do to three sample cars, beside the rates on the site.

import { el, list } from "../dom.js";
import { dotRow, levelsOf } from "../dots.js";
import { Overtaken } from "../engine-link.js";

const CARS = [["two-door-dry", "Two-door, dry state"], ["hardtop", "Hardtop on a frame, mixed life"], ["convertible", "Convertible, road salt"]];
const WAIT_MS = 250;

export class Effect {
  node = el("section", { class: "effect", "aria-labelledby": "effect-title" }, el("h2", { id: "effect-title" }, "What it does"));
  #box = el("div", { class: "effect-box" });
  #line = el("p", { class: "effect-line" });
  #host;
  #cars = null;
  #timer = 0;

  /** host: link, draft, ok() (no fault stands) */
  constructor(host) {
    this.#host = host;
    this.node.append(this.#line, el("details", { open: true, class: "effect-fold" }, el("summary", {}, "Three sample cars, all invented"), this.#box));
  }

  async #load() {
    this.#cars ??= Promise.all(CARS.map(async ([file, name]) => ({ name, car: await (await fetch(new URL(`../samples/${file}.json`, import.meta.url))).json() })));
    return this.#cars;
  }

  /** Asks once changes pause. */
  later() { clearTimeout(this.#timer); this.#timer = setTimeout(() => this.#ask(), WAIT_MS); }

  async #ask() {
    const { link, draft, ok } = this.#host;
    if (!ok()) { this.#line.textContent = "Not worked out while something is wrong in the form."; this.node.dataset.state = "stale"; return; }
    this.node.dataset.state = "working";
    try {
      const request = { ask: "effect", old: draft.site, new: draft.text(), cars: await this.#load() };
      this.#show(await link.refine(request, (reply) => this.#show(reply)));
    } catch (error) {
      if (!(error instanceof Overtaken)) this.#line.textContent = "The sums did not answer. What you typed is safe.";
    }
  }

  #show(reply) {
    if (reply.kind !== "effect") { this.#line.textContent = reply.text; this.node.dataset.state = "stale"; return; }
    this.node.dataset.state = reply.state;
    const rough = reply.state === "settled" ? "" : "About: ";
    this.#line.textContent = rough + (reply.why_not || (reply.changed.length ? reply.changed[0].text : "No range moves from what is on the site.")) + ".";
    this.#line.textContent = this.#line.textContent.replace(/\.\.$/, ".");
    const rows = reply.cars.flatMap((c) => [c.old, c.new].filter(Boolean));
    const levels = levelsOf(rows);
    this.#box.replaceChildren(
      ...reply.cars.map((c, k) => el("div", { class: "effect-car" }, el("h3", {}, c.name), el("p", {}, c.sentence),
        moved(c) && el("p", { class: "row-label hint" }, "On the site"), moved(c) && dotRow(c.old, reply.axis, levels),
        moved(c) && el("p", { class: "row-label hint" }, "Here"), dotRow(c.new, reply.axis, levels),
        el("p", { class: "hint" }, stripText(reply.strip[k])))),
      ...(reply.changed.length ? [el("h3", {}, "Most changed"), list(reply.changed.map((c) => c.text))] : []));
  }
}

const moved = (c) => c.old && (c.old.low_text !== c.new.low_text || c.old.high_text !== c.new.high_text);

function stripText(s) {
  return s.old_text && s.old_text !== s.new_text ? `Strip and survey, likely: ${s.old_text} on the site, ${s.new_text} here.` : `Strip and survey, likely: ${s.new_text}.`;
}
