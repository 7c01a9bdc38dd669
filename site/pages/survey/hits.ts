// The card of hits and squareness: one row of buttons for each zone, and one for the whole
// body. The keys are those of the parts' rows: arrows move, a digit records, Backspace and
// Ctrl Z take back.

import type { HitZone } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { IDName } from "../shared/replies.ts";
import { hitRecord } from "../shared/thiscar/carmembers.ts";
import type { Act } from "./keys.ts";
import type { OpenCar } from "./opencar.ts";

/** What the card needs of the list. */
export interface HitsHost {
  /** The current part. */
  at(): string;
  act(...act: Act): unknown;
}

const ZONES: readonly HitZone[] = ["front", "rear", "left", "right", "roof"];

/** The card, or null for a shop that does not reckon with old accidents. */
export function hitsCard(openCar: OpenCar, host: HitsHost): HTMLElement | null {
  const { hits } = openCar.sheet;
  if (!hits) return null;
  const id = freshId("hits");
  const zones = hits.zones.flatMap(({ id: zone, name }) => {
    const where = ZONES.find((z) => z === zone);
    return where ? [row(openCar, host, where, name, hits.manners)] : [];
  });
  const card: HTMLElement = el(
    "section",
    { class: "whole-car hits", "aria-labelledby": id, on: { keydown: (event) => key(card, event) } },
    el("h3", { id }, "Hits and squareness"),
    zones,
    row(openCar, host, "square", "The body", hits.square),
  );
  return card;
}

function row(
  openCar: OpenCar,
  host: HitsHost,
  where: HitZone | "square",
  name: string,
  answers: readonly IDName[],
): HTMLElement {
  const id = freshId("hit");
  const buttons = answers.map((a) =>
    button(
      a.name,
      () => {
        const now = hitRecord(openCar.car, where) === a.id ? null : a.id;
        host.act("hit", { where, id: now, said: a.name.toLowerCase(), at: host.at() });
      },
      { class: "mark", "data-hit": `${where} ${a.id}` },
    ),
  );
  const node = el(
    "div",
    { class: "hit-row marks", role: "group", "aria-labelledby": id },
    el("span", { id, class: "hit-name" }, name),
    " ",
    buttons,
  );
  markHits(node, openCar);
  return node;
}

/** Presses the buttons that the records say. */
export function markHits(card: HTMLElement, openCar: OpenCar): void {
  for (const node of card.querySelectorAll<HTMLElement>("[data-hit]")) {
    const [where, id] = (node.dataset.hit ?? "").split(" ");
    const at = where === "square" ? where : ZONES.find((z) => z === where);
    node.setAttribute("aria-pressed", String(at !== undefined && hitRecord(openCar.car, at) === id));
  }
}

/** Arrows move among the buttons, and a digit presses the button of its row. */
function key(card: HTMLElement, event: KeyboardEvent): void {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  const rows = [...card.querySelectorAll(".hit-row")].map((r) => [
    ...r.querySelectorAll<HTMLElement>("button"),
  ]);
  const at = rows.findIndex((r) => r.some((b) => b.matches(":focus")));
  const column = rows[at]?.findIndex((b) => b.matches(":focus")) ?? 0;
  const digit = Number(event.key) - 1;
  const beside: Readonly<Record<string, readonly [number, number]>> = {
    ArrowUp: [-1, 0],
    ArrowDown: [1, 0],
    ArrowLeft: [0, -1],
    ArrowRight: [0, 1],
  };
  const move = beside[event.key];
  const next = move && rows[at + move[0]]?.[column + move[1]];
  if (next) next.focus();
  else if (event.key.length === 1 && digit >= 0) rows[at]?.[digit]?.click();
  else if (!move) return;
  event.preventDefault();
  event.stopPropagation();
}
