// What the draft does to three sample cars, beside the rates on the site.

import { type Children, el, list } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { type EngineClient, Overtaken } from "../shared/engineclient.ts";
import type { Axis, EffectCar, EffectRange, EffectStrip } from "../shared/replies.ts";
import type { EngineRequest, ReplyTo } from "../shared/requests.ts";
import { sampleCars } from "../shared/samplecars.ts";
import type { Draft } from "./draft.ts";

const WAIT_MS = 250;
/** From this width on the form and this are side by side; see page.css. */
const BESIDE = matchMedia("(min-width: 960px)");

export interface EffectHost {
  client: EngineClient;
  draft: Draft;
  /** Whether the last check found no fault. */
  ok(): boolean;
  /** Has a screen reader say it. */
  say(text: string): void;
}

export class Effect {
  /** The summary, which stays in view, and the cars. */
  line = el("div", { class: "effect-head" });
  node = el("section", { class: "effect", "aria-labelledby": "effect-title" });
  #text = el("p", { class: "effect-line" });
  #first = el("p", { class: "effect-first" });
  #box = el("div", { class: "effect-box" });
  #host: EffectHost;
  #timer = 0;
  #spoken = "";

  constructor(host: EffectHost) {
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
  later(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), WAIT_MS);
  }

  #stale(text: string): void {
    this.#text.textContent = text;
    this.#first.textContent = "";
    this.node.dataset.state = "stale";
  }

  async #ask(): Promise<void> {
    const { client, draft, ok } = this.#host;
    if (!ok()) {
      client.stop();
      this.#stale("Not worked out while something is wrong in the form. The cars below are as before.");
      return;
    }
    this.node.dataset.state = "working";
    try {
      const request: EngineRequest<"effect"> = {
        ask: "effect",
        old: draft.site,
        new: draft.text(),
        cars: await sampleCars(),
      };
      this.#show(await client.refine(request, (reply) => this.#show(reply)));
    } catch (error) {
      if (!(error instanceof Overtaken)) this.#stale("The sums did not answer. What you typed is safe.");
    }
  }

  #show(reply: ReplyTo<"effect">): void {
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
    const [first] = reply.cars;
    this.#first.textContent = first ? `${first.name}: ${first.sentence}` : "";
    const levels = levelsOf(reply.cars.flatMap((c) => (c.old ? [c.old, c.new] : [c.new])));
    this.#box.replaceChildren(
      ...(reply.warning ? [el("p", { class: "slip" }, reply.warning)] : []),
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

/** The row of a car, or two rows where its range is not the one of the site. */
function rows(c: EffectCar, axis: Axis, levels: number): Children {
  const moved = c.old && (c.old.low_text !== c.new.low_text || c.old.high_text !== c.new.high_text);
  if (!c.old || !moved) return dotRow(c.new, axis, levels);
  const named = (name: string, row: EffectRange) => [
    el("p", { class: "row-name hint" }, name),
    dotRow(row, axis, levels),
  ];
  return [named("On the site", c.old), named("Here", c.new)];
}

function stripText(s: EffectStrip | undefined): string {
  if (!s) return "";
  return s.old_text && s.old_text !== s.new_text
    ? `Strip and survey, likely: ${s.old_text} on the site, ${s.new_text} here.`
    : `Strip and survey, likely: ${s.new_text}.`;
}
