// Our own line drawings: side views for the first question, the car opened out
// flat for the zones, and a cut below the door. All take the text's colour.

import { ofBuild } from "./address.ts";
import { el, freshId, svg } from "./dom.ts";

const WEIGHT = { strong: 1.7, plain: 1.1, light: 0.85, fine: 0.7 };
const read = async (name) => {
  const response = await fetch(ofBuild(`drawings/${name}.json`));
  if (!response.ok) throw new Error(`drawing ${name}: ${response.status}`);
  return response.json();
};

let sides = null;
/** Side view of a body. It fills itself in once loaded; without it the words do. */
export function sideView(body) {
  const figure = svg("svg", {
    viewBox: "0 0 150 56",
    class: "side-view",
    "aria-hidden": "true",
    focusable: "false",
  });
  sides ??= read("sides");
  sides.then(
    (all) => figure.append(...all.sides[body].map((line) => stroke(line))),
    () => {},
  );
  return figure;
}

function stroke(line, scale = 1) {
  return svg("path", { d: line.d, class: "stroke", "stroke-width": (WEIGHT[line.weight] ?? 1) * scale });
}

const CUTS = [
  [
    "A separate rail below the floor, held to it with bolts and rubber blocks",
    ["M22 2L20 34", "M18 36H34V52H18Z", "M34 46H118", "M54 56H74V74H54Z"],
    ["M59 46V56H69V46", "M64 40V66"],
  ],
  [
    "One shell: a deep box below the door with a seam hanging under it, and no rail of its own beside it",
    ["M22 2L20 34", "M14 36H38V58L27 64V76H23V64L14 58Z", "M38 52H118"],
    ["M25 64V76"],
  ],
];

/** What to look for under the door: two cuts across the car with their words. */
export function underTheDoor() {
  return el(
    "div",
    { class: "cuts" },
    CUTS.map(([text, strong, fine]) =>
      el(
        "figure",
        {},
        svg(
          "svg",
          { viewBox: "0 0 120 80", "aria-hidden": "true", focusable: "false" },
          strong.map((d) => svg("path", { d, class: "stroke", "stroke-width": 2.2 })),
          fine.map((d) => svg("path", { d, class: "stroke", "stroke-width": 1.1 })),
        ),
        el("figcaption", {}, text),
      ),
    ),
  );
}

/** Lines at a slant, closer the more cars of ten: the three densities. */
function hatching(id) {
  const one = (name, gap) =>
    svg(
      "pattern",
      {
        id: `${id}-${name}`,
        width: gap,
        height: gap,
        patternUnits: "userSpaceOnUse",
        patternTransform: "rotate(45)",
      },
      svg("path", { d: `M0 0V${gap}`, class: "stroke", "stroke-width": 1.3 }),
    );
  return svg("defs", {}, one("some", 11), one("half", 6), one("most", 3.2));
}

/** Which hatching stands for how many cars of ten; the words are in the key. */
const STEPS = [
  [8, "most"],
  [5, "half"],
  [2, "some"],
];
export const KEY = [
  ["blank", "fewer than 2 cars in 10"],
  ["some", "2 to 4"],
  ["half", "5 to 7"],
  ["most", "8 or more"],
];
const hatchOf = (inTen) => STEPS.find(([least]) => inTen >= least)?.[1] ?? null;

function sheet(data, name, inTen, zoneOf, id) {
  const part = data.sheets[name];
  const shapes = part.shapes.map((shape) => {
    const hatch = hatchOf(inTen.get(shape.item) ?? 0);
    const group = svg(
      "g",
      { class: "part", "data-zone": zoneOf.get(shape.item) },
      svg("path", { d: shape.d, class: "paper", "fill-rule": "evenodd" }),
      hatch && svg("path", { d: shape.d, fill: `url(#${id}-${hatch})`, "fill-rule": "evenodd" }),
      svg("path", { d: shape.d, class: "stroke", "stroke-width": WEIGHT[shape.weight] ?? 1 }),
    );
    return group;
  });
  return svg(
    "svg",
    { viewBox: part.crop, class: "opened-out", "aria-hidden": "true", focusable: "false" },
    hatching(id),
    shapes,
    part.lines.map((line) => stroke(line)),
  );
}

function keyEntry([name, text]) {
  const id = freshId("key");
  return el(
    "li",
    {},
    svg(
      "svg",
      { viewBox: "0 0 36 20", class: "key-box", "aria-hidden": "true", focusable: "false" },
      hatching(id),
      svg("rect", { x: 1, y: 1, width: 34, height: 18, class: "stroke", "stroke-width": 1, fill: "none" }),
      name !== "blank" && svg("rect", { x: 1, y: 1, width: 34, height: 18, fill: `url(#${id}-${name})` }),
    ),
    text,
  );
}

/** The car opened out flat, nose up, in two sheets, hatched by how many cars of
 *  ten are rusted through at each part. The list beside it says the same. */
export async function openedOut(body, zones) {
  const data = await read(body);
  const inTen = new Map();
  const zoneOf = new Map();
  for (const zone of zones) {
    for (const item of zone.items) {
      inTen.set(item.id, item.in_ten);
      zoneOf.set(item.id, zone.id);
    }
  }
  const id = freshId("sheet");
  return el(
    "figure",
    { class: "sheets" },
    el(
      "div",
      { class: "sheet-pair" },
      el(
        "div",
        {},
        el("p", { class: "sheet-name" }, "Outside"),
        sheet(data, "skins", inTen, zoneOf, `${id}-skins`),
      ),
      el(
        "div",
        {},
        el("p", { class: "sheet-name" }, "Behind the skins"),
        sheet(data, "behind", inTen, zoneOf, `${id}-behind`),
      ),
    ),
    el(
      "figcaption",
      {},
      el(
        "p",
        {},
        "The car opened out flat, nose up; its left is on your left. The closer the lines, the more cars of ten are rusted through there.",
      ),
      el("ul", { class: "key" }, KEY.map(keyEntry)),
    ),
  );
}
