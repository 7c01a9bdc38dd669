// The range while recording: hidden, so that the price does not grade the
// metal, until one switch shows it and the odds of each entry with it.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { Ranging } from "../shared/ranging.ts";
import { toggle } from "./listparts.ts";

const WAIT_MS = 250;

export class Strip {
  node = el("section", { class: "range-strip", "aria-label": "The range" });
  reply = null;
  #job;
  #host;
  #ranging;
  #box = el("div", { class: "strip-box" });
  #timer = 0;
  #asked = 0;

  /** host: link, odds(on, text) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
    this.#ranging = new Ranging(host.link, 0);
  }

  show() {
    this.node.replaceChildren(
      toggle("Show the range", this.#job.ways.range, (on) => this.set(on), { "data-key": "range" }),
      this.#box,
    );
    if (this.#job.ways.range) this.want(null);
    else this.#box.replaceChildren();
  }

  set(on) {
    this.#job.setWays({ range: on });
    if (on) {
      this.want(null);
      return;
    }
    this.pause();
    this.#host.link.stop();
    this.#box.replaceChildren();
    this.#host.odds(null, "");
  }

  /** Another view needs the engine: nothing of the range is waited for. */
  pause() {
    clearTimeout(this.#timer);
    this.#asked++;
  }

  /** Asks once the presses pause: the range, then the odds of the last entry. */
  want(on) {
    if (!this.#job.ways.range) return;
    clearTimeout(this.#timer);
    const asked = ++this.#asked;
    if (!this.#box.hasChildNodes()) this.#box.replaceChildren(el("p", {}, "Working it out."));
    this.#timer = setTimeout(() => this.#ask(asked, on), WAIT_MS);
  }

  async #ask(asked, on) {
    const { car } = this.#job;
    const still = () => asked === this.#asked && this.#job.ways.range;
    try {
      if (on) {
        const odds = await this.#host.link.ask({ ask: "odds", car, on });
        if (!still()) return;
        this.#host.odds(
          on,
          odds.kind === "odds"
            ? [odds.line, odds.before_line, odds.now_line].filter(Boolean).join(" ")
            : odds.text,
        );
      }
      await this.#ranging.want(car, null, (reply) => {
        if (still()) {
          this.#job.again.took(reply, car);
          this.#took(reply);
        }
      });
    } catch {
      if (still())
        this.#box.replaceChildren(
          el("p", { class: "error" }, "The range could not be worked out. What is recorded is safe."),
        );
    }
  }

  #took(reply) {
    this.reply = reply.kind === "range" ? reply : null;
    this.node.dataset.range = reply.state ?? reply.kind;
    if (reply.kind !== "range") {
      this.#box.replaceChildren(
        el("p", { class: "error" }, reply.text),
        el("p", {}, "No figure is shown until this is put right."),
      );
      return;
    }
    const levels = levelsOf(reply.rows);
    this.#box.replaceChildren(
      ...reply.rows.map((row) =>
        el(
          "div",
          { class: reply.state === "settled" ? "range" : "range is-rough" },
          el(
            "p",
            { class: "strip-sentence" },
            `${row.headline ? `${row.sentence_head} ${row.sentence.join(", ")}.` : row.label}`,
          ),
          el("p", {}, `${row.not_an_estimate} ${row.tax_line}`),
          dotRow(row, reply.axis, levels),
        ),
      ),
    );
  }
}
