// The first page without a car: a customer's link or file, a blank car, the
// sample, or the one found on this device.

import { button, el, freshId } from "../dom.ts";
import { Newer, carriesCar, decode } from "../carurl.ts";
import { readCarFile, saveFile } from "../files.ts";
import { fromShared } from "../linkcontent.ts";
import { showError } from "../ask.ts";
import { band } from "../bands.ts";
import { shopStore } from "../durablestorage.ts";
import { momentText } from "../timestamp.ts";
import { beginForm } from "./answers.ts";

export const linkProblem = (error) =>
  error instanceof Newer
    ? "This link was made by a newer version of this page. Reload the page, then open the link once more."
    : "This link is not whole: ask for it again.";

/** What a link or its part after the "#" holds. */
export async function fromLink(text) {
  const at = text.indexOf("#");
  const fragment = at < 0 ? `#${text.trim()}` : text.slice(at).trim();
  if (!carriesCar(fragment)) throw new Error("not a link of this page");
  return fromShared(await decode(fragment));
}

function pasteLink(take) {
  const id = freshId("link");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const area = el("textarea", {
    id,
    rows: 3,
    spellcheck: "false",
    autocomplete: "off",
    "aria-describedby": `${id}-error`,
  });
  const submit = async (event) => {
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

/** host: opened, q, take(car, from), sample(), failed(text) */
export function startView(host) {
  const input = el("input", {
    type: "file",
    accept: ".json,application/json",
    class: "visually-hidden",
    tabindex: "-1",
    "aria-hidden": "true",
    on: {
      change: () => {
        if (input.files[0]) openFile(input.files[0], host);
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

export async function openFile(file, host) {
  try {
    await host.take(await readCarFile(file), { kind: "file" });
  } catch (error) {
    host.failed(error.message);
  }
}

/** What was found on this device. tally(car) asks for its counts.
 *  act: goOn(found), erased() */
export function foundBand(act, tally) {
  const found = shopStore.load();
  if (!found) return null;
  const erase = [
    "Erase",
    () => {
      shopStore.erase();
      act.erased();
    },
  ];
  if (found === "unreadable")
    return band(
      "found",
      ["A survey was kept on this device, but it cannot be read any more."],
      [["Save what is there as a file", () => saveFile("this-car.json", shopStore.text() ?? "")], erase],
    );
  const line = el("p", {}, `Survey of ${momentText(found.when)} found on this device.`);
  tally(found.car).then(
    (reply) => {
      line.textContent =
        reply.kind === "tally"
          ? `Survey of ${momentText(found.when)} found on this device: ${reply.survey.line}.`
          : `Survey of ${momentText(found.when)} found on this device, but it could not be read through: ${reply.text}`;
    },
    () => {},
  );
  return band(
    "found",
    [line],
    [
      ["Go on", () => act.goOn(found)],
      ["Save a file", () => saveFile("this-car.json", JSON.stringify(found.car))],
      erase,
    ],
  );
}
