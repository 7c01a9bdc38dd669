// How long the shop holds which of its prices. Without a promise in the file no price rises
// in any range, so the first choice takes the whole member out.

import { el, freshId } from "../shared/dom.ts";
import { isObject, type Words } from "../shared/ratesfile.ts";
import type { RatesOutlineReply } from "../shared/replies.ts";
import { asNumber, asText, box, labelled, select, unitText } from "./boxes.ts";
import { type Option, optionText } from "./choices.ts";
import type { PlainField } from "./fields.ts";
import type { Made, Making } from "./formhost.ts";

const MEMBER = "prices_over_time";
const MONTHS = "held_months";
const UNTIL = "held_until";
const NOT = "not_held";

const HOW: readonly Option[] = [
  ["", "not said: prices stay as published in every range"],
  [MONTHS, "for some months"],
  [UNTIL, "until a day"],
  ["held_for_the_whole_job", "for the whole job"],
  [NOT, "not at all"],
];
const FROM: readonly Option[] = [
  ["strip_authorized", "the day the strip is authorized", "the day the strip is agreed"],
  ["strip_begins", "the start of the strip"],
];
const ON: readonly Option[] = [
  ["labour", "Hourly rates"],
  ["materials", "Prices of materials"],
];

/** What the invented shop says about prices over time: its rises have published sources. */
function sampleOf(outline: RatesOutlineReply, words: Words): Record<string, unknown> {
  const sample: unknown = JSON.parse(words === "uk" ? outline.sample_uk : outline.sample_us);
  const member = isObject(sample) ? sample[MEMBER] : null;
  return isObject(member) ? member : {};
}

export function promise({ field, host, id, described, label }: Making<PlainField>): Made {
  const words = host.words();
  const now = (): Record<string, unknown> => {
    const value = host.draft.get(field.path);
    return isObject(value) ? value : {};
  };
  /** Puts a promise into the file. What else the file says about rises, and where that
   *  comes from, stays. */
  const take = (chosen: Record<string, unknown>) => {
    const member = host.draft.get(MEMBER);
    const rises = isObject(member) ? member : sampleOf(host.outline, words);
    host.draft.set(MEMBER, { ...rises, promise: { ...chosen, source: "the shop's own choice" } }, label);
  };
  const choose = (how: string) => {
    if (how === "") host.draft.set(MEMBER, undefined, label);
    else take(promiseOf(how, now(), asText(host.draft.get("valid_until"))));
    host.redraw(field.path);
  };
  const at = (member: string) => ({
    id: freshId("promise"),
    "aria-describedby": described,
    "data-at": `${field.path}.${member}`,
  });
  const how = select(
    { ...at("how"), id },
    HOW.map((o) => [o[0], optionText(o, words)]),
    now().how ?? "",
    choose,
  );
  const inputs: HTMLElement[] = [how];
  const parts: HTMLElement[] = [labelled(id, label, how)];
  const add = (name: string, node: HTMLElement, unit?: string) => {
    inputs.push(node);
    parts.push(labelled(node.id, name, node, unitText(unit)));
  };
  if (now().how === MONTHS) {
    const months = box(
      { ...at("months"), class: "figure", inputmode: "numeric" },
      asText(now().months),
      (text) => take({ ...now(), months: asNumber(text) }),
    );
    const from = select(
      at("from"),
      FROM.map((o) => [o[0], optionText(o, words)]),
      now().from ?? "strip_authorized",
      (key) => take({ ...now(), from: key }),
    );
    add("How many", months, "months");
    add("Counted from", from);
  }
  if (now().how === UNTIL) {
    const until = box({ ...at("until"), class: "figure", type: "date" }, asText(now().until), (text) =>
      take({ ...now(), until: text }),
    );
    add("The last day", until);
  }
  if (now().how !== undefined && now().how !== NOT) {
    const ticked: unknown[] = [now().on ?? []].flat();
    const boxes: HTMLInputElement[] = ON.map(([key]) =>
      el("input", {
        ...at("on"),
        type: "checkbox",
        value: key,
        checked: ticked.includes(key),
        on: { change: () => take({ ...now(), on: boxes.filter((b) => b.checked).map((b) => b.value) }) },
      }),
    );
    inputs.push(...boxes);
    parts.push(
      el(
        "fieldset",
        {},
        el("legend", {}, "What is held"),
        boxes.map((b, k) => el("label", { class: "tick-box" }, b, optionText(ON[k] ?? ["", ""], words))),
      ),
    );
  }
  return { inputs, node: el("div", {}, parts) };
}

/** A promise of a kind, with what the one before it held. */
function promiseOf(
  how: string,
  before: Record<string, unknown>,
  validUntil: string,
): Record<string, unknown> {
  if (how === NOT) return { how };
  const on = Array.isArray(before.on) && before.on.length > 0 ? before.on : ["labour"];
  if (how === MONTHS) return { how, months: 12, from: "strip_begins", on };
  return how === UNTIL ? { how, until: validUntil, on } : { how, on };
}
