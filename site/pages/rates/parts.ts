// Parts with a price of the shop's own, one by one or as a table.

import { button, type Children, el } from "../shared/dom.ts";
import type { PartPrice } from "../shared/ratesfile.ts";
import type { OutlineName } from "../shared/replies.ts";
import { labelled } from "./boxes.ts";
import { FITS, HAD } from "./choices.ts";
import { add, entry, named, noteField, remover, sourceField, withFigures } from "./entries.ts";
import type { Field } from "./fields.ts";
import type { FormHost } from "./formhost.ts";
import { type PriceNames, pricesIn } from "./pricesin.ts";
import { pricesOut } from "./pricesout.ts";

/** Ways that need no part. */
const NO_PART = ["leave", "treat"];

/** Ways that take a bought panel, of which more can be said than its price. */
const PANELS = ["section", "full"];

/** How a bought panel comes. */
const comingFields = (path: string): Field[] => [
  {
    path: `${path}.fit`,
    label: "How a new-made one fits",
    kind: "choice",
    options: FITS,
    optional: true,
  },
  {
    path: `${path}.weeks`,
    label: "Until one that is ordered again is there",
    kind: "three",
    unit: "weeks",
    optional: true,
    hint: "All three empty: the starting figures",
  },
  {
    path: `${path}.used_share`,
    label: "Where it must be found: the share that are used ones, 0 to 1",
    kind: "number",
    optional: true,
    hint: "Empty: the starting figure. The rest is old stock that was never fitted",
  },
];

/** Names of what a price is about. */
function priceNames(host: FormHost): PriceNames {
  const by = (all: readonly OutlineName[]): Record<string, string> =>
    Object.fromEntries(all.map((x) => [x.id, named(host, x)]));
  return {
    parts: by(host.outline.parts),
    ways: by(host.outline.ways),
    bodies: by(host.outline.bodies),
    had: Object.fromEntries(HAD.map(([id, text]) => [id, text])),
  };
}

export function parts(host: FormHost): Children[] {
  const names = priceNames(host);
  const one = (p: Partial<PartPrice>, i: number) => {
    const path = `parts.prices[${i}]`;
    const about = [
      `${names.parts[p.part ?? ""] ?? p.part}: ${(names.ways[p.way ?? ""] ?? p.way ?? "").toLowerCase()}`,
      p.body && (names.bodies[p.body] ?? p.body),
    ]
      .filter(Boolean)
      .join(", ");
    const title = () => withFigures(about, host.draft.get(`${path}.price`), host.symbol());
    return entry(
      host,
      title,
      path,
      () => [
        {
          path: `${path}.price`,
          label: "Price",
          kind: "three",
          unit: host.symbol(),
          optional: true,
          empty: null,
          hint: "All three empty: the starting price, once it is said how the part is had",
        },
        { path: `${path}.had`, label: "How it is had", kind: "choice", options: HAD },
        ...(PANELS.includes(p.way ?? "") ? comingFields(path) : []),
        noteField(path),
        sourceField(path),
      ],
      remover(host, "parts.prices", i, "a part price"),
    );
  };
  const all = host.draft.current.parts.prices;
  return [
    el("h3", {}, "Parts with a price of your own"),
    el("p", { class: "hint" }, "All other parts stand at their starting prices."),
    ...all.map(one),
    addPart(host, names),
    pricesIn(host, names),
    pricesOut(host),
  ];
}

/** Asks for part, way and body. The new entry then asks for its price, or where the part
 *  comes from. */
function addPart(host: FormHost, names: PriceNames): HTMLFieldSetElement {
  const part = el(
    "select",
    { id: "add-part" },
    host.outline.parts.map((p) => el("option", { value: p.id }, named(host, p))),
  );
  const way = el("select", { id: "add-way" });
  const body = el("select", { id: "add-body" });
  const said = el("p", { class: "error", role: "status" });
  const fill = () => {
    const p = host.outline.parts.find((x) => x.id === part.value);
    const ways = (p?.ways ?? []).filter((w) => !NO_PART.includes(w));
    way.replaceChildren(...ways.map((w) => el("option", { value: w }, names.ways[w])));
    body.replaceChildren(
      el("option", { value: "" }, "every body that has it"),
      ...(p?.bodies ?? []).map((b) => el("option", { value: b }, names.bodies[b])),
    );
  };
  part.addEventListener("change", fill);
  fill();
  const put = () => {
    const there = host.draft.current.parts.prices.some(
      (p) => p.part === part.value && p.way === way.value && (p.body ?? "") === body.value,
    );
    if (there) {
      said.textContent = "This part stands in the list already, for the same work and body.";
      return;
    }
    add(
      host,
      "parts.prices",
      {
        part: part.value,
        way: way.value,
        ...(body.value ? { body: body.value } : {}),
        price: null,
        had: null,
        source: "the shop's own figure",
      },
      "a part price",
      "price",
    );
  };
  return el(
    "fieldset",
    { class: "add-box" },
    el("legend", {}, "Add a part"),
    labelled("add-part", "Part", part),
    labelled("add-way", "What to do", way),
    labelled("add-body", "Body", body),
    button("Add it", put),
    said,
  );
}
