// The answers about the car: plain lines, each with Change. And the form that starts a car
// that no customer has described.

import { showError } from "../ask.ts";
import { blankCar } from "../car.ts";
import type { CarFile } from "../carfile.ts";
import { button, type Child, el, freshId } from "../dom.ts";
import { today } from "../linkcontent.ts";
import type { Questions } from "../question.ts";
import type { OpenedReply } from "../replies.ts";
import { dateText } from "../timestamp.ts";
import { type CarContext, checkKey, checksOf, type ThisCar } from "./context.ts";
import {
  allFields,
  type Field,
  neededFields,
  type Option,
  textOf,
  withoutPlace,
  withPlace,
} from "./fields.ts";

/** The control of a field, with the place of its error. */
interface Control {
  id: string;
  field: Field;
  input: HTMLSelectElement | HTMLInputElement;
  error: HTMLElement;
  /** All that is shown: its hint, the place of its error and the input. */
  nodes: Child[];
}

/** changed is called with every new value. */
function control(field: Field, car: CarFile, changed: (value: string) => void): Control {
  const id = freshId("answer");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const on = { change: () => changed(input.value) };
  const optionNodes = (options: readonly Option[]) =>
    options.map(([value, text]) => el("option", { value }, text));
  const input: HTMLSelectElement | HTMLInputElement =
    field.kind === "choice"
      ? el(
          "select",
          { id, "data-field": field.id, "aria-describedby": `${id}-error`, on },
          el("option", { value: "", disabled: true }, "Choose"),
          field.groups.map(([name, options]) =>
            name ? el("optgroup", { label: name }, optionNodes(options)) : optionNodes(options),
          ),
        )
      : el("input", {
          id,
          "data-field": field.id,
          type: "text",
          autocomplete: "off",
          maxlength: 12,
          "aria-describedby": `${id}-hint ${id}-error`,
          on,
        });
  input.value = field.get(car) ?? "";
  const hint = field.kind === "typed" && el("p", { id: `${id}-hint`, class: "hint" }, field.hint);
  return { id, field, input, error, nodes: [hint, error, input] };
}

/** The car with the value of a control, or null where it cannot be read. */
function written(field: Field, car: CarFile, value: string): CarFile | null {
  if (field.kind === "typed") return field.read(car, value);
  return value === "" ? null : field.set(car, value);
}

const wrongText = (field: Field, value: string) =>
  field.kind === "typed" ? field.wrong(value) : "Choose one; not sure is an answer where it stands.";

/** A blank car: what a range needs, on one page. done is called with the car. */
export function beginForm(opened: OpenedReply, q: Questions, done: (car: CarFile) => void): HTMLFormElement {
  let car = blankCar(new Date().getFullYear());
  const rows = neededFields(opened, q).map((field) => {
    const one = control(field, car, (value) => {
      if (field.kind === "choice") {
        car = field.set(car, value);
        hideOthers();
      }
    });
    const row = el("div", { class: "typed" }, el("label", { for: one.id }, field.label), one.nodes);
    return { ...one, row };
  });
  const hideOthers = () => {
    for (const { field, row } of rows) row.hidden = field.when?.(car) === false;
  };
  const submit = (event: Event) => {
    event.preventDefault();
    for (const { error, input } of rows) {
      error.hidden = true;
      input.removeAttribute("aria-invalid");
    }
    for (const { field, input, error } of rows.filter(({ row }) => !row.hidden)) {
      const next = written(field, car, input.value);
      if (next === null) {
        showError(input, error, wrongText(field, input.value));
        return;
      }
      car = next;
    }
    done({ ...car, scope: "whole_body" });
  };
  hideOthers();
  return el(
    "form",
    { class: "begin", novalidate: true, on: { submit } },
    rows.map(({ row }) => row),
    el("button", { type: "submit", class: "go" }, "Begin with this car"),
  );
}

export interface AnswersHost extends CarContext {
  /** The car with another answer. field: the id of its field, if it has one. */
  changed(car: CarFile, field?: string): void;
}

/** Parts belong to one body, so the body stays once a part is recorded. */
const hasParts = ({ car }: ThisCar): boolean => Boolean(car.survey?.length || car.opened?.length);

/** editing: the id of the field that is being changed, or null; edit changes that. */
export function answersView(
  host: AnswersHost,
  editing: string | null,
  edit: (id: string | null) => void,
): HTMLElement {
  const { opened, q, openCar } = host;
  const { car } = openCar;
  const rows = allFields(opened, q, car)
    .filter((f) => f.when?.(car) !== false)
    .map((field) => row(field, host, editing === field.id, edit));
  return el(
    "div",
    { class: "answers-page" },
    hasParts(openCar) &&
      el(
        "p",
        { class: "hint" },
        "Parts are recorded on this body, so the body stays as it is. For another body begin another car.",
      ),
    el("dl", { class: "basis" }, rows),
    el(
      "p",
      {},
      button("It also lived somewhere else", () => host.changed(withPlace(openCar.car)), { class: "quiet" }),
      (car.life ?? []).slice(1).map((_, k) =>
        button(`Take place ${k + 2} out`, () => host.changed(withoutPlace(openCar.car, k + 1)), {
          class: "quiet",
        }),
      ),
    ),
    customerChecks(openCar),
    shopWentThrough(host),
  );
}

const SAID = { yes: "yes", no: "no", could_not: "could not look" };

/** The customer's own checks, which the shop cannot change. */
function customerChecks({ car, sheet }: ThisCar): HTMLElement | null {
  const known = checksOf(sheet);
  const all = (car.looks ?? []).filter((l) => l.by === "customer");
  if (all.length === 0) return null;
  return el(
    "section",
    {},
    el("h2", {}, "Looked by the customer"),
    el(
      "ul",
      {},
      all.map((l) =>
        el("li", {}, `${known.get(checkKey(l))?.text ?? `${l.look}, ${l.on}`}: ${SAID[l.result]}`),
      ),
    ),
  );
}

function row(
  field: Field,
  host: AnswersHost,
  isEditing: boolean,
  edit: (id: string | null) => void,
): HTMLElement {
  const { car } = host.openCar;
  const answer = (...nodes: Child[]) =>
    el("div", { class: "basis-row" }, el("dt", {}, field.label), el("dd", {}, nodes));
  if (!isEditing) {
    const text = textOf(field, car);
    const fixed = (field.id === "body" || field.id === "fenders") && hasParts(host.openCar);
    return answer(
      el("span", {}, text),
      !fixed &&
        button("Change", () => edit(field.id), {
          class: "change",
          "data-key": field.id,
          "aria-label": `Change: ${field.label}, ${text}`,
        }),
    );
  }
  const { input, error, nodes } = control(field, car, (value) => {
    const next = written(field, host.openCar.car, value);
    if (next) host.changed(next, field.id);
    else showError(input, error, wrongText(field, value));
  });
  input.setAttribute("aria-label", field.label);
  return answer(
    el("span", { class: "typed" }, nodes),
    button("Done", () => edit(null), { class: "change", "data-key": field.id }),
  );
}

function shopWentThrough({ openCar, changed }: AnswersHost): HTMLElement {
  const day = openCar.car.answers_checked;
  if (day) return el("p", {}, `The shop went through these answers on ${dateText(day)}.`);
  return el(
    "div",
    {},
    el("p", {}, "These answers are not checked by the shop yet."),
    button("I have been through these answers", () => changed({ ...openCar.car, answers_checked: today() }), {
      class: "go",
      "data-key": "checked",
    }),
  );
}
