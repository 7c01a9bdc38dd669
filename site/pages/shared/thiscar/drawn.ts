// The car opened out flat, nose up, hatched by what is recorded, in ink only.
// It mirrors the list, which says the same in words.

import { ofBuild } from "../address.ts";
import { el, freshId, svg } from "../dom.ts";

const WEIGHT = { strong: 1.7, plain: 1.1, light: 0.85, fine: 0.7 };

/** Hatching by condition; sound is blank, and gone is cut out. */
export const HATCH = {
  sound: "blank",
  light_pitting: "dots",
  heavy_pitting: "close",
  pinholes: "ringed",
  rusted_through: "crossed",
  gone: "cut",
};
const SAID = {
  blank: "blank",
  dots: "dots",
  close: "close dots",
  ringed: "ringed dots",
  crossed: "crossed",
  cut: "cut out: a heavy broken line",
};

function patterns(id) {
  const pattern = (name, size, ...marks) =>
    svg("pattern", { id: `${id}-${name}`, width: size, height: size, patternUnits: "userSpaceOnUse" }, marks);
  const spot = (at, r) => svg("circle", { cx: at, cy: at, r, class: "spot" });
  return svg(
    "defs",
    {},
    pattern("dots", 9, spot(4.5, 1.1)),
    pattern("close", 4, spot(2, 1)),
    pattern(
      "ringed",
      8,
      spot(4, 1),
      svg("circle", { cx: 4, cy: 4, r: 2.7, class: "stroke", "stroke-width": 0.7 }),
    ),
    pattern("crossed", 5, svg("path", { d: "M0 0L5 5M5 0L0 5", class: "stroke", "stroke-width": 0.9 })),
  );
}

function shapeOf(shape, id) {
  return svg(
    "g",
    { class: "part", "data-item": shape.item },
    svg("path", { d: shape.d, class: "skin", "fill-rule": "evenodd" }),
    svg("path", { d: shape.d, class: "hatch", "fill-rule": "evenodd", fill: "none", "data-id": id }),
    svg("path", { d: shape.d, class: "stroke edge", "stroke-width": WEIGHT[shape.weight] ?? 1 }),
  );
}

function sheet(part, id) {
  return svg(
    "svg",
    { viewBox: part.crop, class: "opened-out", "aria-hidden": "true", focusable: "false" },
    patterns(id),
    part.shapes.map((shape) => shapeOf(shape, id)),
    part.lines.map((line) =>
      svg("path", { d: line.d, class: "stroke", "stroke-width": WEIGHT[line.weight] ?? 1 }),
    ),
  );
}

function keyEntry(name, text) {
  const id = freshId("hatch");
  const box = { x: 2, y: 2, width: 32, height: 16 };
  return el(
    "li",
    {},
    svg(
      "svg",
      { viewBox: "0 0 36 20", class: "key-box", "aria-hidden": "true", focusable: "false" },
      patterns(id),
      HATCH_FILLED.has(name) && svg("rect", { ...box, fill: `url(#${id}-${name})` }),
      svg("rect", {
        ...box,
        fill: "none",
        class: name === "cut" ? "stroke cut-edge" : name === "none" ? "stroke none-edge" : "stroke",
        "stroke-width": name === "cut" ? 3 : name === "none" ? 0.7 : 1.4,
      }),
    ),
    text,
  );
}
const HATCH_FILLED = new Set(["dots", "close", "ringed", "crossed"]);

export function hatchingKey(conditions) {
  return el(
    "ul",
    { class: "key" },
    conditions.map((c) => keyEntry(HATCH[c.id], `${c.name}: ${SAID[HATCH[c.id]]}`)),
    keyEntry("none", "Not recorded: a thin line"),
  );
}

/** Draws how a part stands. */
function mark(group, condition) {
  const [, hatch] = group.children;
  const name = HATCH[condition] ?? null;
  group.classList.toggle("not-recorded", name === null);
  group.classList.toggle("cut-out", name === "cut");
  hatch.setAttribute("fill", HATCH_FILLED.has(name) ? `url(#${hatch.dataset.id}-${name})` : "none");
}

export class Drawing {
  node = el("figure", { class: "sheets car-drawing" });
  #of = null;
  #host;

  /** host: condition(on) or null, tap(on) */
  constructor(host) {
    this.#host = host;
  }

  async show(body, conditions) {
    if (this.#of === body) {
      this.refresh();
      return;
    }
    this.#of = body;
    const response = await fetch(ofBuild(`drawings/${body}.json`));
    if (!response.ok) throw new Error(`drawing: ${response.status}`);
    const data = await response.json();
    if (this.#of !== body) return;
    const id = freshId("car");
    const pair = el(
      "div",
      {
        class: "sheet-pair",
        on: {
          click: (event) => {
            const on = event.target.closest("[data-item]")?.dataset.item;
            if (on) this.#host.tap(on);
          },
        },
      },
      [
        ["Outside", "skins"],
        ["Behind the skins", "behind"],
      ].map(([name, sheetName]) =>
        el(
          "div",
          {},
          el("p", { class: "sheet-name" }, name),
          sheet(data.sheets[sheetName], `${id}-${sheetName}`),
        ),
      ),
    );
    this.node.replaceChildren(
      pair,
      el(
        "figcaption",
        {},
        el(
          "p",
          {},
          "The car opened out flat, nose up; its left is on your left. The part in hand has a heavy outline.",
        ),
        hatchingKey(conditions),
      ),
    );
    this.refresh();
  }

  refresh() {
    for (const group of this.node.querySelectorAll("[data-item]"))
      mark(group, this.#host.condition(group.dataset.item));
  }

  refreshOne(on) {
    for (const group of this.node.querySelectorAll(`[data-item="${CSS.escape(on)}"]`))
      mark(group, this.#host.condition(on));
  }

  outline(on) {
    for (const group of this.node.querySelectorAll("[data-item]"))
      group.classList.toggle("in-hand", group.dataset.item === on);
  }
}
