// What is wrong with a file, a row or an entry: where, what was found, what was
// expected. One way to show it for all.

import { el } from "../shared/dom.ts";

const MOST_SHOWN = 30;

/** faults: as the engine gives them. place(fault): where it is, in words. */
export function faultList(faults, place = placeOf) {
  const more = faults.length - MOST_SHOWN;
  return el(
    "ul",
    { class: "faults" },
    faults
      .slice(0, MOST_SHOWN)
      .map((f) =>
        el(
          "li",
          {},
          place(f) && el("strong", {}, `${place(f)}: `),
          f.expected ? [f.found ? `found ${f.found}; ` : "", `expected ${f.expected}`] : f.text,
        ),
      ),
    more > 0 && el("li", {}, `and ${more} more`),
  );
}

function placeOf(f) {
  return f.path || f.place || "";
}

/** jobs[3].came_to as the name of the job and of the entry. */
function inWords(file) {
  return (f) => {
    const [, n, rest] = /^jobs\[(\d+)\](.*)$/.exec(f.path ?? "") ?? [];
    if (n === undefined) return f.path ?? "";
    const name = file?.jobs?.[Number(n)]?.name;
    return `${typeof name === "string" && name ? `job ${name}` : `job ${Number(n) + 1}`}${rest ? `, ${rest.replace(/^\./, "")}` : ""}`;
  };
}

/** The faults of a file that is not taken, with what stays in force. */
export function notTaken(faults, file, stays) {
  return [
    el(
      "p",
      {},
      el(
        "strong",
        {},
        faults.length === 1
          ? "One thing is wrong, so nothing of it was taken."
          : `${faults.length} things are wrong, so nothing of it was taken.`,
      ),
      stays ? ` ${stays}` : "",
    ),
    faultList(faults, inWords(file)),
  ];
}
