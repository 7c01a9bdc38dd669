// Which step follows which. Steps are words that are also in the browser's history, so an
// old entry still opens after the order here has changed.

import { hasDate, wasHit } from "./car.ts";

const FIRST_FIVE = ["body", "year", "place", "kept", "standard"] as const;
/** The questions that may follow the range, in their order. */
export const MORE = ["covered", "road", "elsewhere", "earlier", "hit", "seen", "all_there", "scope"] as const;
const ORDER = [...FIRST_FIVE, "range", ...MORE] as const;

export type MainStep = (typeof ORDER)[number];
export type HalfStep =
  | "frame"
  | "fenders"
  | "not_covered"
  | "place_list"
  | "shore"
  | "else_place"
  | "else_list"
  | "else_kept"
  | "else_years"
  | "holes"
  | "earlier_year"
  | "earlier_proof"
  | "earlier_parts"
  | "hit_where"
  | "another_body";
export type Step = MainStep | HalfStep;
/** The steps that ask one of the questions of questions.ts; the others show or list something. */
export type QuestionStep = Exclude<Step, "range" | "not_covered" | "place_list" | "else_list">;

/** Second halves of a question, and the question they belong to. */
const HALF_OF: Record<HalfStep, MainStep> = {
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
  hit_where: "hit",
  another_body: "scope",
};
const isHalf = (step: Step): step is HalfStep => Object.hasOwn(HALF_OF, step);

export function mainStep(step: Step): MainStep {
  return isHalf(step) ? HALF_OF[step] : step;
}

/** True once the range is shown beside the question. */
export function afterRange(step: Step): boolean {
  const main = mainStep(step);
  return MORE.some((more) => more === main);
}

/** What the next step depends on beside the answer. */
export interface FlowFacts {
  /** The place that was picked is on a coast. */
  coast?: boolean;
  /** A rusty place was marked, so a hole may be there. */
  marked?: boolean;
  /** The car has all that a range needs. */
  complete?: boolean;
}

/** The half that an answer opens, or null. */
function opens(step: Step, answer: string, facts: FlowFacts): HalfStep | "elsewhere" | null {
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
  if (step === "hit" && wasHit(answer)) return "hit_where";
  if (step === "seen" && facts.marked) return "holes";
  return null;
}

/** The step after an answer. changing: the customer came here from the finished range to
 *  change one answer. */
export function nextStep(step: Step, answer: string, facts: FlowFacts = {}, changing = false): Step {
  const half = opens(step, answer, facts);
  if (half) return half;
  if (changing && facts.complete) return "range";
  // After the last question comes the range again.
  return ORDER[ORDER.indexOf(mainStep(step)) + 1] ?? "range";
}

/** The question that gave an entry of the car file, by the path of that entry. */
export function stepOfPath(path: string): QuestionStep | null {
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
  if (path.startsWith("hit.where")) return "hit_where";
  if (path.startsWith("hit")) return "hit";
  if (path.startsWith("looks")) return "seen";
  if (path.startsWith("all_there")) return "all_there";
  if (path.startsWith("scope")) return "scope";
  if (path.startsWith("another_body")) return "another_body";
  if (path.startsWith("options")) return "fenders";
  return null;
}
