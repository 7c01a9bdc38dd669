// What a real shop would not want to publish from the sample's words: its name, its
// contact, its note on tax, the paragraph that says the shop is invented. The engine looks
// for the sample's figures; this looks for its texts.

import type { DraftRates } from "../shared/ratesfile.ts";
import type { CarNote } from "../shared/replies.ts";
import { type Draft, valueAt } from "./draft.ts";

const TEXTS = [
  ["shop.name", "The shop's name is still the sample's."],
  ["shop.town", "The town is still the sample's."],
  ["shop.contact.text", "How to reach you is still the sample's."],
  ["shop.contact.href", "The link to reach you is still the sample's."],
  ["tax.note", "The note on tax is still the sample's, and says that it is invented."],
] as const;

/** Warnings in the form that the engine gives them. */
export function leftovers(draft: Draft, samples: readonly DraftRates[]): CarNote[] {
  if (draft.get("shop.invented") !== false) return [];
  const same = (path: string) => {
    const mine = draft.get(path);
    return typeof mine === "string" && mine !== "" && samples.some((s) => valueAt(s, path) === mine);
  };
  const found = TEXTS.filter(([path]) => same(path)).map(([path, text]) => ({ path, text }));
  const fromSample = (term: unknown) => samples.some((s) => Array.isArray(s.terms) && s.terms.includes(term));
  const invented = draft
    .list("terms")
    .some((t) => typeof t === "string" && /shop is invented/.test(t) && fromSample(t));
  return invented
    ? [...found, { path: "terms", text: "The terms still say that the shop is invented." }]
    : found;
}
