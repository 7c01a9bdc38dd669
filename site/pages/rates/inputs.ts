// One control for each kind of field. What is typed goes into the draft when the cursor
// leaves the field. A figure that is no number goes in as text: nothing typed is lost, and
// the engine can say what it expected.

import { el, freshId, type Props } from "../shared/dom.ts";
import { isObject } from "../shared/ratesfile.ts";
import type { TextFault } from "../shared/replies.ts";
import { asNumber, asText, box, labelled, select, unitText } from "./boxes.ts";
import { optionText } from "./choices.ts";
import { within } from "./draft.ts";
import {
  type ChoiceField,
  type Field,
  type LongField,
  labelOf,
  type PlainField,
  type TypedField,
} from "./fields.ts";
import type { FieldControl, FormHost, Made, Making, Notes } from "./formhost.ts";
import { factors, row, three, ticks } from "./groups.ts";
import { promise } from "./promise.ts";
import { supplies } from "./supplies.ts";

/** Makes the control of a field, with the places for its notes. */
export function control(field: Field, host: FormHost): FieldControl {
  const note = freshId("note");
  const hint = field.hint ? el("p", { class: "hint", id: freshId("hint") }, field.hint) : undefined;
  const label = labelOf(field, host.words());
  const put = (value: unknown) => {
    if (field.kind === "choice" && field.set && typeof value === "string") field.set(value);
    else host.draft.set(field.path, value, label);
    if (field.redraws) host.redraw(field.path);
  };
  const made = make(field, {
    host,
    id: freshId("field"),
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
  const notes = ({ faults, warnings, sample }: Notes) => {
    shown(error, faults.map(faultText));
    shown(
      slip,
      warnings.map((w) => `Usually a slip: ${w.text}`),
    );
    markInputs(made.inputs, faults, field.path);
    mark.hidden = !sample;
  };
  return { path: field.path, node, notes };
}

function make(field: Field, more: Omit<Making<Field>, "field">): Made {
  switch (field.kind) {
    case "three":
      return three({ ...more, field });
    case "row":
      return row({ ...more, field });
    case "ticks":
      return ticks({ ...more, field });
    case "factors":
      return factors({ ...more, field });
    case "supplies":
      return supplies({ ...more, field });
    case "promise":
      return promise({ ...more, field });
    case "choice":
      return choice({ ...more, field });
    case "currency":
      return currency({ ...more, field });
    case "name":
      return name({ ...more, field });
    case "yes":
      return yes({ ...more, field });
    case "long":
      return long({ ...more, field });
    case "lines":
      return lines({ ...more, field });
    default:
      return typed({ ...more, field });
  }
}

function shown(node: HTMLElement, texts: readonly string[]): void {
  node.hidden = texts.length === 0;
  node.replaceChildren(...texts.map((t) => el("span", {}, t)));
}

/** Marks only the box that a fault is about, where the fault says which. */
function markInputs(inputs: readonly HTMLElement[], faults: readonly TextFault[], path: string): void {
  for (const input of inputs) {
    const at = input.dataset.at ?? path;
    const wrong = faults.some((f) => within(f.path, at) || within(at, f.path));
    if (wrong) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
}

/** What to do, without the path that only a file has. */
export function faultText(fault: TextFault): string {
  if (fault.found === '""') return `Nothing is here yet; expected ${fault.expected}.`;
  return `Expected ${fault.expected}${fault.found ? `; found ${fault.found}` : ""}.`;
}

const BOXES: Record<TypedField["kind"], Props> = {
  text: { class: "wide" },
  link: { class: "wide" },
  money: { class: "figure", inputmode: "decimal" },
  percent: { class: "figure", inputmode: "decimal" },
  number: { class: "figure", inputmode: "decimal" },
  date: { class: "figure", type: "date" },
};

function typed({ field, host, id, described, hint, label, put }: Making<TypedField>): Made {
  const leave = (text: string) => {
    if (text === "" && field.optional) put(field.empty);
    else put(field.kind === "number" ? asNumber(text) : text);
  };
  const one = box(
    { id, "aria-describedby": described, ...BOXES[field.kind] },
    asText(host.draft.get(field.path)),
    leave,
  );
  const symbol = field.kind === "money" && !field.bare ? host.symbol() : field.kind === "percent" ? "%" : "";
  return {
    inputs: [one],
    node: labelled(id, label, one, unitText([symbol, field.unit].filter(Boolean).join(" ")), hint),
  };
}

/** A name in the words of the shop. The file has a name for each set of words; as long as
 *  the two are the same, a change of this one changes both. */
function name({ field, host, id, described, hint, label }: Making<PlainField>): Made {
  const mine = host.words();
  const now = () => {
    const value = host.draft.get(field.path);
    return isObject(value) ? value : {};
  };
  const leave = (text: string) => {
    const names = now();
    const same = names.us === names.uk;
    host.draft.set(field.path, { ...names, ...(same ? { us: text, uk: text } : { [mine]: text }) }, label);
  };
  const one = box({ id, "aria-describedby": described, class: "wide" }, asText(now()[mine]), leave);
  return { inputs: [one], node: labelled(id, label, one, hint) };
}

function choice({ field, host, id, described, hint, label, put }: Making<ChoiceField>): Made {
  const one = select(
    { id, "aria-describedby": described },
    field.options.map((o) => [o[0], optionText(o, host.words())]),
    field.value ?? host.draft.get(field.path) ?? "",
    (key) => put(key === "" ? (field.optional ? field.empty : null) : key),
  );
  return { inputs: [one], node: labelled(id, label, one, hint) };
}

function currency(of: Making<PlainField>): Made {
  const options = of.host.outline.currencies.map((c) => [c, c] as const);
  return choice({ ...of, field: { ...of.field, kind: "choice", options } });
}

function yes({ field, host, id, described, label, put }: Making<PlainField>): Made {
  const one: HTMLInputElement = el("input", {
    type: "checkbox",
    id,
    checked: (host.draft.get(field.path) ?? field.ticked) === true,
    "aria-describedby": described,
    on: { change: () => put(one.checked) },
  });
  return { inputs: [one], node: el("label", { class: "tick-box", for: id }, one, label) };
}

function area(props: Props, value: string, leave: (text: string) => void): HTMLTextAreaElement {
  const node: HTMLTextAreaElement = el("textarea", { ...props, on: { change: () => leave(node.value) } });
  node.value = value;
  return node;
}

function long({ field, host, id, described, hint, label, put }: Making<LongField>): Made {
  const leave = (text: string) => {
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

function lines({ field, host, id, described, hint, label, put }: Making<PlainField>): Made {
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
