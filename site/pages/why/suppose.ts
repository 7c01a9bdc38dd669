// Suppose: one part is taken as sound or as rusted through, and the odds of the parts that
// rust with it move. Nothing of it is recorded.

import type { CarFile } from "../shared/carfile.ts";
import { button, type Children, el, freshId } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { NeighbourMoved, SheetReply, SheetZone, SupposeReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import type { Hand } from "./hand.ts";
import { missing } from "./sums.ts";
import type { TalkPage } from "./talk.ts";
import { rowsOf } from "./twoways.ts";

type Supposed = "sound" | "rusted_through";

const CHOICES: readonly (readonly [Supposed, string])[] = [
  ["sound", "Sound"],
  ["rusted_through", "Rusted through"],
];
/** Beside a car nobody reads more lines than this (assumption). */
const MOST = 4;

export interface SupposeHost {
  readonly engine: EngineClient;
  say(text: string): void;
  hand(): Hand;
}

/** Parts whose condition is already known. What was read off the outside of a closed box
 *  can still turn out otherwise. */
function knownParts(car: CarFile, sheet: SheetReply): Set<string> {
  const sure = (car.survey ?? []).filter(
    (r) => r.condition && (!sheet.items[r.on]?.closed || r.stage === "opening_up"),
  );
  return new Set(sure.map((r) => r.on));
}

/** The zones with their parts that are not known, and no zone without one. */
function openZones(sheet: SheetReply, known: ReadonlySet<string>) {
  return sheet.zones
    .map((zone): { zone: SheetZone; parts: string[] } => ({
      zone,
      parts: zone.rows
        .flatMap((r) => r.lines.flatMap((l) => [l.left, l.right, l.whole]))
        .filter((on) => on && !known.has(on)),
    }))
    .filter(({ parts }) => parts.length > 0);
}

export class Suppose implements TalkPage {
  readonly id = "suppose";
  readonly title = "Suppose";
  readonly line = "One look tells about the places that share its water.";
  readonly needs = null;
  readonly node = el("div", { class: "suppose" });
  #host: SupposeHost;
  #of: CarFile | null = null;
  #on = "";
  #choice: Supposed | null = null;
  #reply: SupposeReply | null = null;
  #turn = 0;
  #select: HTMLSelectElement = el("select", {
    id: freshId("part"),
    class: "big",
    on: { change: () => this.#take(this.#select.value) },
  });
  #buttons = CHOICES.map(([id, text]) =>
    button(text, () => this.#ask(id), { class: "big", "data-suppose": id }),
  );
  #result = el("div", { class: "suppose-result" });
  #drawing = new Drawing({
    condition: (on) => this.#condition(on),
    tap: (on) => {
      if (this.#select.querySelector(`[value="${CSS.escape(on)}"]`)) this.#take(on);
    },
  });
  #picture = el("div", { class: "suppose-picture" }, this.#drawing.node);

  constructor(host: SupposeHost) {
    this.#host = host;
  }

  draw(): void {
    const { car, sheet } = this.#host.hand();
    if (this.#of === car) return;
    this.#of = car;
    this.#turn++;
    const known = knownParts(car, sheet);
    const zones = openZones(sheet, known);
    const likeliest = zones.find(({ zone }) => zone.id === "sill") ?? zones[0];
    if (!likeliest) {
      this.node.replaceChildren(
        el(
          "p",
          { class: "tells" },
          "Every part of this car has been seen: there is nothing left to suppose.",
        ),
      );
      return;
    }
    this.#select.replaceChildren(
      ...zones.map(({ zone, parts }) =>
        el(
          "optgroup",
          { label: zone.name },
          parts.map((on) => el("option", { value: on }, sheet.items[on]?.name)),
        ),
      ),
    );
    this.node.replaceChildren(
      el(
        "div",
        { class: "suppose-ask" },
        el("label", { for: this.#select.id }, "Suppose this part is"),
        this.#select,
        el("div", { class: "big-buttons" }, this.#buttons),
        known.size > 0 && el("p", { class: "hint" }, "Parts already seen in bare metal are left out."),
      ),
      el("div", { class: "two-sides" }, this.#result, this.#picture),
    );
    this.#outline(sheet);
    this.#take(likeliest.parts[0] ?? "");
  }

  async #outline(sheet: SheetReply): Promise<void> {
    try {
      await this.#drawing.show(sheet.drawing, []);
    } catch {
      this.#picture.replaceChildren(
        el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."),
      );
      return;
    }
    const key = hatchingKey([
      { id: "rusted_through", name: "Supposed rusted through" },
      { id: "light_pitting", name: "Its odds move" },
    ]);
    key.lastChild?.remove();
    this.#drawing.node
      .querySelector("figcaption")
      ?.replaceChildren(el("p", {}, "A part can be picked here too: it gets a heavy outline."), key);
    this.#drawing.outline(this.#on);
  }

  /** Picks another part, and forgets what was supposed of the one before. */
  #take(on: string): void {
    this.#on = on;
    this.#select.value = on;
    this.#turn++;
    this.#show(null, null);
    this.#result.replaceChildren(el("p", { class: "hint" }, "Say which, and see who keeps it company."));
  }

  async #ask(condition: Supposed): Promise<void> {
    const turn = ++this.#turn;
    const { car } = this.#host.hand();
    this.#show(condition, null);
    this.#result.replaceChildren(el("p", { class: "working" }, "Working it out."));
    let reply: ReplyTo<"suppose">;
    try {
      reply = await this.#host.engine.ask({ ask: "suppose", car, on: this.#on, condition });
    } catch {
      reply = { id: 0, kind: "refused", what: "request", text: "" };
    }
    if (turn !== this.#turn) return;
    if (reply.kind !== "suppose") {
      const ruledOut = reply.kind === "refused" && reply.path === "on";
      const gap = ruledOut ? this.#ruledOut(condition) : missing(reply, () => this.#ask(condition));
      this.#result.replaceChildren(...(gap ? [gap] : []));
      return;
    }
    this.#show(condition, reply);
    this.#result.replaceChildren(...supposed(reply));
    this.#host.say(`${reply.compared} ${reply.rows.map((r) => `${r.label}: ${r.sentence}`).join(" ")}`);
  }

  #ruledOut(condition: Supposed): HTMLElement {
    const said = condition === "sound" ? "sound" : "rusted through";
    return el(
      "p",
      { class: "error" },
      `What is recorded of this car rules that out: ${this.#select.selectedOptions[0]?.textContent} cannot be ${said}.`,
    );
  }

  #show(choice: Supposed | null, reply: SupposeReply | null): void {
    this.#choice = choice;
    this.#reply = reply;
    for (const node of this.#buttons)
      node.setAttribute("aria-pressed", String(node.dataset.suppose === choice));
    this.#drawing.refresh();
    this.#drawing.outline(this.#on);
  }

  #condition(on: string) {
    if (on === this.#on) return this.#choice === "rusted_through" ? "rusted_through" : null;
    return movedOf(this.#reply).some((n) => n.on === on) ? "light_pitting" : null;
  }
}

/** Neighbours whose odds differ in words. */
const movedOf = (reply: SupposeReply | null): NeighbourMoved[] =>
  (reply?.neighbours ?? []).filter((n) => n.before_text !== n.after_text).slice(0, MOST);

function supposed(reply: SupposeReply): HTMLElement[] {
  const moved = movedOf(reply);
  const cell = (text: Children) => el("td", {}, text);
  return [
    moved.length === 0
      ? el("p", { class: "tells" }, "No other place moves by as much as one car in ten.")
      : el(
          "table",
          { class: "neighbours" },
          el("caption", {}, "Cars with it rusted through or gone"),
          el(
            "thead",
            {},
            el(
              "tr",
              {},
              ["Place", "Now", "If so"].map((h) => el("th", { scope: "col" }, h)),
            ),
          ),
          el(
            "tbody",
            {},
            moved.map((n) =>
              el(
                "tr",
                {},
                el(
                  "th",
                  { scope: "row" },
                  n.name,
                  n.same_water && el("span", { class: "hint same-water" }, " (shares its water)"),
                ),
                cell(n.before_text),
                cell(n.after_text),
              ),
            ),
          ),
        ),
    rowsOf(reply),
    el("p", { class: "tells" }, reply.compared),
  ];
}
