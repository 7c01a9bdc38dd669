// Controls of several boxes: low, likely and high; a row of chances; ticks; a factor for
// each standard.

import { el, freshId } from "../shared/dom.ts";
import { isObject } from "../shared/ratesfile.ts";
import { asNumber, asText, box } from "./boxes.ts";
import { optionText } from "./choices.ts";
import type { FactorsField, PlainField, TicksField } from "./fields.ts";
import type { Made, Making } from "./formhost.ts";

const THREE = [
  ["low", "1 job in 10 below"],
  ["likely", "half below"],
  ["high", "1 job in 10 above"],
] as const;

/** A box for one figure of several; `at` is the path of that figure. */
function figureBox(stem: string, described: string, at: string, value: unknown, leave: () => void) {
  return box(
    {
      id: freshId(stem),
      "aria-describedby": described,
      inputmode: "decimal",
      class: "figure",
      "data-at": at,
    },
    asText(value),
    leave,
  );
}

/** Three figures in a list. The file may lack the list where all three boxes are empty and
 *  the field is optional. */
export function three({ field, host, described, hint, label, put }: Making<PlainField>): Made {
  const now = host.draft.list(field.path);
  const leave = () => {
    const texts = inputs.map((i) => i.value.trim());
    if (texts.every((t) => t === "") && field.optional) put(field.empty);
    else put(texts.map(asNumber));
  };
  const lines = THREE.map(([name, said], k) => ({
    name,
    said,
    input: figureBox("three", described, `${field.path}[${k}]`, now[k], leave),
  }));
  const inputs = lines.map((line) => line.input);
  const boxes = lines.map(({ name, said, input }) =>
    el(
      "div",
      {},
      el(
        "label",
        { for: input.id },
        el("span", { class: "three-name" }, name),
        el("span", { class: "hint" }, said),
      ),
      input,
    ),
  );
  return {
    inputs,
    node: el(
      "fieldset",
      { class: "three" },
      el("legend", {}, label, field.unit && `, ${field.unit}`),
      el("div", { class: "three-boxes" }, boxes),
      hint,
    ),
  };
}

/** One row of chances, one for each way. */
export function row({ field, host, described, label, put }: Making<PlainField>): Made {
  const now = host.draft.list(field.path);
  const leave = () => put(ways.map(({ input }) => asNumber(input.value.trim())));
  const ways = host.outline.ways.map((way, k) => ({
    name: host.words() === "uk" ? way.name_uk : way.name_us,
    input: figureBox("row", described, `${field.path}[${k}]`, now[k], leave),
  }));
  const boxes = ways.map(({ name, input }) => el("div", {}, el("label", { for: input.id }, name), input));
  return {
    inputs: ways.map(({ input }) => input),
    node: el(
      "fieldset",
      { class: "three" },
      el("legend", {}, label),
      el("div", { class: "row-boxes" }, boxes),
    ),
  };
}

/** Which of several. field.all: a file without the member means all of them. */
export function ticks({ field, host, described, hint, label, put }: Making<TicksField>): Made {
  const all = field.options.map(([key]) => key);
  const now: unknown[] = [host.draft.get(field.path) ?? (field.all ? all : [])].flat();
  const leave = () => {
    const ticked = inputs.filter((i) => i.checked).map((i) => i.value);
    put(field.all && ticked.length === inputs.length ? undefined : ticked);
  };
  const lines = field.options.map((option) => ({
    option,
    input: el("input", {
      type: "checkbox",
      id: freshId("tick"),
      value: option[0],
      checked: now.includes(option[0]),
      "aria-describedby": described,
      on: { change: leave },
    }),
  }));
  const inputs = lines.map((line) => line.input);
  return {
    inputs,
    node: el(
      "fieldset",
      {},
      el("legend", {}, label),
      lines.map(({ option, input }) =>
        el("label", { class: "tick-box" }, input, optionText(option, host.words())),
      ),
      hint,
    ),
  };
}

/** A factor for each standard, each of which may be empty. */
export function factors({ field, host, described, hint, label, put }: Making<FactorsField>): Made {
  const value = host.draft.get(field.path);
  const now = isObject(value) ? value : {};
  const leave = () => {
    const given = lines
      .map(({ key, input }) => [key, input.value.trim()] as const)
      .filter(([, text]) => text !== "");
    put(given.length ? Object.fromEntries(given.map(([key, text]) => [key, asNumber(text)])) : undefined);
  };
  const lines = field.options.map(([key, name]) => ({
    key,
    name,
    input: figureBox("factor", described, `${field.path}.${key}`, now[key], leave),
  }));
  return {
    inputs: lines.map(({ input }) => input),
    node: el(
      "fieldset",
      { class: "three" },
      el("legend", {}, label),
      el(
        "div",
        { class: "three-boxes" },
        lines.map(({ name, input }) => el("div", {}, el("label", { for: input.id }, name), input)),
      ),
      hint,
    ),
  };
}
