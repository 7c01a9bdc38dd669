// Dangers of the work, for whoever does it: folded at the line of work that causes them.

import { el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { DangerLine, DangersReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import type { OpenCar } from "./opencar.ts";

/** The folded cautions of some lines of work. about: what the fold belongs to, so that it
 *  stays open when the view is drawn again. level: of the headings that name the lines. */
export function dangersFold(
  lines: readonly DangerLine[],
  closing: string,
  about: string,
  level: "h3" | "h4" = "h3",
): HTMLDetailsElement | null {
  if (lines.length === 0) return null;
  return el(
    "details",
    { class: `dangers dangers-${about}`, "data-stays": true },
    el("summary", {}, "Dangers of this work"),
    content(lines, closing, level),
  );
}

const content = (lines: readonly DangerLine[], closing: string, level: "h3" | "h4"): HTMLElement =>
  el(
    "div",
    {},
    lines.flatMap((l) => [
      el(level, {}, l.line),
      ...l.cautions.map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text)),
    ]),
    el("p", { class: "hint", "data-closing": true }, closing),
  );

/** The cautions of the strip and survey. They are asked for each time they are unfolded,
 *  because answers about the car may have changed. */
export function stripDangers(openCar: OpenCar, engine: EngineClient): HTMLElement {
  const box = el("div", {});
  const fold = el(
    "details",
    { class: "dangers dangers-strip", "data-key": "strip-dangers" },
    el("summary", {}, "Dangers of this work"),
    box,
  );
  fold.addEventListener("toggle", async () => {
    if (!fold.open) return;
    const reply = await askDangers(openCar, engine);
    box.replaceChildren(
      reply.kind === "dangers"
        ? content(reply.strip, reply.closing, "h3")
        : el("p", { class: "error" }, reply.text),
    );
  });
  return el("section", { class: "strip-dangers", "aria-label": "Dangers of the strip" }, fold);
}

/** The engine's dangers of the open car, or why there are none. */
export async function askDangers(
  { car }: OpenCar,
  engine: EngineClient,
): Promise<DangersReply | { kind: "failed"; text: string }> {
  const reply: ReplyTo<"dangers"> | null = await engine.ask({ ask: "dangers", car }).catch(() => null);
  if (reply?.kind === "dangers") return reply;
  const text = reply?.text ?? "The dangers of this work could not be listed. Fold this and open it again.";
  return { kind: "failed", text };
}
