// Controls of several boxes: low, likely and high; a row of chances; ticks; a
// factor for each standard; supplies.

import { el, freshId } from "../shared/dom.ts";
import { asNumber, asText, box, labelled, select, unitText } from "./boxes.ts";
import { optionText } from "./fields.ts";

const THREE = [
  ["low", "1 job in 10 below"],
  ["likely", "half below"],
  ["high", "1 job in 10 above"],
];

/** Three figures in a list. All empty is nothing, where nothing is allowed. */
export function three({ field, host, described, hint, label, put }) {
  const now = host.draft.get(field.path) ?? [];
  const leave = () => {
    const texts = inputs.map((i) => i.value.trim());
    if (texts.every((t) => t === "") && field.optional) put("empty" in field ? field.empty : undefined);
    else put(texts.map(asNumber));
  };
  const inputs = THREE.map((_, k) =>
    box(
      {
        id: freshId("three"),
        "aria-describedby": described,
        inputmode: "decimal",
        class: "figure",
        "data-at": `${field.path}[${k}]`,
      },
      asText(now[k]),
      leave,
    ),
  );
  const boxes = THREE.map(([name, said], k) =>
    el(
      "div",
      {},
      el(
        "label",
        { for: inputs[k].id },
        el("span", { class: "three-name" }, name),
        el("span", { class: "hint" }, said),
      ),
      inputs[k],
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
export function row({ field, host, described, label, put }) {
  const now = host.draft.get(field.path) ?? [];
  const inputs = host.outline.ways.map((_, k) =>
    box(
      {
        id: freshId("row"),
        inputmode: "decimal",
        class: "figure",
        "aria-describedby": described,
        "data-at": `${field.path}[${k}]`,
      },
      asText(now[k]),
      () => put(inputs.map((i) => asNumber(i.value.trim()))),
    ),
  );
  const boxes = host.outline.ways.map((w, k) =>
    el(
      "div",
      {},
      el("label", { for: inputs[k].id }, host.words() === "uk" ? w.name_uk : w.name_us),
      inputs[k],
    ),
  );
  return {
    inputs,
    node: el(
      "fieldset",
      { class: "three" },
      el("legend", {}, label),
      el("div", { class: "row-boxes" }, boxes),
    ),
  };
}

/** Which of several. field.all: leaving the member out means all of them. */
export function ticks({ field, host, described, hint, label, put }) {
  const now = [host.draft.get(field.path) ?? (field.all ? field.options.map(([key]) => key) : [])].flat();
  const leave = () => {
    const ticked = inputs.filter((i) => i.checked).map((i) => i.value);
    put(field.all && ticked.length === inputs.length ? undefined : ticked);
  };
  const inputs = field.options.map(([key]) =>
    el("input", {
      type: "checkbox",
      id: freshId("tick"),
      value: key,
      checked: now.includes(key),
      "aria-describedby": described,
      on: { change: leave },
    }),
  );
  return {
    inputs,
    node: el(
      "fieldset",
      {},
      el("legend", {}, label),
      field.options.map((o, k) => el("label", { class: "tick-box" }, inputs[k], optionText(o, host.words()))),
      hint,
    ),
  };
}

/** A factor for each standard, each of which may be empty. */
export function factors({ field, host, described, hint, label, put }) {
  const now = host.draft.get(field.path) ?? {};
  const leave = () => {
    const given = field.options
      .map(([key], k) => [key, inputs[k].value.trim()])
      .filter(([, text]) => text !== "");
    put(given.length ? Object.fromEntries(given.map(([key, text]) => [key, asNumber(text)])) : undefined);
  };
  const inputs = field.options.map(([key]) =>
    box(
      {
        id: freshId("factor"),
        "aria-describedby": described,
        inputmode: "decimal",
        class: "figure",
        "data-at": `${field.path}.${key}`,
      },
      asText(now[key]),
      leave,
    ),
  );
  const boxes = field.options.map(([, text], k) =>
    el("div", {}, el("label", { for: inputs[k].id }, text), inputs[k]),
  );
  return {
    inputs,
    node: el(
      "fieldset",
      { class: "three" },
      el("legend", {}, label),
      el("div", { class: "three-boxes" }, boxes),
      hint,
    ),
  };
}

/** In the rate, or a share of labour with a limit: never both. */
export function supplies({ field, host, id, described, label, put }) {
  const now = host.draft.get(field.path) ?? {};
  const inputs = [];
  const more = el("div", {});
  const own = () => ({
    how: "share_of_labour",
    percent: inputs[1].value.trim(),
    ...(inputs[2].value.trim() ? { no_more_than: inputs[2].value.trim() } : {}),
    source: "the shop's own figure",
  });
  const share = () => {
    const one = (member) =>
      box(
        {
          id: freshId("share"),
          "aria-describedby": described,
          inputmode: "decimal",
          class: "figure",
          "data-at": `${field.path}.${member}`,
        },
        asText(now[member]),
        () => put(own()),
      );
    [inputs[1], inputs[2]] = [one("percent"), one("no_more_than")];
    more.replaceChildren(
      labelled(inputs[1].id, "Share", inputs[1], unitText("%")),
      labelled(
        inputs[2].id,
        "No more than, for a job",
        inputs[2],
        unitText(host.symbol()),
        el("p", { class: "hint" }, "Empty: no limit"),
      ),
    );
  };
  inputs[0] = select(
    { id, "aria-describedby": described, "data-at": `${field.path}.how` },
    [
      ["in_the_rate", "in the rate an hour"],
      ["share_of_labour", host.words() === "uk" ? "a share of labour" : "a share of labor"],
    ],
    now.how,
    (how) => {
      if (how === "share_of_labour") {
        share();
        put(own());
      } else {
        more.replaceChildren();
        inputs.length = 1;
        put({ how, source: "the shop's own choice" });
      }
    },
  );
  if (now.how === "share_of_labour") share();
  return { inputs, node: el("div", {}, labelled(id, label, inputs[0]), more) };
}
