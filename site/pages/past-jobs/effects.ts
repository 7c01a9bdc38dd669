// What the shop's own figures do to three sample cars: the rates on the site beside those
// with the figures, on one money axis.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { type EngineClient, Overtaken } from "../shared/engineclient.ts";
import type { EffectReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { sampleCars } from "../shared/samplecars.ts";

/** Shows it in a box, and improves it while the engine goes on. before, after: texts of
 *  rates. */
export async function showEffect(
  box: HTMLElement,
  client: EngineClient,
  before: string,
  after: string,
): Promise<void> {
  box.replaceChildren(
    el("p", { class: "rough-note" }, "Being worked out on three sample cars, all invented."),
  );
  try {
    const draw = (reply: ReplyTo<"effect">) => {
      if (reply.kind === "effect") box.replaceChildren(picture(reply));
    };
    const last = await client.refine(
      { ask: "effect", old: before, new: after, cars: await sampleCars() },
      draw,
    );
    if (last.kind !== "effect") {
      box.replaceChildren(el("p", { class: "error" }, last.text));
      return;
    }
    draw(last);
  } catch (error) {
    if (!(error instanceof Overtaken))
      box.replaceChildren(
        el("p", { class: "error" }, "The sums did not answer. Nothing you entered is lost."),
      );
  }
}

function picture(reply: EffectReply): HTMLElement {
  const rough = reply.state !== "settled";
  const rows = reply.cars.flatMap((c) => (c.old ? [c.old, c.new] : [c.new]));
  const levels = levelsOf(rows);
  return el(
    "div",
    { class: rough ? "is-rough" : null, "data-state": reply.state },
    rough && el("p", { class: "rough-note" }, "Still being worked out."),
    reply.changed.length > 0
      ? [
          el("p", {}, "Most changed:"),
          el(
            "ul",
            {},
            reply.changed.map((c) => el("li", {}, c.text)),
          ),
        ]
      : !rough && el("p", {}, "It changes nothing that these cars would show."),
    reply.cars.map((c) =>
      el(
        "div",
        { class: "effect-car" },
        el("h4", {}, c.name),
        el("p", { class: "effect-sentence" }, c.sentence),
        c.old && [el("p", { class: "which" }, "On the site"), dotRow(c.old, reply.axis, levels)],
        [el("p", { class: "which" }, "With these figures"), dotRow(c.new, reply.axis, levels)],
      ),
    ),
  );
}
