// What is wrong with a file, a row or an entry: where, what was found, what was expected.
// All of them are shown in the same way.

import { el } from "../shared/dom.ts";
import { isObject } from "../shared/ratesfile.ts";

const MOST_SHOWN = 30;

/** A fault to be shown. It has what was expected, or else a sentence. */
export interface ShownFault {
  path?: string;
  /** Where it is, in words. */
  place?: string;
  found?: string;
  expected?: string;
  text?: string;
}

/** A fault at a path of a file. */
export interface FileFault extends ShownFault {
  path: string;
}

/** place: where a fault is, in words. */
export function faultList<F extends ShownFault>(
  faults: readonly F[],
  place: (fault: F) => string = placeOf,
): HTMLUListElement {
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

function placeOf(f: ShownFault): string {
  return f.path || f.place || "";
}

/** Says jobs[3].came_to as the name of the job and of the entry. */
function inWords(file: unknown): (fault: FileFault) => string {
  const jobs = isObject(file) && Array.isArray(file.jobs) ? file.jobs : [];
  return ({ path }) => {
    const [, n, rest = ""] = /^jobs\[(\d+)\](.*)$/.exec(path) ?? [];
    if (n === undefined) return path;
    const job: unknown = jobs[Number(n)];
    const name = isObject(job) && typeof job.name === "string" && job.name ? job.name : Number(n) + 1;
    return `job ${name}${rest ? `, ${rest.replace(/^\./, "")}` : ""}`;
  };
}

/** The faults of a file that is not taken. file: what the text held, if it was JSON. stays:
 *  what remains as it was. */
export function notTaken(faults: readonly FileFault[], file: unknown, stays: string): HTMLElement[] {
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
