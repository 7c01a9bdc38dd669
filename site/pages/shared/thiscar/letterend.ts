// The end of the letter: the customer's rights, and the small print.

import { el, list } from "../dom.ts";
import type { OpenedReply, RangeReply } from "../replies.ts";
import { cautionLines, codeLine, section } from "./letterparts.ts";

// Nothing at all: California, Business and Professions Code 9884.9. A tenth: Ohio
// Administrative Code 109:4-3-13(A). More: Germany, BGB 649, "substantial". An
// exception for old cars: Washington, RCW 46.71.025.
export function rights(opened: OpenedReply, range: RangeReply): HTMLElement {
  return section(
    "Your rights",
    cautionLines(range.cautions, ["rights"]),
    el(
      "p",
      {},
      "After the survey the shop gives you a written estimate before it goes on, and asks for your yes before any cost beyond it. How far a bill may pass an estimate without asking differs from place to place, from not at all to a tenth or more, and some places make exceptions for old cars: ask locally. This letter is no offer, nobody has agreed to anything by it, and there is nothing on it to sign.",
    ),
    list(opened.terms, { class: "terms" }),
  );
}

/** Longest link that is printed, in characters: six lines on paper. */
const MOST_PRINTED = 700;

function addressLine(address: string | null): string | null {
  if (!address) return null;
  return address.length <= MOST_PRINTED
    ? `To open these answers again: ${address}`
    : "So much is recorded that a link does not fit here: the shop has the car as a file.";
}

export function foot(
  opened: OpenedReply,
  range: RangeReply,
  address: string | null,
  code: SVGSVGElement | null,
): HTMLElement {
  const line = addressLine(address);
  return el(
    "div",
    { class: "paper-foot" },
    code?.cloneNode(true),
    cautionLines(range.cautions, ["local"]),
    el("p", {}, range.how_sure, " ", range.own_record.join(" ")),
    range.warnings.map((t) => el("p", {}, t)),
    el(
      "p",
      {},
      `Simulated cars are cars like yours that we make up from the odds of rust. ${range.known_limits.join(" ")}`,
    ),
    codeLine(range, opened),
    line && el("p", { class: "address" }, line),
  );
}
