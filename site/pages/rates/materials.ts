// The list of materials, and what an hour of metalwork uses up.

import { button, type Children, el } from "../shared/dom.ts";
import type { Figure, Material, Reckoning } from "../shared/ratesfile.ts";
import { AREAS, type Option, optionText, SCOPES, STAGES, STANDARDS, UNITS } from "./choices.ts";
import { add, entry, freeId, noteField, ownName, remover, sourceField, withFigures } from "./entries.ts";
import type { Field } from "./fields.ts";
import type { FormHost } from "./formhost.ts";
import { control } from "./inputs.ts";

const HOWS: readonly Option<Reckoning>[] = [
  ["film", "a film of paint"],
  ["per_m2", "the square meter", "the square metre"],
  ["per_car", "the car"],
];
/** What a shop has not said stays empty, so that the check asks for it. */
const BLANK: Record<Reckoning, Record<string, Figure>> = {
  film: { coats: "", dry_um: "", volume_solids: "", transfer: "" },
  per_m2: { quantity: "" },
  per_car: { quantity: "" },
};

/** What a film of paint is worked out from: member, label, unit, hint. */
const FILM = [
  ["coats", "Coats", "", "As sprayed for show standard"],
  ["dry_um", "Dry film of one coat", "µm", "On the paint's data sheet; 25 µm is about 1 mil"],
  [
    "volume_solids",
    "Solids by volume, ready to spray",
    "0 to 1",
    "On the paint's data sheet, with hardener and reducer in it: 45 % is 0.45",
  ],
  [
    "transfer",
    "Share of what leaves the gun that stays on the car",
    "0 to 1",
    "0.65 is the least that one air-quality rule asks of a spray gun (South Coast AQMD)",
  ],
  [
    "base_share",
    "Share of it that is the tin of base",
    "0 to 1",
    "Empty: not said. Mixed one to one it is 0.5",
  ],
] as const;

export function materials(host: FormHost): Children[] {
  const all = host.draft.current.materials;
  const wire = control(
    {
      path: "consumables.money_per_metal_hour",
      label: "Wire, gas and discs for an hour of metalwork",
      kind: "three",
      unit: host.symbol(),
      optional: true,
      empty: null,
      hint: "All three empty: in the rate",
    },
    host,
  );
  host.register([wire]);
  const make = (how: Reckoning) => add(host, "materials", blank(freeId(all), how), "a material", "name");
  return [
    el("h3", {}, "Used up on the car"),
    ...all.map((m, i) => one(host, m, i)),
    el(
      "div",
      { class: "add" },
      el("p", {}, "Add a material reckoned by"),
      HOWS.map((how) => button(optionText(how, host.words()), () => make(how[0]))),
    ),
    el("h3", {}, "Used up by the hour"),
    wire.node,
  ];
}

function blank(id: string, how: Reckoning): Material {
  return {
    id,
    name: { us: "New material", uk: "New material" },
    unit: "litre",
    price: "",
    how: { [how]: BLANK[how] },
    area: how === "per_car" ? "none" : "reached",
    stage: "after",
    standards: STANDARDS.map(([s]) => s),
    source: "the shop's own figure",
  };
}

function one(host: FormHost, m: Partial<Material>, i: number): HTMLDetailsElement {
  const path = `materials[${i}]`;
  const how = Object.keys(m.how ?? {})[0] ?? "per_car";
  const now = () => host.draft.current.materials[i] ?? m;
  const unit = optionText(UNITS.find(([u]) => u === m.unit) ?? ["", String(m.unit)], host.words());
  const reckon = (key: string) => {
    const next = HOWS.find(([how]) => how === key)?.[0];
    if (!next) return;
    host.draft.set(
      path,
      {
        ...now(),
        how: { [next]: BLANK[next] },
        area: next === "per_car" ? "none" : now().area === "none" ? "reached" : now().area,
      },
      "how a material is reckoned",
    );
  };
  const quantity: Field = {
    path: `${path}.how.${how}.quantity`,
    label: how === "per_m2" ? "Quantity for a square meter" : "Quantity for a car",
    uk: how === "per_m2" ? "Quantity for a square metre" : "Quantity for a car",
    unit,
    kind: "number",
  };
  const factor: Field = {
    path: `${path}.factor`,
    label: "More or less of it, times",
    kind: "factors",
    options: STANDARDS,
    hint: "Empty: once, as above",
  };
  const each = unit === "each" ? "each" : `a ${unit}`;
  return entry(
    host,
    () => withFigures(ownName(host, now()) ?? String(m.id), now().price, `${host.symbol()} ${each}`),
    path,
    () => [
      { path: `${path}.name`, label: "Name", kind: "name" },
      { path: `${path}.price`, label: "Price", kind: "money", unit: each },
      { path: `${path}.unit`, label: "Unit", kind: "choice", options: UNITS, redraws: true },
      {
        path: `${path}.how`,
        label: "Reckoned by",
        kind: "choice",
        options: HOWS,
        value: how,
        set: reckon,
        redraws: true,
      },
      ...(how === "film" ? film(path) : [quantity]),
      { path: `${path}.area`, label: "What it covers", kind: "choice", options: AREAS },
      { path: `${path}.stage`, label: "Used", kind: "choice", options: STAGES, redraws: true },
      { path: `${path}.standards`, label: "At which standards", kind: "ticks", options: STANDARDS },
      ...(m.stage === "after" || m.factor ? [factor] : []),
      { path: `${path}.scopes`, label: "For how much of the car", kind: "ticks", options: SCOPES, all: true },
      noteField(path),
      sourceField(path, false),
    ],
    remover(host, "materials", i, "a material"),
  );
}

const film = (path: string): Field[] =>
  FILM.map(([id, label, unit, hint]) => ({
    path: `${path}.how.film.${id}`,
    label,
    unit,
    hint,
    kind: "number",
    ...(id === "base_share" ? { optional: true } : {}),
  }));
