// The current part: what it is, what is and was recorded there, what was found, what to look
// at behind it, a note and the number of a photograph.

import type { PanelFit, PartRecord, RecordStage } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { SheetFinding } from "../shared/replies.ts";
import { hasFinding, isOpen, recordAt, stageOf, standing, type TextName } from "../shared/thiscar/record.ts";
import { momentText } from "../shared/timestamp.ts";
import type { Act } from "./keys.ts";
import type { OpenCar } from "./opencar.ts";
import { conditionName, findingsOf, itemOf, wordOf } from "./partwords.ts";

export interface PanelHost {
  act(...act: Act): unknown;
  /** Goes to another part. */
  go(on: string): void;
  text(name: TextName, value: string): void;
  panelFit(fit: PanelFit | "", said: string): void;
}

/** The head of the current part, short enough to fit above the words, with the button that
 *  opens its box. */
export function panelHead(openCar: OpenCar, on: string, host: Pick<PanelHost, "act">): HTMLElement {
  const item = itemOf(openCar.sheet, on);
  const open = item.closed && isOpen(openCar.car, item.box);
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

const STAGES: readonly RecordStage[] = ["opening_up", "survey"];

/** What is recorded at each stage, newest first, with what was recorded before. */
function history({ car, sheet }: OpenCar, on: string): string[] {
  const { closed } = itemOf(sheet, on);
  return STAGES.flatMap((stage) => {
    const record = recordAt(car, on, stage);
    if (!record) return [];
    const what = record.could_not_see ? "could not see" : wordOf(sheet, record) || "no condition";
    const where = closed ? (stage === "opening_up" ? "From inside: " : "From outside: ") : "";
    const was = (record.was ?? []).flatMap((w) =>
      w.condition
        ? [`was ${conditionName(sheet, w.condition).toLowerCase()}${w.at ? ` (${momentText(w.at)})` : ""}`]
        : [],
    );
    const when = record.at ? `, ${was.length ? "changed " : ""}${momentText(record.at)}` : "";
    const sure = record.sure ? " Looked at again: it is so." : "";
    return [`${where}${what}${when}${was.length ? `; ${was.join(", ")}` : ""}.${sure}`];
  });
}

function behind({ car, sheet }: OpenCar, on: string, go: (on: string) => void): HTMLElement | null {
  const all = itemOf(sheet, on).behind;
  if (all.length === 0) return null;
  return el(
    "div",
    { class: "behind" },
    el("h3", {}, "Look behind it"),
    el(
      "ul",
      {},
      all.map((one) => {
        const record = standing(car, one);
        const said = wordOf(sheet, record).toLowerCase() || "not recorded";
        return el(
          "li",
          {},
          button(`${itemOf(sheet, one).name}: ${said}`, () => go(one), { class: "quiet" }),
        );
      }),
    ),
  );
}

function finds({ car, sheet }: OpenCar, on: string, act: PanelHost["act"]): HTMLElement {
  const item = itemOf(sheet, on);
  const record = recordAt(car, on, stageOf(car, item));
  const list = sheet.findings.filter((f) => item.findings.includes(f.id));
  const many = (f: SheetFinding) =>
    f.count && record?.lead_failed ? ` (${record.lead_failed} of ${item.lead_joints})` : "";
  return el(
    "div",
    { class: "finds" },
    list.length === 0
      ? el("p", {}, "Nothing of the list can be found on this part.")
      : el(
          "div",
          { class: "find-buttons", role: "group", "aria-label": "What was found on this part" },
          list.map((f) =>
            button(
              el(
                "span",
                {},
                el("span", { class: "word-key", "aria-hidden": "true" }, f.key.toUpperCase()),
                f.name + many(f),
              ),
              () => act("found", f),
              { "aria-pressed": String(hasFinding(record, f)), "data-find": f.id, class: "mark find" },
            ),
          ),
        ),
  );
}

function entry(
  label: string,
  name: TextName,
  record: PartRecord | null,
  most: number,
  save: PanelHost["text"],
): HTMLElement {
  const input: HTMLTextAreaElement | HTMLInputElement = el(name === "note" ? "textarea" : "input", {
    id: freshId(name),
    maxlength: most,
    rows: name === "note" ? 2 : null,
    autocomplete: "off",
    "data-entry": name,
    on: { change: () => save(name, input.value.trim()) },
  });
  input.value = record?.[name] ?? "";
  return el("div", { class: "hand-entry" }, el("label", { for: input.id }, label), input);
}

const FITS: readonly (readonly [PanelFit | "", string])[] = [
  ["", "Not tried yet"],
  ["fits", "Fits"],
  ["needs_work", "Needs work"],
  ["wrong", "Wrong, goes back"],
];

/** How the panel that was bought for the part fits, which replaces what is drawn for it. */
function panelFit(record: PartRecord | null, host: Pick<PanelHost, "panelFit">): HTMLElement {
  const id = freshId("panel-fit");
  const select = el(
    "select",
    {
      id,
      "data-entry": "panel_fit",
      on: {
        change: () => {
          const chosen = FITS[select.selectedIndex];
          if (chosen) host.panelFit(chosen[0], `new panel: ${chosen[1].toLowerCase()}`);
        },
      },
    },
    FITS.map(([value, text]) => el("option", { value }, text)),
  );
  select.value = record?.panel_fit ?? "";
  return el("div", { class: "hand-entry" }, el("label", { for: id }, "The new panel"), select);
}

/** What is recorded at the part now: its fault, its entries with their times, and the odds
 *  when they are shown. */
export function panelNow(openCar: OpenCar, on: string, odds: string): HTMLElement {
  const fault = openCar.faultOn(on);
  return el(
    "div",
    { class: "hand-now" },
    fault && el("p", { class: "error" }, `Does not count: ${fault.text}`),
    history(openCar, on).map((line) => el("p", { class: "hand-line" }, line)),
    odds && el("p", { class: "odds" }, odds),
  );
}

/** What was found, what is behind it, note and photograph. finding: the letter of a finding
 *  comes next, so the findings are shown. */
export function panelMore(openCar: OpenCar, on: string, host: PanelHost, finding: boolean): HTMLElement {
  const { car, sheet } = openCar;
  const record = recordAt(car, on, stageOf(car, itemOf(sheet, on)));
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
    behind(openCar, on, host.go),
    el(
      "details",
      { class: "find-fold", open: finding || findingsOf(sheet, record).length > 0 },
      el("summary", {}, "Found…"),
      finds(openCar, on, host.act),
    ),
    itemOf(sheet, on).bought && panelFit(record, host),
    entry("Note", "note", record, 300, host.text),
    entry("Number of a photograph", "photo", record, 40, host.text),
    el(
      "details",
      { class: "looks-fold", "data-stays": true },
      el("summary", {}, "What the six words mean"),
      el(
        "dl",
        { class: "words" },
        sheet.conditions.map((c) => [el("dt", {}, c.name), el("dd", {}, c.looks_like)]),
      ),
    ),
  );
}
