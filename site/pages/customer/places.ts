// Picking a place from a list: a field that narrows the list, and the places as buttons under
// their country. The shop's own country comes first and is open.

import { type AnswerTaker, answerButton, heading } from "../shared/ask.ts";
import { el, freshId } from "../shared/dom.ts";
import type { CountryPlaces } from "../shared/replies.ts";

/** A text without accents and capitals, to compare. */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** chosen: the id of the place given before. */
export function askPlace(
  title: string,
  countries: readonly CountryPlaces[],
  chosen: string | undefined,
  answer: AnswerTaker,
): HTMLElement {
  const id = freshId("filter");
  const groups = countries.map((country, i) => group(country, i === 0, chosen, answer));
  const none = el(
    "p",
    { class: "hint", hidden: true },
    "No place of that name in the list. Go back and take the answer that fits best.",
  );
  const input: HTMLInputElement = el("input", {
    id,
    type: "search",
    autocomplete: "off",
    maxlength: 40,
    on: { input: () => narrow(groups, none, input.value) },
  });
  return el(
    "div",
    { class: "question" },
    heading(title),
    el("label", { for: id, class: "filter-label" }, "Write a few letters to shorten the list"),
    input,
    none,
    groups.map((g) => g.node),
  );
}

/** A country with its places. openAtFirst: it is open while the list is not narrowed. */
interface Group {
  node: HTMLDetailsElement;
  rows: { key: string; node: HTMLElement }[];
  openAtFirst: boolean;
}

function group(
  country: CountryPlaces,
  open: boolean,
  chosen: string | undefined,
  answer: AnswerTaker,
): Group {
  const rows = country.places.map((p) => ({
    key: plain(p.name),
    node: answerButton({ id: p.id, text: p.name }, p.id === chosen, answer),
  }));
  const node = el(
    "details",
    { open: open || country.places.some((p) => p.id === chosen) },
    el("summary", {}, country.country),
    el(
      "div",
      { class: "answers short", role: "group", "aria-label": country.country },
      rows.map((r) => r.node),
    ),
  );
  return { node, rows, openAtFirst: node.open };
}

/** none: what to show when no place has the text in its name. */
function narrow(groups: readonly Group[], none: HTMLElement, text: string): void {
  const wanted = plain(text.trim());
  let found = 0;
  for (const g of groups) {
    let here = 0;
    for (const row of g.rows) {
      row.node.hidden = !row.key.includes(wanted);
      if (!row.node.hidden) here++;
    }
    g.node.hidden = here === 0;
    g.node.open = wanted ? here > 0 : g.openAtFirst;
    found += here;
  }
  none.hidden = found > 0;
}
