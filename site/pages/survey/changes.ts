// "Changes to agree": what was found, the ways to go on with their time and
// money, and boxes for the customer's decision. Which parts stand on a sheet is
// the shop's to tick; without a tick it is the dearest that are undecided.

import { button, el, freshId } from "../shared/dom.ts";
import { paperHead } from "../shared/thiscar/letter.ts";
import { standing } from "../shared/thiscar/record.ts";
import { findingsOf } from "./panel.ts";

/** Blocks of a sheet that nobody has ticked yet (assumption: two sheets of
 *  paper are about as much as is talked through at once). */
const DEAREST = 10;

export class Changes {
  number = "";
  zone = "";
  #ticked = null;
  #car = null;

  /** Ticks belong to one car and to what is recorded on it: only parts that have
   *  a card count. */
  chosen(cards) {
    const all = cards.map((c) => c.on);
    const ticked = this.#ticked?.filter((on) => all.includes(on));
    return (
      ticked ??
      cards
        .filter((c) => !c.chosen)
        .slice(0, DEAREST)
        .map((c) => c.on)
    );
  }

  /** Another car: nothing of the last one stays. */
  about(sheet) {
    if (this.#car !== sheet) {
      this.#car = sheet;
      this.#ticked = null;
      this.number = "";
      this.zone = "";
    }
  }

  tick(cards, on) {
    const now = this.chosen(cards);
    this.#ticked = now.includes(on) ? now.filter((one) => one !== on) : [...now, on];
  }

  dearest() {
    this.#ticked = null;
  }
  none() {
    this.#ticked = [];
  }
}

/** The car as it stood before anything was decided. */
export function undecided(car) {
  const { ways, ...rest } = car;
  return rest;
}

/** What the sheet needs before its parts are known. */
export function changesNeed(car) {
  const before = ["range", { ask: "range", car: undecided(car) }, true];
  return [
    ["to_do", { ask: "to_do", car }, false],
    before,
    ...(car.ways?.length ? [["after", { ask: "range", car }, true]] : []),
  ];
}

/** What each part on the sheet needs. */
export const partsNeed = (car, ons) =>
  ons.flatMap((on) => [
    [`odds ${on}`, { ask: "odds", car, on }, false],
    [`compare ${on}`, { ask: "compare_ways", car, on }, false],
  ]);

const inZone = (job, zone) => (card) => !zone || job.sheet.items[card.on]?.zone === zone;

/** The shop's side, which is not printed. host: job, redraw(key) */
export function changesPick(host, changes, cards) {
  const { job, redraw } = host;
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
    job.sheet.zones.map((z) => el("option", { value: z.id }, z.name)),
  );
  select.value = changes.zone;
  const shown = cards.filter(inZone(job, changes.zone));
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

const box = (text) => el("span", { class: "tick-box" }, "☐ ", text);
const blank = (text) => el("span", { class: "blank" }, text);

/** One way to go on: a box, its name, its time and its part, its money, and what
 *  it does to the total. */
function choice(way, line, waiting) {
  return el(
    "tr",
    { "data-way": way.id },
    el("th", { scope: "row" }, box(way.id === "leave" ? "If left" : way.name)),
    el("td", {}, way.sentence),
    el("td", {}, way.price_text),
    el("td", {}, line ?? (waiting ? "being worked out" : "not worked out")),
  );
}

/** What ways cover and open, each said once with the ways that do. */
function along(ways) {
  const said = new Map();
  for (const way of ways) {
    for (const text of [way.covers_text, ...(way.opens ?? []).map((o) => `Opens ${o}`)].filter(Boolean))
      said.set(text, [...(said.get(text) ?? []), way.name]);
  }
  return [...said].map(([text, names]) =>
    el("p", { class: "small" }, el("strong", {}, `${names.join(", ")}: `), text),
  );
}

function block(job, card, replies) {
  const record = standing(job.car, card.on);
  const item = job.sheet.items[card.on];
  const odds = replies.get(`odds ${card.on}`);
  const compared = replies.get(`compare ${card.on}`);
  const found = [...findingsOf(job.sheet, record), record?.note].filter(Boolean);
  const zone = job.sheet.zones.find((z) => z.id === item?.zone)?.name;
  return el(
    "section",
    { class: "change", "data-change": card.on },
    el("h3", {}, card.title),
    el(
      "p",
      {},
      [
        zone,
        item?.closed && (record?.stage === "opening_up" ? "box opened" : "closed box, seen from outside"),
        record?.photo && `photograph ${record.photo}`,
      ]
        .filter(Boolean)
        .join(" · "),
      found.length > 0 && ` · Found: ${found.join("; ")}`,
      odds?.line && ` · ${odds.line}`,
    ),
    [card.covered_by, ...(card.opened ?? []), card.chosen && card.chosen_text]
      .filter(Boolean)
      .map((t) => el("p", {}, t)),
    el(
      "table",
      { class: "choices" },
      el("caption", { class: "visually-hidden" }, `Ways to go on: ${card.title}`),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          ["Way", "Time, and the part", "Money", "Effect on the total"].map((h) =>
            el("th", { scope: "col" }, h),
          ),
        ),
      ),
      el(
        "tbody",
        {},
        (card.ways ?? []).map((way) =>
          choice(way, compared?.ways?.find((w) => w.id === way.id)?.line, !compared),
        ),
      ),
    ),
    along(card.ways ?? []),
    compared?.kind === "refused" && el("p", { class: "error" }, compared.text),
    card.cannot_leave && el("p", { class: "small" }, card.cannot_leave),
    card.caution && el("p", { class: "caution" }, card.caution),
    el(
      "p",
      { class: "decide" },
      box("yes"),
      box("no"),
      box("talk first"),
      blank("How told"),
      blank("When"),
      blank("By whom"),
      el("span", { class: "blank long" }, "Signature"),
    ),
  );
}

const total = (name, reply) => {
  if (!reply?.rows)
    return el(
      "p",
      {},
      el("strong", {}, `${name}: `),
      reply?.kind === "refused" ? reply.text : "still being worked out.",
    );
  return reply.rows.map((row) =>
    el(
      "p",
      { class: "total", "data-total": name },
      el("strong", {}, `${name}: ${row.low_text} to ${row.high_text}`),
      ` (8 cars in 10${reply.rows.length > 1 ? `; ${row.label}` : ""}).`,
    ),
  );
};

/** The sheet as it is printed. host: opened, job */
export function changesSheet(host, changes, replies) {
  const { job } = host;
  const toDo = replies.get("to_do");
  if (!toDo) return [el("p", { class: "waiting" }, "Working it out.")];
  if (toDo.kind !== "to_do")
    return [el("p", { class: "error" }, toDo.text), el("p", {}, "No sheet is made until this is put right.")];
  const cards = toDo.cards ?? [];
  if (cards.length === 0) return [el("p", {}, "No damaged part is recorded, so there is nothing to agree.")];
  const chosen = changes.chosen(cards);
  const before = replies.get("range");
  const cautions = (host.opened.cautions ?? []).filter((c) =>
    ["local", "structure", "belts", "numbers"].includes(c.id),
  );
  const more = cards.filter((c) => !c.chosen && !chosen.includes(c.on)).length;
  return [
    paperHead(
      host,
      changes.number ? `Changes to agree, sheet ${changes.number}` : "Changes to agree, sheet no. ________",
      before,
    ),
    el("p", { class: "loud" }, "Nothing below is worked on until this sheet is back."),
    total("Range before", before),
    before?.rows && el("p", {}, `${before.rows[0].not_an_estimate} ${before.rows[0].tax_line}`),
    cautions.map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text)),
    chosen.length === 0
      ? el("p", {}, "No part is ticked for this sheet.")
      : cards.filter((c) => chosen.includes(c.on)).map((card) => block(job, card, replies)),
    el(
      "section",
      { class: "after" },
      el("h2", {}, "After this sheet"),
      job.car.ways?.length ? total("Range with what is decided so far", replies.get("after")) : null,
      more > 0 &&
        el("p", {}, `${toDo.undecided_line}. Parts that do not stand on this sheet follow on another.`),
      el(
        "p",
        {},
        blank("Total after, from"),
        blank("to"),
        " (the shop writes it in once the boxes are filled)",
      ),
      el(
        "p",
        {},
        "Small changes agreed beforehand, so that the work does not stop for pinholes: ",
        blank("up to"),
        blank("hours or"),
        blank("each time,"),
        blank("in all; used so far"),
      ),
      el(
        "p",
        {},
        "Time is for the part alone, likely first; getting in, materials of the whole car, supplies and tax are in the total. Money is at the likely hours and the likely price of the part. Effects on the total are ranges too: not an estimate, not a quotation, not a ceiling. You may say no, and the shop may decline a way. Local rules on written approval come before this sheet.",
      ),
      (toDo.shared ?? []).map((t) => el("p", {}, t)),
      before?.rows &&
        el(
          "p",
          { class: "code" },
          `Rates check code ${before.check_code} · ${before.imagined_cars_text} imagined cars · seed ${before.seed} · sums version ${host.opened.version}`,
        ),
    ),
  ];
}
