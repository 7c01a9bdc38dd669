// Scoring the jobs in hand: one request that is answered better and better. The
// page stays usable meanwhile, and it can be stopped and gone on with.

import { button, el } from "../shared/dom.ts";
import { Overtaken } from "../shared/engineclient.ts";
import { today } from "../shared/linkcontent.ts";

const SPOKEN_APART_MS = 5000;

export class Scoring {
  node = el("div", { class: "scoring" });
  /** The last whole answer, and whether it is of the file in hand. */
  reply = null;
  fresh = false;
  #host;
  #run = 0;
  #spoken = 0;

  /** host: link, ledger, rates() (text), scored(reply), failed(text), say(text) */
  constructor(host) {
    this.#host = host;
  }

  /** Begins anew; what is known of unchanged jobs is taken over. */
  async start() {
    const run = ++this.#run;
    this.fresh = false;
    const { link, ledger, rates } = this.#host;
    if (!ledger.file || ledger.file.jobs.length === 0) {
      this.stopQuietly();
      this.reply = null;
      this.node.replaceChildren();
      return;
    }
    this.#draw(null);
    try {
      const request = { ask: "score", rates: rates(), today: today() };
      let reply = await this.#ask(link, request, run);
      if (reply.kind === "refused" && reply.path === "jobs") {
        await ledger.again();
        reply = await this.#ask(link, request, run);
      }
      if (run === this.#run) this.#done(reply);
    } catch (error) {
      if (run !== this.#run || error instanceof Overtaken) return;
      this.#stopped("The sums did not answer. Nothing you entered is lost.");
    }
  }

  #ask(link, request, run) {
    return link.refine(request, (reply) => {
      if (run === this.#run) this.#draw(reply);
    });
  }

  #done(reply) {
    if (reply.kind !== "scores") {
      this.node.replaceChildren();
      this.#host.failed(reply.text);
      return;
    }
    this.node.replaceChildren();
    this.reply = reply;
    this.fresh = true;
    this.#host.scored(reply);
  }

  stopQuietly() {
    this.#run++;
    this.#host.link.stop();
  }

  #stopped(text) {
    this.stopQuietly();
    const on = button("Go on working it out", () => this.start(), { "data-key": "go-on" });
    const hadFocus = this.node.contains(document.activeElement);
    this.node.replaceChildren(
      el(
        "div",
        { class: "band", "data-band": "stopped" },
        el("p", {}, text),
        el("div", { class: "band-buttons" }, on),
      ),
    );
    if (hadFocus) on.focus();
  }

  #draw(reply) {
    const text = reply?.progress_text ?? "Working out the ranges of past jobs again.";
    if (!this.node.querySelector("progress")) {
      this.node.replaceChildren(
        el(
          "div",
          { class: "working" },
          el("p", { id: "scoring-text" }),
          el("progress", { "aria-labelledby": "scoring-text" }),
          button(
            "Stop",
            () => this.#stopped("Stopped. What follows is from before, or waits until this is gone on with."),
            { "data-key": "stop" },
          ),
        ),
      );
    }
    this.node.querySelector("p").textContent = text;
    const bar = this.node.querySelector("progress");
    if (reply) {
      bar.max = reply.of;
      bar.value = reply.done;
    } else bar.removeAttribute("value");
    const now = performance.now();
    if (reply && now - this.#spoken > SPOKEN_APART_MS) {
      this.#spoken = now;
      this.#host.say(text);
    }
  }
}
