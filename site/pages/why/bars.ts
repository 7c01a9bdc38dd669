// Bars from nought, drawn beside their own words. A length is a part of the
// whole width of the picture; the words say the figure.

import { el, svg } from "../shared/dom.ts";

const TALL = 5;

/** A sum of money in its own words as a number, for lengths and order alone. */
export const amount = (text) => Number(text.replace(/\D/g, ""));

const clamp = (part) => Math.max(0, Math.min(1, part));
const frameOf = (to) =>
  svg("rect", {
    x: 0.2,
    y: 0.2,
    width: Math.max(0.4, 100 * clamp(to) - 0.4),
    height: TALL - 0.4,
    class: "bar-edge",
  });
const inkTo = (to) =>
  svg("rect", {
    x: 0.2,
    y: 0.2,
    width: Math.max(0.4, 100 * clamp(to) - 0.4),
    height: TALL - 0.4,
    class: "bar-ink",
  });

/** Full up to part; outline goes on to edge, where more is given. */
export function bar(part, edge = null) {
  return svg(
    "svg",
    {
      viewBox: `0 0 100 ${TALL}`,
      preserveAspectRatio: "none",
      class: "bar",
      "aria-hidden": "true",
      focusable: "false",
    },
    edge !== null && frameOf(edge),
    inkTo(part),
  );
}

/** rows: [text, part, edge, more]. The words come first, the bar mirrors them. */
export function barList(rows, { ordered = false } = {}) {
  return el(
    ordered ? "ol" : "ul",
    { class: "bars" },
    rows.map(([text, part, edge, more]) =>
      el("li", {}, el("p", {}, text), bar(part, edge ?? null), more && el("p", { class: "bar-more" }, more)),
    ),
  );
}
