// Scoring the open jobs: the engine answers one request in steps. The page can be used
// meanwhile, and somebody can stop the scoring and go on with it later.

import { button, el } from "../shared/dom.ts";
import { type EngineClient, Overtaken } from "../shared/engineclient.ts";
import { today } from "../shared/linkcontent.ts";
import type { ScoresGoOnReply, ScoresReply } from "../shared/replies.ts";
import type { EngineRequest, ReplyTo } from "../shared/requests.ts";
import type { Ledger } from "./ledger.ts";

const SPOKEN_APART_MS = 5000;

export interface ScoringHost {
  client: EngineClient;
  ledger: Ledger;
  /** The text of the rates on the site. */
  rates(): string;
  scored(reply: ScoresReply): void;
  failed(text: string): void;
  /** Has a screen reader say it. */
  say(text: string): void;
}

type ScoreReply = ReplyTo<"score">;

export class Scoring {
  node = el("div", { class: "scoring" });
  /** The last complete reply, and whether it is about the file as it is now. */
  reply: ScoresReply | null = null;
  fresh = false;
  #host: ScoringHost;
  #run = 0;
  #spoken = 0;
  #text = el("p", { id: "scoring-text" });
  #bar = el("progress", { "aria-labelledby": "scoring-text" });

  constructor(host: ScoringHost) {
    this.#host = host;
  }

  /** Begins again; the engine still knows the jobs that have not changed. */
  async start(): Promise<void> {
    const run = ++this.#run;
    this.fresh = false;
    const { client, ledger, rates } = this.#host;
    if (!ledger.file || ledger.file.jobs.length === 0) {
      this.stopQuietly();
      this.reply = null;
      this.node.replaceChildren();
      return;
    }
    this.#draw(null);
    try {
      const request: EngineRequest<"score"> = { ask: "score", rates: rates(), today: today() };
      let reply = await this.#ask(client, request, run);
      if (reply.kind === "refused" && reply.path === "jobs") {
        await ledger.again();
        reply = await this.#ask(client, request, run);
      }
      if (run === this.#run) this.#done(reply);
    } catch (error) {
      if (run !== this.#run || error instanceof Overtaken) return;
      this.#stopped("The sums did not answer. Nothing you entered is lost.");
    }
  }

  #ask(client: EngineClient, request: EngineRequest<"score">, run: number): Promise<ScoreReply> {
    return client.refine(request, (reply) => {
      if (run === this.#run && reply.kind === "scores" && "of" in reply) this.#draw(reply);
    });
  }

  #done(reply: ScoreReply): void {
    if (reply.kind !== "scores") {
      this.node.replaceChildren();
      this.#host.failed(reply.text);
      return;
    }
    if (reply.state !== "settled") return;
    this.node.replaceChildren();
    this.reply = reply;
    this.fresh = true;
    this.#host.scored(reply);
  }

  stopQuietly(): void {
    this.#run++;
    this.#host.client.stop();
  }

  #stopped(text: string): void {
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

  /** reply: how far it has got; null before that is known. */
  #draw(reply: ScoresGoOnReply | null): void {
    const text = reply?.progress_text ?? "Working out the ranges of past jobs again.";
    if (!this.node.contains(this.#bar)) {
      this.node.replaceChildren(
        el(
          "div",
          { class: "working" },
          this.#text,
          this.#bar,
          button(
            "Stop",
            () => this.#stopped("Stopped. What follows is from before, or waits until this is gone on with."),
            { "data-key": "stop" },
          ),
        ),
      );
    }
    this.#text.textContent = text;
    if (reply) {
      this.#bar.max = reply.of;
      this.#bar.value = reply.done;
    } else this.#bar.removeAttribute("value");
    const now = performance.now();
    if (reply && now - this.#spoken > SPOKEN_APART_MS) {
      this.#spoken = now;
      this.#host.say(text);
    }
  }
}
