// One control for each kind of field. What is typed goes into the draft when the
// field is left; a figure that is no number goes in as its text, so that the
// engine can say what was expected and nothing typed is lost.

import { el, freshId } from "../dom.js";
import { labelOf } from "./fields.js";

const PLAIN = /^-?\d+(\.\d+)?$/;
const asNumber = (text) => (PLAIN.test(text) ? Number(text) : text);
const asText = (value) => (value === null || value === undefined ? "" : String(value));

/** host: draft, words(), currencies, symbol(), outline */
export function control(field, host) {
  const id = freshId("field");
  const note = freshId("note");
  const make = { three, row, choice, ticks, lines, long, yes, currency, supplies, date: typed, text: typed, link: typed, money: typed, percent: typed, number: typed }[field.kind];
  const label = labelOf(field, host.words());
  const put = (value) => host.draft.set(field.path, value, label);
  const made = make({ field, host, id, note, label, put });
  const mark = el("p", { class: "sample-mark", hidden: true }, "still the sample's figure");
  const error = el("p", { class: "error", id: note, hidden: true });
  const why = field.why && el("details", { class: "why" }, el("summary", {}, "Why we ask"), el("p", {}, field.why));
  const node = el("div", { class: `field kind-${field.kind}`, "data-path": field.path }, made.node, error, mark, why);
  return { path: field.path, node, notes(faults, isSample) { shown(error, faults, made.inputs); mark.hidden = !isSample; } };
}

function shown(error, faults, inputs) {
  error.hidden = faults.length === 0;
  error.replaceChildren(...faults.map((f) => el("span", {}, faultText(f))));
  for (const input of inputs) {
    if (faults.length) input.setAttribute("aria-invalid", "true"); else input.removeAttribute("aria-invalid");
  }
}

/** What to do, without the path that only a file has. */
export function faultText(fault) {
  return `Expected ${fault.expected}${fault.found ? `; found ${fault.found}` : ""}.`;
}

function input(id, note, props, value, leave) {
  const node = el("input", { id, "aria-describedby": note, autocomplete: "off", spellcheck: "false", ...props, on: { change: (e) => leave(e.target.value.trim()) } });
  node.value = value;
  return node;
}

const FIGURES = { money: { inputmode: "decimal" }, percent: { inputmode: "decimal" }, number: { inputmode: "decimal" }, date: { type: "date" } };

function typed({ field, host, id, note, label, put }) {
  const leave = (text) => {
    if (text === "" && field.optional) put("empty" in field ? field.empty : undefined);
    else put(field.kind === "number" ? asNumber(text) : text);
    if (field.also) host.draft.set(field.also, text, label);
  };
  const one = input(id, note, { ...FIGURES[field.kind], class: field.kind === "text" || field.kind === "link" ? "wide" : "figure" }, asText(host.draft.get(field.path)), leave);
  const symbol = field.kind === "money" && !field.bare ? host.symbol() : field.kind === "percent" ? "%" : "";
  const unit = [symbol, field.unit].filter(Boolean).join(" ");
  return { inputs: [one], node: el("div", { class: "typed" }, el("label", { for: id }, label), one, unit && el("span", { class: "unit" }, unit), field.hint && el("p", { class: "hint" }, field.hint)) };
}

const THREE = [["1 job in 10 below", "low"], ["half below", "likely"], ["1 job in 10 above", "high"]];

function three({ field, host, note, label, put }) {
  const now = host.draft.get(field.path) ?? [];
  const inputs = THREE.map(([said], k) => input(freshId("three"), note, { inputmode: "decimal", class: "figure" }, asText(now[k]), () => {
    const texts = inputs.map((i) => i.value.trim());
    if (texts.every((t) => t === "") && field.optional) put("empty" in field ? field.empty : undefined);
    else put(texts.map(asNumber));
  }));
  const boxes = THREE.map(([said, name], k) => el("div", {}, el("label", { for: inputs[k].id }, el("span", { class: "three-name" }, name), el("span", { class: "hint" }, said)), inputs[k]));
  return { inputs, node: el("fieldset", { class: "three" }, el("legend", {}, label, field.unit && `, ${field.unit}`), el("div", { class: "three-boxes" }, boxes), field.hint && el("p", { class: "hint" }, field.hint)) };
}

/** One row of chances, one for each way. */
function row({ field, host, note, label, put }) {
  const now = host.draft.get(field.path) ?? [];
  const inputs = host.outline.ways.map((w, k) => input(freshId("row"), note, { inputmode: "decimal", class: "figure", "aria-label": host.words() === "uk" ? w.name_uk : w.name_us }, asText(now[k]), () => put(inputs.map((i) => asNumber(i.value.trim())))));
  return { inputs, node: el("fieldset", { class: "three" }, el("legend", {}, label), el("div", { class: "row-boxes" }, inputs)) };
}

function select(id, note, options, value, leave) {
  const node = el("select", { id, "aria-describedby": note, on: { change: (e) => leave(e.target.value) } },
    options.map(([key, text]) => el("option", { value: key }, text)));
  if (!options.some(([key]) => key === value)) node.prepend(el("option", { value: asText(value) }, asText(value) || "(nothing yet)"));
  node.value = asText(value);
  return node;
}

function choice({ field, host, id, note, label, put }) {
  const one = select(id, note, field.options, host.draft.get(field.path) ?? "", (key) => put(key === "" ? null : key));
  return { inputs: [one], node: el("div", { class: "typed" }, el("label", { for: id }, label), one) };
}

function currency(of) {
  return choice({ ...of, field: { ...of.field, options: of.host.currencies.map((c) => [c, c]) } });
}

function ticks({ field, host, note, label, put }) {
  const now = host.draft.get(field.path) ?? [];
  const inputs = field.options.map(([key]) => el("input", { type: "checkbox", id: freshId("tick"), value: key, checked: now.includes(key), "aria-describedby": note,
    on: { change: () => put(inputs.filter((i) => i.checked).map((i) => i.value)) } }));
  return { inputs, node: el("fieldset", {}, el("legend", {}, label), field.options.map(([, text], k) => el("label", { class: "tick-box" }, inputs[k], text))) };
}

function yes({ field, host, id, note, label, put }) {
  const one = el("input", { type: "checkbox", id, checked: host.draft.get(field.path) === true, "aria-describedby": note, on: { change: (e) => put(e.target.checked) } });
  return { inputs: [one], node: el("label", { class: "tick-box", for: id }, one, label) };
}

function area(id, note, value, rows, leave) {
  const node = el("textarea", { id, rows, "aria-describedby": note, on: { change: (e) => leave(e.target.value) } });
  node.value = value;
  return node;
}

function long({ field, host, id, note, label, put }) {
  const one = area(id, note, asText(host.draft.get(field.path)), 5, (text) => put(text.replace(/\s+/g, " ").trim()));
  return { inputs: [one], node: el("div", { class: "typed" }, el("label", { for: id }, label), one) };
}

function lines({ field, host, id, note, label, put }) {
  const one = area(id, note, (host.draft.get(field.path) ?? []).join("\n\n"), 14, (text) => put(text.split("\n").map((l) => l.trim()).filter(Boolean)));
  return { inputs: [one], node: el("div", { class: "typed" }, el("label", { for: id }, label), one) };
}

/** In the rate, or a share of labour with a limit: never both. */
function supplies({ field, host, id, note, label, put }) {
  const now = host.draft.get(field.path) ?? {};
  const inputs = [];
  const more = el("div", {});
  const own = () => ({ how: "share_of_labour", percent: inputs[1].value.trim(), ...(inputs[2].value.trim() ? { no_more_than: inputs[2].value.trim() } : {}), source: "the shop's own figure" });
  const share = () => {
    const percentId = freshId("share");
    const mostId = freshId("most");
    inputs[1] = input(percentId, note, { inputmode: "decimal", class: "figure" }, asText(now.percent ?? "5"), () => put(own()));
    inputs[2] = input(mostId, note, { inputmode: "decimal", class: "figure" }, asText(now.no_more_than), () => put(own()));
    more.replaceChildren(el("div", { class: "typed" }, el("label", { for: percentId }, "Share"), inputs[1], el("span", { class: "unit" }, "%")),
      el("div", { class: "typed" }, el("label", { for: mostId }, "No more than, for a job"), inputs[2], el("span", { class: "unit" }, host.symbol()), el("p", { class: "hint" }, "Empty: no limit")));
  };
  inputs[0] = select(id, note, [["in_the_rate", "in the rate an hour"], ["share_of_labour", host.words() === "uk" ? "a share of labour" : "a share of labor"]], now.how, (how) => {
    if (how === "share_of_labour") { share(); put(own()); } else { more.replaceChildren(); inputs.length = 1; put({ how, source: "the shop's own choice" }); }
  });
  if (now.how === "share_of_labour") share();
  return { inputs, node: el("div", { class: "typed" }, el("label", { for: id }, label), inputs[0], more) };
}
