// What a link carries beside the car: when it was made and what it showed then, so that a
// reader at other rates sees both. All of it comes from outside: the page takes only short
// texts, shows them as text, and says that nobody has checked them.

import type { CarFile } from "./carfile.ts";
import type { RangeReply, RatesName } from "./replies.ts";

const LINK_FORMAT = "underpaint link 1";

/** The two ends of a range as they were shown. */
export interface ToldEnds {
  low: string;
  high: string;
}

/** The content of a link, in the order in which it is written. */
export interface LinkContent {
  format: typeof LINK_FORMAT;
  entered: string;
  rates_of: string;
  check_code: string;
  told: ToldEnds | undefined;
  car: CarFile;
}

/** Where the answers in a link came from; null for what the link does not say. */
export interface LinkOrigin {
  kind: "link";
  /** The day on which it was made, as YYYY-MM-DD. */
  entered: string | null;
  ratesOf: string | null;
  code: string | null;
  told: ToldEnds | null;
}

/** Where the answers about a car came from, when the visitor did not give them here. */
export type Origin =
  | LinkOrigin
  | { kind: "file" }
  | { kind: "sample" }
  | { kind: "blank" }
  /** entered: the day on which the car was saved on this device. */
  | { kind: "kept"; entered: string };

const isObject = (x: unknown): x is Record<string, unknown> => typeof x === "object" && x !== null;
/** A day of the calendar: no words can be made of any other. */
const isDate = (t: unknown): t is string =>
  typeof t === "string" && /^\d{4}-\d{2}-\d{2}$/.test(t) && !Number.isNaN(Date.parse(t));
const isShort = (t: unknown): t is string => typeof t === "string" && t.length > 0 && t.length <= 60;
const isMoney = (t: unknown): t is string =>
  typeof t === "string" && /^\D{0,5}\d[\d.,\u00a0\u202f ]{0,14}\D{0,5}$/.test(t);

/** The visitor's own day as YYYY-MM-DD. */
export function today(clock = new Date()): string {
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}`;
}

/** What goes into a link. reply: the settled range, or null. iso: the day it is made. */
export function toShare(
  car: CarFile,
  reply: Pick<RangeReply, "rows"> | null,
  rates: Pick<RatesName, "date" | "check_code">,
  iso: string,
): LinkContent {
  const [row, second] = reply?.rows ?? [];
  const told = row && !second ? { low: row.low_text, high: row.high_text } : undefined;
  return { format: LINK_FORMAT, entered: iso, rates_of: rates.date, check_code: rates.check_code, told, car };
}

/** Takes apart what came out of a link. The engine has yet to check the car. Throws when the
 *  link is not one of ours. */
export function fromShared(content: unknown): { car: unknown; from: LinkOrigin } {
  if (!isObject(content) || content.format !== LINK_FORMAT) throw new Error("not a car");
  const { entered, rates_of: ratesOf, check_code: code, car } = content;
  const told = isObject(content.told) ? content.told : {};
  return {
    car,
    from: {
      kind: "link",
      entered: isDate(entered) ? entered : null,
      ratesOf: isDate(ratesOf) ? ratesOf : null,
      code: isShort(code) ? code : null,
      told: isMoney(told.low) && isMoney(told.high) ? { low: told.low, high: told.high } : null,
    },
  };
}
