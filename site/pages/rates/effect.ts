// What the rates in hand do to three sample cars, beside the rates on the site.

import { el, list } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { Overtaken } from "../shared/engineclient.ts";
import { sampleCars } from "../shared/samplecars.ts";

const WAIT_MS = 250;
/** From here on the form and this stand side by side; see rates.css. */
const BESIDE = matchMedia("(min-width: 960px)");

export class Effect {
  /** The line that stays in view, and the whole of it. */
  line = el("div", { class: "effect-head" });
  node = el("section", { class: "effect", "aria-labelledby": "effect-title" });
  #text = el("p", { class: "effect-line" });
  #first = el("p", { class: "effect-first" });
  #box = el("div", { class: "effect-box" });
  #host;
  #timer = 0;
  #spoken = "";

  /** host: link, draft, ok() (no fault stands), say(text) */
  constructor(host) {
    this.#host = host;
    this.line.append(el("h2", { id: "effect-title" }, "What it does"), this.#text, this.#first);
    this.node.append(
      el(
        "details",
        { open: BESIDE.matches, class: "effect-fold" },
        el("summary", {}, "Three sample cars, all invented"),
        this.#box,
      ),
    );
  }

  /** Asks once changes pause. */
  later() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), WAIT_MS);
  }

  #stale(text) {
    this.#text.textContent = text;
    this.#first.textContent = "";
    this.node.dataset.state = "stale";
  }

  async #ask() {
    const { link, draft, ok } = this.#host;
    if (!ok()) {
      link.stop();
      this.#stale("Not worked out while something is wrong in the form. The cars below are as before.");
      return;
    }
    this.node.dataset.state = "working";
    try {
      const request = { ask: "effect", old: draft.site, new: draft.text(), cars: await sampleCars() };
      this.#show(await link.refine(request, (reply) => this.#show(reply)));
    } catch (error) {
      if (!(error instanceof Overtaken)) this.#stale("The sums did not answer. What you typed is safe.");
    }
  }

  #show(reply) {
    const { ok, draft, say } = this.#host;
    if (!ok()) return;
    if (reply.kind !== "effect") {
      this.#stale(reply.text);
      return;
    }
    this.node.dataset.state = reply.state;
    const rough = reply.state === "settled" ? "" : "About: ";
    const said =
      reply.why_not ||
      reply.changed[0]?.text ||
      (draft.site
        ? "No range moves from what is on the site"
        : "The rates on the site cannot be used, so there is nothing to compare with");
    this.#text.textContent = `${rough}${said}`.replace(/\.*$/, ".");
    if (!rough && draft.changed && this.#spoken !== this.#text.textContent) {
      this.#spoken = this.#text.textContent;
      say(this.#spoken);
    }
    this.#first.textContent = `${reply.cars[0].name}: ${reply.cars[0].sentence}`;
    const levels = levelsOf(reply.cars.flatMap((c) => [c.old, c.new].filter(Boolean)));
    this.#box.replaceChildren(
      ...reply.cars.map((c, k) =>
        el(
          "div",
          { class: "effect-car" },
          el("h3", {}, c.name),
          el("p", {}, c.sentence),
          rows(c, reply.axis, levels),
          el("p", { class: "hint" }, stripText(reply.strip[k])),
        ),
      ),
      ...(reply.changed.length ? [el("h3", {}, "Most changed"), list(reply.changed.map((c) => c.text))] : []),
    );
  }
}

const moved = (c) => c.old && (c.old.low_text !== c.new.low_text || c.old.high_text !== c.new.high_text);

function rows(c, axis, levels) {
  if (!moved(c)) return dotRow(c.new, axis, levels);
  return [
    ["On the site", c.old],
    ["Here", c.new],
  ].map(([name, row]) => [el("p", { class: "row-name hint" }, name), dotRow(row, axis, levels)]);
}

function stripText(s) {
  return s.old_text && s.old_text !== s.new_text
    ? `Strip and survey, likely: ${s.old_text} on the site, ${s.new_text} here.`
    : `Strip and survey, likely: ${s.new_text}.`;
}
