// The answers about the car: plain lines, each with Change. And the one plain
// page with which a car is begun that no customer has described.

import { button, el, freshId } from "../dom.ts";
import { showError } from "../ask.ts";
import { blankCar } from "../car.ts";
import { dateText, today } from "../linkcontent.ts";
import { allFields, neededFields, textOf, withPlace, withoutPlace } from "./fields.ts";

/** The control of a field with its label and the place of its error. */
function control(field, car, save) {
  const id = freshId("answer");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const choice = (list) => list.map(([value, text]) => el("option", { value }, text));
  const select = field.options || field.groups;
  const node = select
    ? el(
        "select",
        {
          id,
          "data-field": field.id,
          "aria-describedby": `${id}-error`,
          on: { change: () => save(node.value, null) },
        },
        el("option", { value: "", disabled: true }, "Choose"),
        field.groups
          ? field.groups.map(([name, list]) =>
              name ? el("optgroup", { label: name }, choice(list)) : choice(list),
            )
          : choice(field.options),
      )
    : el("input", {
        id,
        "data-field": field.id,
        type: "text",
        autocomplete: "off",
        maxlength: 12,
        "aria-describedby": `${id}-hint ${id}-error`,
        on: { change: () => save(node.value, node) },
      });
  node.value = field.get(car) ?? "";
  return {
    id,
    node,
    error,
    field,
    nodes: [field.hint && el("p", { id: `${id}-hint`, class: "hint" }, field.hint), error, node],
  };
}

const plainError = (one, text) => showError(one.node, one.error, text);

/** A blank car: what a range needs, on one page. done(car) */
export function beginForm(opened, q, done) {
  let car = blankCar(new Date().getFullYear());
  const form = el("form", { class: "begin", novalidate: true });
  const controls = neededFields(opened, q).map((field) => {
    const one = control(field, car, (value) => {
      if (!field.parse) {
        car = field.set(car, value);
        when();
      }
    });
    one.row = el("div", { class: "typed" }, el("label", { for: one.id }, field.label), one.nodes);
    return one;
  });
  const when = () =>
    controls.forEach((one) => {
      one.row.hidden = Boolean(one.field.when && !one.field.when(car));
    });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    for (const one of controls) {
      one.error.hidden = true;
      one.node.removeAttribute("aria-invalid");
    }
    for (const one of controls.filter((c) => !c.row.hidden)) {
      const value = one.field.parse ? one.field.parse(one.node.value) : one.node.value;
      if (value === null || value === "") {
        plainError(one, one.field.wrong ?? "Choose one; not sure is an answer where it stands.");
        return;
      }
      car = one.field.set(car, value);
    }
    done({ ...car, scope: "whole_body" });
  });
  form.append(
    ...controls.map((c) => c.row),
    el("button", { type: "submit", class: "go" }, "Begin with this car"),
  );
  when();
  return form;
}

/** host: opened, q, job, changed(car), redraw() */
export function answersView(host, editing, edit) {
  const { opened, q, job } = host;
  const rows = allFields(opened, q, job.car)
    .filter((f) => !f.when || f.when(job.car))
    .map((field) => row(field, host, editing === field.id, edit));
  const recorded = Boolean(job.car.survey?.length || job.car.opened?.length);
  return el(
    "div",
    { class: "answers-page" },
    recorded &&
      el(
        "p",
        { class: "hint" },
        "Parts are recorded on this body, so the body stays as it is. For another body begin another car.",
      ),
    el("dl", { class: "basis" }, rows),
    el(
      "p",
      {},
      button("It also lived somewhere else", () => host.changed(withPlace(job.car)), { class: "quiet" }),
      (job.car.life ?? [])
        .slice(1)
        .map((_, k) =>
          button(`Take place ${k + 2} out`, () => host.changed(withoutPlace(job.car, k + 1)), {
            class: "quiet",
          }),
        ),
    ),
    seen(job),
    checked(host),
  );
}

/** The customer's own looks, which stay theirs. */
function seen(job) {
  const lines = new Map(
    job.sheet.walk_round.flatMap((s) => s.lines.map((l) => [`${l.look} ${l.on}`, l.text])),
  );
  const all = (job.car.looks ?? []).filter((l) => l.by === "customer");
  if (all.length === 0) return null;
  return el(
    "section",
    {},
    el("h2", {}, "Looked by the customer"),
    el(
      "ul",
      {},
      all.map((l) =>
        el("li", {}, `${lines.get(`${l.look} ${l.on}`) ?? `${l.look}, ${l.on}`}: ${SAID[l.result]}`),
      ),
    ),
  );
}
const SAID = { yes: "yes", no: "no", could_not: "could not look" };

function row(field, host, isEditing, edit) {
  const { job } = host;
  const fixed =
    (field.id === "body" || field.id === "fenders") &&
    Boolean(job.car.survey?.length || job.car.opened?.length);
  if (!isEditing) {
    const text = textOf(field, job.car);
    return el(
      "div",
      { class: "basis-row" },
      el("dt", {}, field.label),
      el(
        "dd",
        {},
        el("span", {}, text),
        !fixed &&
          button("Change", () => edit(field.id), {
            class: "change",
            "data-key": field.id,
            "aria-label": `Change: ${field.label}, ${text}`,
          }),
      ),
    );
  }
  const one = control(field, job.car, (value, input) => {
    const next = field.parse ? field.parse(value) : value;
    if (next === null) {
      plainError(one, typeof field.wrong === "function" ? field.wrong(value) : field.wrong);
      return;
    }
    if (!input || next !== null) host.changed(field.set(job.car, next), field.id);
  });
  one.node.setAttribute("aria-label", field.label);
  return el(
    "div",
    { class: "basis-row" },
    el("dt", {}, field.label),
    el(
      "dd",
      {},
      el("span", { class: "typed" }, one.nodes),
      button("Done", () => edit(null), { class: "change", "data-key": field.id }),
    ),
  );
}

function checked({ job, changed }) {
  const day = job.car.answers_checked;
  if (day) return el("p", {}, `The shop went through these answers on ${dateText(day)}.`);
  return el(
    "div",
    {},
    el("p", {}, "These answers are not checked by the shop yet."),
    button("I have been through these answers", () => changed({ ...job.car, answers_checked: today() }), {
      class: "go",
      "data-key": "checked",
    }),
  );
}
