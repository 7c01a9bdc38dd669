// The year of earlier work as somebody types it: "1998", "about 1998", "June '98",
// "20 years ago", "not sure".

import type { CarFile } from "./carfile.ts";

/** The years in which a car can have been worked on. */
export interface WorkSpan {
  from: number;
  to: number;
  /** A year to show as an example. */
  example: number;
  /** The car's own year or decade is known, and from is that. */
  made: boolean;
}

export function yearsOfWork(car: CarFile): WorkSpan {
  const from = car.made?.year ?? car.made?.decade ?? 1920;
  const to = car.asked_in;
  return { from, to, example: Math.max(from, to - 25), made: Boolean(car.made?.year || car.made?.decade) };
}

/** A year of the span, or null where nobody knows. Throws with the sentence to show. */
export function workYear(text: string, { from, to, example, made }: WorkSpan): number | null {
  const plain = text.trim().toLowerCase().replaceAll("’", "'");
  if (/^(not sure|no idea|unknown|i? ?(don't|do not) know|\?+)\.?$/.test(plain)) return null;
  const year = yearIn(plain, to);
  if (year === null) throw new Error(`Write one year, such as ${example}, or “not sure”.`);
  if (year < from)
    throw new Error(`Write ${from} or later${made ? ", because the car was not made before that" : ""}.`);
  if (year > to) throw new Error(`Write ${to} or earlier. ${year} is still to come.`);
  return year;
}

function yearIn(plain: string, to: number): number | null {
  const ago = /^(?:about |around )?(\d{1,2}) ?(?:years|year|yrs) ago$/.exec(plain);
  if (ago) return to - Number(ago[1]);
  const full = plain.match(/\b\d{4}\b/g) ?? [];
  if (full.length > 0) return full.length === 1 ? Number(full[0]) : null;
  const short = /(?:^|[\s/.])'?(\d\d)$/.exec(plain);
  if (!short) return null;
  // '98 means the last year with that ending that is not still to come.
  const century = to - (to % 100);
  const latest = century + Number(short[1]);
  return latest > to ? latest - 100 : latest;
}
