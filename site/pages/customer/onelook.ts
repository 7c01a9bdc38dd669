// The question that decides what a good check is worth, while it is not answered, and
// one look that helps: the look that would tell most, one at a time, with what
// it takes and what may hurt; and what the next stage is worth. Both come from
// the engine once the range has settled, and neither holds anything up.

import { button, el, freshId } from "../shared/dom.ts";
import { withLook } from "../shared/car.ts";

/** The looks come quickly; what the stages are worth takes the engine seconds at
 *  a time, in which it answers nothing else, so it waits for a longer pause. */
const PAUSE_MS = 1000;
const LONGER_PAUSE_MS = 3000;
const RESULTS = [
  ["yes", "Yes"],
  ["no", "No"],
  ["could_not", "Could not look"],
];
const SAID = { yes: "yes", no: "no", could_not: "could not look" };

/** An answer as it is called away from its look, for "… moved the range". */
const meaning = (look, result) => `Your “${SAID[result]}” (${look.text.replace(/\?$/, "")})`;

export class OneLook {
  /** The question, the look with those made before, and the line for the next stage. */
  first = el("div", {});
  node = el("div", { class: "one-look" });
  stage = el("p", { class: "stage-worth", hidden: true });
  #host;
  #timer = 0;
  #offer = el("div", {});
  #made = el("div", {});

  /** host: link, car, covered (that question), shown(look) (the answers to the questions show it), answered(car,
   *  text) */
  constructor(host) {
    this.#host = host;
    this.node.append(this.#offer, this.#made);
    this.#askCovered();
    this.#listMade();
  }

  #askCovered() {
    const { car, covered: q, answered } = this.#host;
    if (car.covered) return;
    const id = freshId("covered");
    this.first.append(
      el(
        "section",
        { "aria-labelledby": id, class: "covered-first" },
        el("h2", { id }, "First, about the paint"),
        el("p", {}, q.title),
        el("p", { class: "hint" }, q.hint),
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

  /** The range has settled: what would help is looked for in a moment. */
  settled() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#ask(), PAUSE_MS);
  }

  async #ask() {
    if (!this.node.isConnected) return;
    const { link, car } = this.#host;
    const request = { ask: "worth", car, for: "customer" };
    try {
      this.#took(await link.ask(request));
      await new Promise((resolve) => {
        this.#timer = setTimeout(resolve, LONGER_PAUSE_MS);
      });
      if (this.node.isConnected) this.#took(await link.refine(request, (reply) => this.#took(reply)));
    } catch {
      /* Overtaken by a newer answer, or no sums: the range stands without it. */
    }
  }

  #took(reply) {
    if (reply.kind !== "worth" || !this.node.isConnected) return;
    const [look] = reply.looks ?? [];
    if (look && this.#offer.dataset.look !== `${look.look} ${look.on}`) this.#show(look);
    const line = (reply.stages ?? []).find((s) => s.id === "survey")?.line;
    this.stage.hidden = !line;
    this.stage.textContent = line ?? "";
    this.node.dataset.worth = reply.state;
  }

  #show(look) {
    const id = freshId("look");
    this.#offer.dataset.look = `${look.look} ${look.on}`;
    const answer = (result) =>
      this.#host.answered(withLook(this.#host.car, look.look, [look.on], result), meaning(look, result));
    this.#offer.replaceChildren(
      el(
        "section",
        { "aria-labelledby": id },
        el("h2", { id }, "One look that helps"),
        el("p", { class: "look-ask" }, look.text),
        look.how && el("p", {}, look.how),
        look.needs && el("p", {}, `You need: ${look.needs}.`),
        look.caution && el("p", { class: "caution" }, look.caution),
        !/\bjack\b/.test(look.caution ?? "") &&
          el("p", { class: "caution" }, "Never put any part of yourself under a car that stands on a jack."),
        [look.place_line, look.whole_line].filter(Boolean).map((text) => el("p", { class: "hint" }, text)),
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

  /** Looks made here before, each with the way to take it back. */
  async #listMade() {
    const { car, link, shown } = this.#host;
    const own = (car.looks ?? []).filter((l) => l.by === "customer" && !shown(l));
    if (own.length === 0) return;
    let texts = new Map();
    try {
      const sheet = await link.ask({ ask: "sheet", car });
      if (sheet.kind === "sheet")
        texts = new Map(sheet.walk_round.flatMap((s) => s.lines.map((l) => [`${l.look} ${l.on}`, l.text])));
    } catch {
      /* The looks count; only their sentences are missing. */
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
