// The range while recording. It is hidden, so that the price does not influence what is
// recorded, until a switch shows it, and with it the odds of each entry.

import type { CarFile } from "../shared/carfile.ts";
import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { type RangeAnswer, Ranging } from "../shared/ranging.ts";
import type { OddsReply, RangeReply } from "../shared/replies.ts";
import { toggle } from "./listparts.ts";
import type { OpenCar } from "./opencar.ts";

/** Milliseconds without a press before the range is asked for (assumption). */
const WAIT_MS = 250;

export interface StripHost {
  engine: EngineClient;
  /** What the engine says about the entry at a part; null and a blank text take it away. */
  odds(on: string | null, text: string): void;
}

const oddsText = (reply: OddsReply) =>
  [reply.line, reply.before_line, reply.now_line].filter(Boolean).join(" ");

export class Strip {
  node = el("section", { class: "range-strip", "aria-label": "The range" });
  /** The range that is shown, or null. */
  reply: RangeReply | null = null;
  #openCar: OpenCar;
  #host: StripHost;
  #ranging: Ranging;
  #box = el("div", { class: "strip-box" });
  #timer = 0;
  #asked = 0;

  constructor(openCar: OpenCar, host: StripHost) {
    this.#openCar = openCar;
    this.#host = host;
    this.#ranging = new Ranging(host.engine, 0);
  }

  get #isOn(): boolean {
    return this.#openCar.settings.range;
  }

  show(): void {
    this.node.replaceChildren(
      toggle("Show the range", this.#isOn, (on) => this.#set(on), { "data-key": "range" }),
      this.#box,
    );
    if (this.#isOn) this.want(null);
    else this.#box.replaceChildren();
  }

  #set(on: boolean): void {
    this.#openCar.change({ range: on });
    if (on) {
      this.want(null);
      return;
    }
    this.pause();
    this.#host.engine.stop();
    this.#box.replaceChildren();
    this.#host.odds(null, "");
  }

  /** Another view needs the engine: nobody waits for the range any more. */
  pause(): void {
    clearTimeout(this.#timer);
    this.#asked++;
  }

  /** Asks once nobody has pressed anything for a moment: for the odds of the last entry, at
   *  a part, and for the range. */
  want(on: string | null): void {
    if (!this.#isOn) return;
    clearTimeout(this.#timer);
    const asked = ++this.#asked;
    if (!this.#box.hasChildNodes()) this.#box.replaceChildren(el("p", {}, "Working it out."));
    this.#timer = setTimeout(() => this.#ask(asked, on), WAIT_MS);
  }

  async #ask(asked: number, on: string | null): Promise<void> {
    const { car } = this.#openCar;
    const still = () => asked === this.#asked && this.#isOn;
    try {
      if (on) {
        const odds = await this.#host.engine.ask({ ask: "odds", car, on });
        if (!still()) return;
        this.#host.odds(on, odds.kind === "odds" ? oddsText(odds) : odds.text);
      }
      await this.#range(car, still);
    } catch {
      if (still())
        this.#box.replaceChildren(
          el("p", { class: "error" }, "The range could not be worked out. What is recorded is safe."),
        );
    }
  }

  #range(car: CarFile, still: () => boolean): Promise<void> {
    return this.#ranging.want(car, null, (reply) => {
      if (still()) this.#took(reply);
    });
  }

  #took(reply: RangeAnswer): void {
    if (reply.kind === "range") {
      this.reply = reply;
      this.node.dataset.range = reply.state;
      this.#draw(reply);
      return;
    }
    this.reply = null;
    this.node.dataset.range = reply.kind;
    this.#box.replaceChildren(
      el("p", { class: "error" }, reply.text),
      el("p", {}, "No figure is shown until this is put right."),
    );
  }

  #draw(range: RangeReply): void {
    const levels = levelsOf(range.rows);
    this.#box.replaceChildren(
      ...range.rows.map((row) =>
        el(
          "div",
          { class: range.state === "settled" ? "range" : "range is-rough" },
          el(
            "p",
            { class: "strip-sentence" },
            row.headline ? `${row.sentence_head} ${row.sentence.join(", ")}.` : row.label,
          ),
          el("p", {}, `${row.not_an_estimate} ${row.tax_line}`),
          dotRow(row, range.axis, levels),
        ),
      ),
    );
  }
}
