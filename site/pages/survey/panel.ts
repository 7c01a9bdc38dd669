// The part in hand: what it is, what stands there and stood there before, what
// was found, what to look at behind it, a note and the number of a photograph.

import { button, el, freshId } from "../shared/dom.ts";
import { hasFinding, isOpen, recordAt, standing, stageOf } from "../shared/thiscar/record.ts";
import { momentText } from "../shared/timestamp.ts";

/** What is said of a part beside its condition, in the list and in words. */
export function stateOf(job, on) {
  const item = job.sheet.items[on];
  if (!item.closed) return "";
  return isOpen(job.car, item.box) ? "box opened" : "closed box";
}

export const conditionName = (sheet, id) => sheet.conditions.find((c) => c.id === id)?.name ?? id;

/** The findings of a record in short words. */
export function findingsOf(sheet, record) {
  if (!record) return [];
  return sheet.findings
    .filter((f) => hasFinding(record, f))
    .map((f) => (f.count ? `${f.name} (${record.lead_failed})` : f.name));
}

/** Text and spoken name of a cell. */
export function cellOf(job, on) {
  const item = job.sheet.items[on];
  const record = standing(job.car, on);
  const fault = job.faultOn(on);
  const word = record?.condition
    ? conditionName(job.sheet, record.condition)
    : record?.could_not_see
      ? "Could not see"
      : "";
  const found = findingsOf(job.sheet, record);
  const state = stateOf(job, on);
  const outside = item.closed && record?.stage === "survey" && word ? "from outside" : "";
  const again = job.again.at(job.car, on) ? "look again" : "";
  const small = [
    !word && state,
    outside,
    again,
    found.length > 0 && "found something",
    record?.note && "note",
  ]
    .filter(Boolean)
    .join(", ");
  // What is to be seen stands in the spoken name as it is (WCAG 2.2, 2.5.3).
  const said = word ? `${word}${small && ` ${small}`}` : "not recorded";
  const name = [item.name, state, said, found.join(", "), fault && `does not count: ${fault.text}`]
    .filter(Boolean)
    .join(", ");
  return { text: word || "·", small, name, fault, recorded: Boolean(word) };
}

/** The head of the part in hand, short enough to stand above the words, with
 *  the act that opens its box. host: act */
export function panelHead(job, on, host) {
  const item = job.sheet.items[on];
  const open = item.closed && isOpen(job.car, item.box);
  return el(
    "div",
    { class: "hand-head" },
    el("h2", {}, item.name),
    item.closed &&
      el(
        "div",
        { class: "hand-state" },
        el("span", {}, open ? "Box opened." : "Closed box: seen from outside."),
        el(
          "button",
          {
            type: "button",
            "data-act": "box",
            on: { pointerdown: (event) => event.preventDefault(), click: () => host.act("box") },
          },
          open ? "Not opened (O)" : "Open it (O)",
        ),
      ),
  );
}

function history(job, on) {
  return ["opening_up", "survey"].flatMap((stage) => {
    const record = recordAt(job.car, on, stage);
    if (!record) return [];
    const what = record.condition
      ? conditionName(job.sheet, record.condition)
      : record.could_not_see
        ? "could not see"
        : "no condition";
    const where = job.sheet.items[on].closed
      ? stage === "opening_up"
        ? "From inside: "
        : "From outside: "
      : "";
    const was = (record.was ?? []).map(
      (w) =>
        `was ${conditionName(job.sheet, w.condition).toLowerCase()}${w.at ? ` (${momentText(w.at)})` : ""}`,
    );
    const when = record.at ? `, ${was.length ? "changed " : ""}${momentText(record.at)}` : "";
    const sure = record.sure ? " Looked at again: it is so." : "";
    return [`${where}${what}${when}${was.length ? `; ${was.join(", ")}` : ""}.${sure}`];
  });
}

function behind(job, on, go) {
  const all = job.sheet.items[on].behind ?? [];
  if (all.length === 0) return null;
  return el(
    "div",
    { class: "behind" },
    el("h3", {}, "Look behind it"),
    el(
      "ul",
      {},
      all.map((one) => {
        const record = standing(job.car, one);
        const said = record?.condition
          ? conditionName(job.sheet, record.condition).toLowerCase()
          : record?.could_not_see
            ? "could not see"
            : "not recorded";
        return el(
          "li",
          {},
          button(`${job.sheet.items[one].name}: ${said}`, () => go(one), { class: "quiet" }),
        );
      }),
    ),
  );
}

function finds(job, on, host) {
  const item = job.sheet.items[on];
  const record = recordAt(job.car, on, stageOf(job.car, item));
  const list = job.sheet.findings.filter((f) => item.findings?.includes(f.id));
  return el(
    "div",
    { class: "finds" },
    list.length === 0
      ? el("p", {}, "Nothing of the list can be found on this part.")
      : el(
          "div",
          { class: "find-buttons", role: "group", "aria-label": "What was found on this part" },
          list.map((f) => {
            const many =
              f.count && record?.lead_failed ? ` (${record.lead_failed} of ${item.lead_joints})` : "";
            return button(
              el(
                "span",
                {},
                el("span", { class: "word-key", "aria-hidden": "true" }, f.key.toUpperCase()),
                f.name + many,
              ),
              () => host.act("found", f),
              { "aria-pressed": String(hasFinding(record, f)), "data-find": f.id, class: "mark find" },
            );
          }),
        ),
  );
}

function entry(label, name, value, most, save) {
  const id = freshId(name);
  const input = el(name === "note" ? "textarea" : "input", {
    id,
    maxlength: most,
    rows: name === "note" ? 2 : null,
    autocomplete: "off",
    "data-entry": name,
    on: { change: () => save(name, input.value.trim()) },
  });
  input.value = value ?? "";
  return el("div", { class: "hand-entry" }, el("label", { for: id }, label), input);
}

/** What stands at the part now: its fault, its entries with their times, and the
 *  odds when they are shown. */
export function panelNow(job, on, odds) {
  const fault = job.faultOn(on);
  return el(
    "div",
    { class: "hand-now" },
    fault && el("p", { class: "error" }, `Does not count: ${fault.text}`),
    history(job, on).map((line) => el("p", { class: "hand-line" }, line)),
    odds && el("p", { class: "odds" }, odds),
  );
}

/** What was found, what is behind it, note and photograph. host: act, go(on),
 *  text(name, value) */
export function panelMore(job, on, host, finding) {
  const record = recordAt(job.car, on, stageOf(job.car, job.sheet.items[on]));
  return el(
    "div",
    {
      class: "hand-more",
      on: {
        keydown: (event) => {
          if (event.key === "Escape") {
            event.preventDefault();
            host.act("away");
          }
        },
      },
    },
    behind(job, on, host.go),
    el(
      "details",
      { class: "find-fold", open: finding || findingsOf(job.sheet, record).length > 0 },
      el("summary", {}, "Found…"),
      finds(job, on, host),
    ),
    entry("Note", "note", record?.note, 300, host.text),
    entry("Number of a photograph", "photo", record?.photo, 40, host.text),
    el(
      "details",
      { class: "looks-fold", "data-stays": true },
      el("summary", {}, "What the six words mean"),
      el(
        "dl",
        { class: "words" },
        job.sheet.conditions.map((c) => [el("dt", {}, c.name), el("dd", {}, c.looks_like)]),
      ),
    ),
  );
}
