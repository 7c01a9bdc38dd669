// One control for each kind of field. What is typed goes into the draft when the
// field is left; a figure that is no number goes in as its text, so that the
// engine can say what was expected and nothing typed is lost.

import { el, freshId } from "../shared/dom.ts";
import { asNumber, asText, box, labelled, select, unitText } from "./boxes.ts";
import { within } from "./draft.ts";
import { labelOf, optionText } from "./fields.ts";
import { factors, row, supplies, three, ticks } from "./groups.ts";

const MAKERS = {
  three,
  row,
  choice,
  ticks,
  lines,
  long,
  yes,
  currency,
  supplies,
  factors,
  name,
  date: typed,
  text: typed,
  link: typed,
  money: typed,
  percent: typed,
  number: typed,
};

/** host: draft, words(), currencies, symbol(), outline, redraw(focus) */
export function control(field, host) {
  const id = freshId("field");
  const note = freshId("note");
  const hint = field.hint && el("p", { class: "hint", id: freshId("hint") }, field.hint);
  const label = labelOf(field, host.words());
  const put = (value) => {
    if (field.set) field.set(value);
    else host.draft.set(field.path, value, label);
    if (field.redraws) host.redraw(field.path);
  };
  const made = MAKERS[field.kind]({
    field,
    host,
    id,
    described: [hint?.id, note].filter(Boolean).join(" "),
    hint,
    label,
    put,
  });
  const mark = el("p", { class: "sample-mark", hidden: true }, "still the sample's figure");
  const error = el("p", { class: "error", hidden: true });
  const slip = el("p", { class: "slip", hidden: true });
  const why =
    field.why && el("details", { class: "why" }, el("summary", {}, "Why we ask"), el("p", {}, field.why));
  const node = el(
    "div",
    { class: `field kind-${field.kind}`, "data-path": field.path },
    made.node,
    el("div", { id: note }, error, slip, mark),
    why,
  );
  const notes = ({ faults, warnings, sample }) => {
    shown(error, faults.map(faultText));
    shown(
      slip,
      warnings.map((w) => `Usually a slip: ${w.text}`),
    );
    markInputs(made.inputs, faults, field.path);
    mark.hidden = !sample;
  };
  return { path: field.path, name: label, node, notes };
}

function shown(node, texts) {
  node.hidden = texts.length === 0;
  node.replaceChildren(...texts.map((t) => el("span", {}, t)));
}

/** Only the box that a fault is about, where the fault says which. */
function markInputs(inputs, faults, path) {
  for (const input of inputs) {
    const at = input.dataset.at ?? path;
    const wrong = faults.some((f) => within(f.path, at) || within(at, f.path));
    if (wrong) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
}

/** What to do, without the path that only a file has. */
export function faultText(fault) {
  if (fault.found === '""') return `Nothing is here yet; expected ${fault.expected}.`;
  return `Expected ${fault.expected}${fault.found ? `; found ${fault.found}` : ""}.`;
}

const FIGURES = {
  money: { inputmode: "decimal" },
  percent: { inputmode: "decimal" },
  number: { inputmode: "decimal" },
  date: { type: "date" },
};

function typed({ field, host, id, described, hint, label, put }) {
  const leave = (text) => {
    if (text === "" && field.optional) put("empty" in field ? field.empty : undefined);
    else put(field.kind === "number" ? asNumber(text) : text);
  };
  const wide = field.kind === "text" || field.kind === "link";
  const one = box(
    { id, "aria-describedby": described, ...FIGURES[field.kind], class: wide ? "wide" : "figure" },
    asText(host.draft.get(field.path)),
    leave,
  );
  const symbol = field.kind === "money" && !field.bare ? host.symbol() : field.kind === "percent" ? "%" : "";
  return {
    inputs: [one],
    node: labelled(id, label, one, unitText([symbol, field.unit].filter(Boolean).join(" ")), hint),
  };
}

/** A name in the words of the shop. The file has one for each set of words: the
 *  other one follows as long as the two are the same. */
function name({ field, host, id, described, hint, label }) {
  const mine = host.words() === "uk" ? "uk" : "us";
  const leave = (text) => {
    const now = host.draft.get(field.path) ?? {};
    const same = now.us === now.uk;
    host.draft.set(field.path, { ...now, ...(same ? { us: text, uk: text } : { [mine]: text }) }, label);
  };
  const one = box(
    { id, "aria-describedby": described, class: "wide" },
    asText(host.draft.get(field.path)?.[mine]),
    leave,
  );
  return { inputs: [one], node: labelled(id, label, one, hint) };
}

function choice({ field, host, id, described, hint, label, put }) {
  const one = select(
    { id, "aria-describedby": described },
    field.options.map((o) => [o[0], optionText(o, host.words())]),
    field.value ?? host.draft.get(field.path) ?? "",
    (key) => put(key === "" ? null : key),
  );
  return { inputs: [one], node: labelled(id, label, one, hint) };
}

function currency(of) {
  return choice({ ...of, field: { ...of.field, options: of.host.currencies.map((c) => [c, c]) } });
}

function yes({ field, host, id, described, label, put }) {
  const one = el("input", {
    type: "checkbox",
    id,
    checked: host.draft.get(field.path) === true,
    "aria-describedby": described,
    on: { change: () => put(one.checked) },
  });
  return { inputs: [one], node: el("label", { class: "tick-box", for: id }, one, label) };
}

function area(props, value, leave) {
  const node = el("textarea", { ...props, on: { change: () => leave(node.value) } });
  node.value = value;
  return node;
}

function long({ field, host, id, described, hint, label, put }) {
  const leave = (text) => {
    const plain = text.replace(/\s+/g, " ").trim();
    put(plain === "" && field.optional ? field.empty : plain);
  };
  const one = area(
    { id, rows: field.rows ?? 5, "aria-describedby": described },
    asText(host.draft.get(field.path)),
    leave,
  );
  return { inputs: [one], node: labelled(id, label, one, hint) };
}

function lines({ field, host, id, described, hint, label, put }) {
  const one = area(
    { id, rows: 14, "aria-describedby": described },
    [host.draft.get(field.path) ?? []].flat().join("\n\n"),
    (text) =>
      put(
        text
          .split("\n")
          .map((l) => l.trim())
          .filter(Boolean),
      ),
  );
  return { inputs: [one], node: labelled(id, label, one, hint) };
}
