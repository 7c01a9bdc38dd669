// The shop picks what is on a sheet of changes to agree. This is not printed.

import { button, el, freshId } from "../shared/dom.ts";
import type { SheetReply, ToDoCard } from "../shared/replies.ts";
import type { CarContext } from "../shared/thiscar/context.ts";
import { type Changes, DEAREST } from "./changes.ts";

export interface ChangesHost extends CarContext {
  /** The sheet changes. key: of what was pressed, or null where only a text has changed. */
  redraw(key: string | null): void;
}

/** Whether a part is in a zone; a blank zone has all parts. */
const inZone = (sheet: SheetReply, zone: string) => (card: ToDoCard) =>
  !zone || sheet.items[card.on]?.zone === zone;

/** The shop's side of the sheet, which is not printed. */
export function changesPick(host: ChangesHost, changes: Changes, cards: readonly ToDoCard[]): HTMLElement {
  const { redraw } = host;
  const { sheet } = host.openCar;
  const chosen = changes.chosen(cards);
  const number = freshId("number");
  const zone = freshId("zone");
  const input = el("input", {
    id: number,
    type: "text",
    maxlength: 20,
    autocomplete: "off",
    "data-key": "number",
    on: {
      input: () => {
        changes.number = input.value.trim();
        redraw(null);
      },
    },
  });
  input.value = changes.number;
  const select = el(
    "select",
    {
      id: zone,
      "data-key": "zone",
      on: {
        change: () => {
          changes.zone = select.value;
          redraw("zone");
        },
      },
    },
    el("option", { value: "" }, "Every zone"),
    sheet.zones.map((z) => el("option", { value: z.id }, z.name)),
  );
  select.value = changes.zone;
  const shown = cards.filter(inZone(sheet, changes.zone));
  return el(
    "section",
    { class: "no-paper pick", "aria-label": "What stands on this sheet" },
    el("div", { class: "typed" }, el("label", { for: number }, "Number of this sheet"), input),
    el("div", { class: "typed" }, el("label", { for: zone }, "Parts of which zone"), select),
    el(
      "p",
      {},
      `${chosen.length} on this sheet. Without a tick of yours the dearest ${DEAREST} undecided ones stand on it.`,
    ),
    el(
      "div",
      { class: "band-buttons" },
      button(
        "The dearest undecided",
        () => {
          changes.dearest();
          redraw("dearest");
        },
        { "data-key": "dearest" },
      ),
      button(
        "None of them",
        () => {
          changes.none();
          redraw("none");
        },
        { "data-key": "none" },
      ),
    ),
    shown.length === 0 && el("p", {}, "No damaged part is recorded in this zone."),
    el(
      "ul",
      { class: "pick-list" },
      shown.map((card) =>
        el(
          "li",
          {},
          button(
            [card.title, card.chosen ? el("span", { class: "more" }, card.chosen_text) : ""],
            () => {
              changes.tick(cards, card.on);
              redraw(`tick-${card.on}`);
            },
            {
              class: "mark",
              "data-key": `tick-${card.on}`,
              "aria-pressed": String(chosen.includes(card.on)),
            },
          ),
        ),
      ),
    ),
  );
}
