// Whether it must be this very body: asked under the range, only by a shop that has another to
// offer, together with what that would take. Every figure is the engine's own text.

import type { CarFile } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { Choice } from "../shared/question.ts";
import type { RangeReply } from "../shared/replies.ts";
import { sec } from "./sec.ts";

export interface AnotherBodyHost {
  car: CarFile;
  question: Choice;
  /** Takes the car with the answer, and what the answer is called. */
  answered(car: CarFile, text: string): void;
}

/** The question, with what another body would take; null where the shop offers no other body. */
export function anotherBody(reply: RangeReply, host: AnotherBodyHost): HTMLElement | null {
  const offers = reply.rows.flatMap(({ label, another_body: offer }) => (offer ? [{ label, offer }] : []));
  const [first] = offers;
  if (!first) return null;
  const { car, question: q, answered } = host;
  const chosen = q.chosen(car);
  return sec(
    "another-body",
    freshId("another"),
    q.title,
    offers.map(({ label, offer }) => [
      reply.rows.length > 1 && el("h3", {}, label),
      offer.lines.map((line) => el("p", {}, line)),
    ]),
    el("p", { class: "caution", "data-caution": "stamped_body" }, first.offer.caution),
    el(
      "div",
      { class: "marks" },
      q.answers.map((a) =>
        button(a.text, () => answered(q.apply(car, a.id), `“${a.text}” (${q.short.toLowerCase()})`), {
          "data-another": a.id,
          "aria-pressed": String(a.id === chosen),
        }),
      ),
    ),
  );
}
