// The question about new paint, which decides how much a good check says, until it is answered;
// one check that helps: the one that would narrow the range most, with what it needs and what
// may hurt; and what the next stage is worth. The check and the stage come from the engine once
// the range has settled, and nothing waits for them.

import { withLook } from "../shared/car.ts";
import type { CarFile, CheckResult, Look } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Choice } from "../shared/question.ts";
import type { LookWorth } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";

/** The checks come quickly. What the stages are worth takes the engine seconds at a time, in
 *  which it answers nothing else, so that waits for a longer pause. */
const PAUSE_MS = 1000;
const LONGER_PAUSE_MS = 3000;
const RESULTS: readonly (readonly [result: CheckResult, text: string])[] = [
  ["yes", "Yes"],
  ["no", "No"],
  ["could_not", "Could not look"],
];
const MAKE_NARROWER = "Make it narrower";
const SAID: Record<CheckResult, string> = { yes: "yes", no: "no", could_not: "could not look" };

/** An answer as it is called away from its check, for "… moved the range". */
const meaning = (look: LookWorth, result: CheckResult): string =>
  `Your “${SAID[result]}” (${look.text.replace(/\?$/, "")})`;

export interface OneLookHost {
  engine: EngineClient;
  car: CarFile;
  /** The question about new paint. */
  covered: Choice;
  /** The answers to the questions show this check already. */
  shown(look: Look): boolean;
  /** Takes the car with the answer, and what the answer is called. */
  answered(car: CarFile, text: string): void;
}

export class OneLook {
  /** The question, the check with those made before, and the line for the next stage. */
  first = el("div", {});
  node = el("div", { class: "one-look" });
  stage = el("p", { class: "stage-worth", hidden: true });
  #host: OneLookHost;
  #timer = 0;
  #offer = el("div", {});
  #made = el("div", {});

  constructor(host: OneLookHost) {
    this.#host = host;
    this.node.append(this.#offer, this.#made);
    this.#askCovered();
    this.#reservePlace();
    this.#listMade();
  }

  /** The place of the check, so that nothing moves under a finger when it comes. */
  #reservePlace(): void {
    const id = freshId("look");
    this.#offer.append(
      el(
        "section",
        { "aria-labelledby": id, class: "act" },
        el("h2", { id }, MAKE_NARROWER),
        el(
          "div",
          { class: "act-text" },
          el(
            "p",
            { class: "act-ask" },
            "We are working out which quick check would tell most about this car.",
          ),
        ),
        el(
          "div",
          { class: "marks" },
          RESULTS.map(([, text]) => button(text, () => {}, { disabled: true })),
        ),
      ),
    );
  }

  #askCovered(): void {
    const { car, covered: q, answered } = this.#host;
    if (car.covered) return;
    const id = freshId("covered");
    this.first.append(
      el(
        "section",
        { "aria-labelledby": id, class: "covered-first act" },
        el("h2", { id }, "First, about the paint"),
        el(
          "div",
          { class: "act-text" },
          el("p", { class: "act-ask" }, q.title),
          el("p", { class: "hint" }, q.hint),
        ),
        el(
          "div",
          { class: "marks" },
          q.answers.map((a) =>
            button(
              a.text,
              () => answered(q.apply(car, a.id), a.means ?? `“${a.text}” (${q.short.toLowerCase()})`),
              { "data-covered": a.id },
            ),
          ),
        ),
      ),
    );
  }

  /** The range has settled: the engine is soon asked what would help. */
  settled(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), PAUSE_MS);
  }

  async #ask(): Promise<void> {
    if (!this.node.isConnected) return;
    const { engine, car } = this.#host;
    const request = { ask: "worth", car, for: "customer" } as const;
    try {
      this.#took(await engine.ask(request));
      await new Promise((resolve) => {
        this.#timer = setTimeout(resolve, LONGER_PAUSE_MS);
      });
      if (this.node.isConnected) this.#took(await engine.refine(request, (reply) => this.#took(reply)));
    } catch {
      // Overtaken by a newer answer, or the engine stopped: the range does not need it.
    }
  }

  #took(reply: ReplyTo<"worth">): void {
    if (reply.kind !== "worth" || !this.node.isConnected) return;
    const [look] = reply.looks ?? [];
    if (!look) this.#offer.replaceChildren();
    if (look && this.#offer.dataset.look !== `${look.look} ${look.on}`) this.#show(look);
    const line = (reply.stages ?? []).find((s) => s.id === "survey")?.line;
    this.stage.hidden = !line;
    this.stage.textContent = line ?? "";
    this.node.dataset.worth = reply.state;
  }

  #show(look: LookWorth): void {
    const id = freshId("look");
    this.#offer.dataset.look = `${look.look} ${look.on}`;
    const answer = (result: CheckResult): void =>
      this.#host.answered(withLook(this.#host.car, look.look, [look.on], result), meaning(look, result));
    this.#offer.replaceChildren(
      el(
        "section",
        { "aria-labelledby": id, class: "act" },
        el("h2", { id }, MAKE_NARROWER),
        el(
          "div",
          { class: "act-text" },
          el("p", { class: "look-ask act-ask" }, look.text),
          look.how && el("p", {}, look.how),
          el(
            "p",
            { class: "hint" },
            look.needs && `You need: ${look.needs}. `,
            look.caution,
            !/\bjack\b/.test(look.caution ?? "") &&
              " Never put any part of yourself under a car that stands on a jack.",
          ),
          el("p", { class: "hint" }, [look.place_line, look.whole_line].filter(Boolean).join(" ")),
        ),
        el(
          "div",
          { class: "marks" },
          RESULTS.map(([result, text]) => button(text, () => answer(result), { "data-result": result })),
          look.either &&
            button(
              "Yes, but on which side I do not know",
              () =>
                this.#host.answered(
                  withLook(this.#host.car, look.look, [look.either], "yes"),
                  meaning(look, "yes"),
                ),
              { "data-result": "either" },
            ),
        ),
      ),
    );
  }

  /** Checks made here before, each with the way to remove it. */
  async #listMade(): Promise<void> {
    const { car, engine, shown } = this.#host;
    const own = (car.looks ?? []).filter((l) => l.by === "customer" && !shown(l));
    if (own.length === 0) return;
    const texts = new Map<string, string>();
    try {
      const sheet = await engine.ask({ ask: "sheet", car });
      if (sheet.kind === "sheet")
        for (const line of sheet.walk_round.flatMap((section) => section.lines))
          texts.set(`${line.look} ${line.on}`, line.text);
    } catch {
      // The checks count; only their sentences are missing.
    }
    const id = freshId("made");
    this.#made.replaceChildren(
      el(
        "section",
        { "aria-labelledby": id },
        el("h3", { id }, "Looks you have made"),
        el(
          "ul",
          { class: "looks-made" },
          own.map((l) => {
            const text = texts.get(`${l.look} ${l.on}`) ?? "A look at one part";
            return el(
              "li",
              {},
              `${text}: ${SAID[l.result]}. `,
              button(
                "Take back",
                () => this.#host.answered(withLook(car, l.look, [l.on], null), "Taking that look back"),
                { class: "change", "aria-label": `Take back: ${text}` },
              ),
            );
          }),
        ),
      ),
    );
  }
}
