// What figures of the shop's own do to three sample cars: the rates on the site
// beside those with the figures, on one money axis.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { Overtaken } from "../shared/engineclient.ts";
import { sampleCars } from "../shared/samplecars.ts";

/** Shows it in a box, better and better. Gives the last answer, or null when it
 *  was overtaken. */
export async function showEffect(box, link, before, after) {
  box.replaceChildren(
    el("p", { class: "rough-note" }, "Being worked out on three sample cars, all invented."),
  );
  try {
    const draw = (reply) => {
      if (reply.kind === "effect") box.replaceChildren(picture(reply));
    };
    const last = await link.refine(
      { ask: "effect", old: before, new: after, cars: await sampleCars() },
      draw,
    );
    if (last.kind !== "effect") {
      box.replaceChildren(el("p", { class: "error" }, last.text));
      return null;
    }
    draw(last);
    return last;
  } catch (error) {
    if (!(error instanceof Overtaken))
      box.replaceChildren(
        el("p", { class: "error" }, "The sums did not answer. Nothing you entered is lost."),
      );
    return null;
  }
}

function picture(reply) {
  const rough = reply.state !== "settled";
  const rows = reply.cars.flatMap((c) => [c.old, c.new]).filter(Boolean);
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
        c.new && [el("p", { class: "which" }, "With these figures"), dotRow(c.new, reply.axis, levels)],
      ),
    ),
  );
}
