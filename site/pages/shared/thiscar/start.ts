// The first page without a car: a customer's link or file, a blank car, the sample, or the
// car that was found on this device.

import { showError } from "../ask.ts";
import { type BandButton, band } from "../bands.ts";
import type { CarFile } from "../carfile.ts";
import { carriesCar, decode, Newer } from "../carurl.ts";
import { button, el, freshId } from "../dom.ts";
import { type SurveyExtra, shopStore } from "../durablestorage.ts";
import { messageOf, readCarFile, saveFile } from "../files.ts";
import { fromShared, type LinkOrigin, type Origin } from "../linkcontent.ts";
import type { Questions } from "../question.ts";
import type { OpenedReply } from "../replies.ts";
import type { ReplyTo } from "../requests.ts";
import type { Saved } from "../storage.ts";
import { momentText } from "../timestamp.ts";
import { beginForm } from "./answers.ts";

export const linkProblem = (error: unknown): string =>
  error instanceof Newer
    ? "This link was made by a newer version of this page. Reload the page, then open the link once more."
    : "This link is not whole: ask for it again.";

/** The content of a link or of its part after the "#". Rejects when it has no car. */
export async function fromLink(text: string): Promise<{ car: unknown; from: LinkOrigin }> {
  const at = text.indexOf("#");
  const fragment = at < 0 ? `#${text.trim()}` : text.slice(at).trim();
  if (!carriesCar(fragment)) throw new Error("not a link of this page");
  return fromShared(await decode(fragment));
}

/** Opens a car that the engine has yet to check. */
export type TakeCar = (car: unknown, from: Origin) => Promise<unknown>;

export interface FileHost {
  take: TakeCar;
  /** Shows why the file could not be opened. */
  failed(text: string): void;
}

export interface StartHost extends FileHost {
  opened: OpenedReply;
  q: Questions;
  sample(): unknown;
}

function pasteLink(take: TakeCar): HTMLFormElement {
  const id = freshId("link");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const area = el("textarea", {
    id,
    rows: 3,
    spellcheck: "false",
    autocomplete: "off",
    "aria-describedby": `${id}-error`,
  });
  const submit = async (event: Event) => {
    event.preventDefault();
    error.hidden = true;
    try {
      const { car, from } = await fromLink(area.value);
      await take(car, from);
    } catch (problem) {
      showError(area, error, linkProblem(problem));
    }
  };
  return el(
    "form",
    { novalidate: true, on: { submit } },
    el("label", { for: id, class: "filter-label" }, "Paste a customer's link"),
    error,
    area,
    el("button", { type: "submit", class: "go" }, "Open the link"),
  );
}

export function startView(host: StartHost): HTMLElement {
  const input = el("input", {
    type: "file",
    accept: ".json,application/json",
    class: "visually-hidden",
    tabindex: "-1",
    "aria-hidden": "true",
    on: {
      change: () => {
        const file = input.files?.[0];
        if (file) openFile(file, host);
        input.value = "";
      },
    },
  });
  return el(
    "div",
    { class: "start" },
    el(
      "section",
      {},
      el("h2", {}, "A customer's link or file"),
      pasteLink(host.take),
      el(
        "p",
        {},
        button("Open a file", () => input.click()),
        input,
      ),
    ),
    el(
      "section",
      {},
      el("h2", {}, "Try it"),
      el("p", {}, button("Open the sample car (invented)", host.sample, { "data-key": "sample" })),
    ),
    el(
      "section",
      {},
      el("h2", {}, "A blank car"),
      beginForm(host.opened, host.q, (car) => host.take(car, { kind: "blank" })),
    ),
  );
}

export async function openFile(file: File, host: FileHost): Promise<void> {
  try {
    await host.take(await readCarFile(file), { kind: "file" });
  } catch (error) {
    host.failed(messageOf(error));
  }
}

/** The car that is saved on this device, as it was found. */
export type FoundCar = Saved<CarFile, SurveyExtra>;

export interface FoundActs {
  goOn(found: FoundCar): unknown;
  /** The car has been erased. */
  erased(): void;
}

/** What was found on this device, or null. count asks the engine for the counts of a car. */
export function foundBand(
  acts: FoundActs,
  count: (car: CarFile) => Promise<ReplyTo<"tally">>,
): HTMLElement | null {
  const found = shopStore.load();
  if (!found) return null;
  const erase: BandButton = [
    "Erase",
    () => {
      shopStore.erase();
      acts.erased();
    },
  ];
  if (found === "unreadable")
    return band(
      "found",
      ["A survey was kept on this device, but it cannot be read any more."],
      [["Save what is there as a file", () => saveFile("this-car.json", shopStore.text() ?? "")], erase],
    );
  const survey = `Survey of ${momentText(found.when)} found on this device`;
  const line = el("p", {}, `${survey}.`);
  count(found.car).then(
    (reply) => {
      line.textContent =
        reply.kind === "tally"
          ? `${survey}: ${reply.survey.line}.`
          : `${survey}, but it could not be read through: ${reply.text}`;
    },
    () => {
      // The band says enough without the counts.
    },
  );
  return band(
    "found",
    [line],
    [
      ["Go on", () => acts.goOn(found)],
      ["Save a file", () => saveFile("this-car.json", JSON.stringify(found.car))],
      erase,
    ],
  );
}
