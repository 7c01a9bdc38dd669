// Which step follows which. Steps are words that also stand in the browser's
// history, so an old entry still opens after a change of order here.

import { hasDate } from "./car.ts";

const FIRST_FIVE = ["body", "year", "place", "kept", "standard"];
const MORE = ["covered", "road", "elsewhere", "earlier", "seen", "scope"];
const ORDER = [...FIRST_FIVE, "range", ...MORE];

/** Second halves of a question, and the question they belong to. */
const HALF_OF = {
  frame: "body",
  fenders: "body",
  not_covered: "body",
  place_list: "place",
  shore: "place",
  else_place: "elsewhere",
  else_list: "elsewhere",
  else_kept: "elsewhere",
  else_years: "elsewhere",
  holes: "seen",
  earlier_year: "earlier",
  earlier_proof: "earlier",
  earlier_parts: "earlier",
};

export function mainStep(step) {
  return HALF_OF[step] ?? step;
}

/** True once the range stands beside the question. */
export function afterRange(step) {
  return MORE.includes(mainStep(step));
}

/** The half that an answer opens, or null. */
function opens(step, answer, facts) {
  if (step === "body") {
    if (answer === "two_door") return "frame";
    if (answer === "none") return "not_covered";
    if (answer === "pickup") return "fenders";
  }
  if (step === "place" && answer === "pick") return "place_list";
  if (step === "place_list" && facts.coast) return "shore";
  if (step === "elsewhere" && answer === "yes") return "else_place";
  if (step === "else_place") return answer === "pick" ? "else_list" : "else_kept";
  if (step === "else_list") return "else_kept";
  if (step === "else_kept") return "else_years";
  if (step === "else_years") return "elsewhere";
  if (step === "earlier" && hasDate(answer)) return "earlier_year";
  if (step === "earlier_year") return "earlier_proof";
  if (step === "earlier_proof" && answer === "yes") return "earlier_parts";
  if (step === "seen" && facts.marked) return "holes";
  return null;
}

/** facts: what the choice depends on beside the answer. changing: the customer
 *  came here from the finished range to change one answer. */
export function nextStep(step, answer, facts = {}, changing = false) {
  const half = opens(step, answer, facts);
  if (half) return half;
  if (changing && facts.complete) return "range";
  const main = mainStep(step);
  return main === "scope" ? "range" : ORDER[ORDER.indexOf(main) + 1];
}

/** The question at which a refused entry of the car file was given. */
export function stepOfPath(path) {
  if (path.startsWith("bodies")) return "body";
  if (path.startsWith("made") || path.startsWith("asked_in")) return "year";
  if (path.startsWith("life[0].kept")) return "kept";
  if (path.startsWith("life[0].road_years")) return "road";
  if (path.startsWith("life[0]")) return "place";
  if (path.startsWith("life")) return "elsewhere";
  if (path.startsWith("standard")) return "standard";
  if (path.startsWith("earlier_work_year")) return "earlier_year";
  if (path.startsWith("earlier_work")) return "earlier";
  if (path.startsWith("covered")) return "covered";
  if (path.startsWith("looks")) return "seen";
  if (path.startsWith("scope")) return "scope";
  if (path.startsWith("options")) return "fenders";
  return null;
}
