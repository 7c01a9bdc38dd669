// The strip of twelve boxes: below its own range, ten slots inside it, above. Each job has
// one mark. The marks differ in shape, and a count is under each box.

import { el, svg } from "../shared/dom.ts";
import type { JobsBox } from "../shared/replies.ts";

const MANY = 8;

type Kind = "below" | "inside" | "above";

/** The outline of each mark, and its class. */
const SHAPES: Record<Kind, readonly [d: string, className: string]> = {
  below: ["M1 2H11L6 11Z", "mark-open"],
  inside: ["M6 1a5 5 0 1 0 .01 0Z", "mark-full"],
  above: ["M1 10H11L6 1Z", "mark-open"],
};

function mark(kind: Kind): SVGSVGElement {
  const [d, className] = SHAPES[kind];
  return svg(
    "svg",
    { viewBox: "0 0 12 12", class: `job-mark ${className}`, focusable: "false" },
    svg("path", { d, "stroke-width": 1.4 }),
  );
}

/** boxes: twelve, as the engine gives them. text: the same in words. */
export function boxStrip(boxes: readonly JobsBox[], text: string): HTMLElement {
  const last = boxes.length - 1;
  const box = (b: JobsBox, k: number) => {
    const kind = k === 0 ? "below" : k === last ? "above" : "inside";
    const label = kind === "inside" ? String(k) : kind;
    return el(
      "li",
      { class: `one-box ${kind}${b.jobs > MANY ? " many" : ""}` },
      el("span", { class: "visually-hidden" }, `${b.name}: ${b.jobs === 1 ? "1 job" : `${b.jobs} jobs`}`),
      el(
        "span",
        { class: "box-marks", "aria-hidden": "true" },
        Array.from({ length: b.jobs }, () => mark(kind)),
      ),
      el("span", { class: "box-count", "aria-hidden": "true" }, b.jobs || "–"),
      el("span", { class: "box-label", "aria-hidden": "true" }, label),
    );
  };
  return el(
    "figure",
    { class: "box-strip" },
    el("ol", { class: "boxes", "aria-label": "Where the jobs fell" }, boxes.map(box)),
    el("figcaption", {}, text),
  );
}

/** Ten heights with their counts as text. */
export function tenths(counts: readonly number[], caption: string): HTMLTableElement {
  const most = Math.max(1, ...counts);
  const bar = (n: number) =>
    svg(
      "svg",
      {
        viewBox: "0 0 100 10",
        class: "pit-bar",
        "aria-hidden": "true",
        focusable: "false",
        preserveAspectRatio: "none",
      },
      svg("rect", { width: (n / most) * 100, height: 10, fill: "currentColor" }),
    );
  return el(
    "table",
    { class: "pit" },
    el("caption", {}, caption),
    el(
      "thead",
      {},
      el("tr", {}, el("th", { scope: "col" }, "Tenth"), el("th", { scope: "col" }, "Jobs"), el("td", {})),
    ),
    el(
      "tbody",
      {},
      counts.map((n, k) =>
        el(
          "tr",
          {},
          el("th", { scope: "row" }, String(k + 1)),
          el("td", {}, String(n)),
          el("td", {}, bar(n)),
        ),
      ),
    ),
  );
}
