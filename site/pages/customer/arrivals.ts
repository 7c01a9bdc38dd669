// Answers that do not come from the questions: a link, a file, the car kept on
// this device, the sample. All go through the engine's check before use.

import { ofBuild } from "../shared/address.ts";
import { button, el } from "../shared/dom.ts";
import { band, notesBand, originBand } from "../shared/bands.ts";
import { Newer, carriesCar, decode } from "../shared/carurl.ts";
import { dateText, fromShared } from "../shared/linkcontent.ts";
import { readCarFile, saveFile, whenDropped } from "../shared/files.ts";
import { isComplete } from "../shared/car.ts";
import { customerStore as store } from "../shared/storage.ts";

/** What is kept may be of a newer page: it is never thrown away, only refused. */
const SAVE_KEPT = ["Save what is there as a file", () => saveFile("my-car.json", store.text() ?? "")];

export class Arrivals {
  #host;

  /** host: link, visit, frame, app, blank */
  constructor(host) {
    this.#host = host;
    whenDropped(document.body, (file) => this.#fromFile(file));
    store.whenOtherTabSaves((found) => this.otherTab(found));
    addEventListener("hashchange", () => this.fromAddress());
  }

  /** The bands that belong to a state. */
  bands(state) {
    const { frame, app, visit, blank } = this.#host;
    const again = () => visit.erase(blank);
    const shown = state.from && app.opened && state.step === "range";
    frame.put("origin", shown ? originBand(state.from, app.opened, { again }) : null);
    frame.put(
      "notes",
      shown && state.from.kind !== "sample"
        ? notesBand(state.notes ?? [], state.car, app.q, (step) => visit.go({ step, changing: true }))
        : null,
    );
    frame.put("kept", this.#keptBand(state));
  }

  #keptBand(state) {
    const found = state.step === "body" && !state.car.bodies ? store.load() : null;
    if (!found) return null;
    const erase = () => {
      store.erase();
      this.#host.frame.put("kept", null);
    };
    if (found === "unreadable")
      return band(
        "kept-here",
        ["A car was kept on this device, but it cannot be read any more."],
        [SAVE_KEPT, ["Erase it", erase]],
      );
    return band(
      "kept-here",
      [`A car is kept on this device, from ${dateText(found.when)}.`],
      [
        ["Open it", () => this.#openKept(found)],
        ["Erase it", erase],
      ],
    );
  }

  #openKept(found) {
    return this.#take(
      found.car,
      { kind: "kept", entered: found.when },
      { keeping: true, stamp: found.stamp },
    );
  }

  /** Checks a car with the engine and shows it. Refused: says why, shows nothing. */
  async #take(car, from, more = {}) {
    const { link, visit, frame, app } = this.#host;
    frame.put("arrival", null);
    try {
      const reply = await link.ask({ ask: "check_car", car });
      if (reply.kind !== "car_ok") {
        frame.put(
          "arrival",
          band(
            "arrival",
            ["This car could not be opened.", reply.text],
            from.kind === "kept" ? [SAVE_KEPT] : [],
          ),
        );
        return false;
      }
      const checked = JSON.parse(reply.canonical);
      visit.go(
        {
          keeping: false,
          ...more,
          car: checked,
          said: {},
          draft: null,
          before: null,
          from,
          notes: reply.notes ?? [],
          changing: false,
          step: isComplete(checked) ? "range" : "body",
        },
        { other: true },
      );
      return true;
    } catch {
      frame.put(
        "arrival",
        band("arrival", ["This car could not be opened: the sums are not ready. Try once more in a moment."]),
      );
      return false;
    }
  }

  /** Opens the car in the address, once, and takes it out of the address. */
  async fromAddress() {
    const { frame } = this.#host;
    const fragment = location.hash;
    if (!carriesCar(fragment)) return;
    try {
      const { car, from } = fromShared(await decode(fragment));
      history.replaceState(history.state, "", location.pathname + location.search);
      await this.#take(car, from);
    } catch (error) {
      history.replaceState(history.state, "", location.pathname + location.search);
      frame.put(
        "arrival",
        band("arrival", [
          error instanceof Newer
            ? "This link was made by a newer version of this page. Reload the page, then open the link once more."
            : "This link is not whole: ask for it again.",
        ]),
      );
    }
  }

  async #fromFile(file) {
    try {
      await this.#take(await readCarFile(file), { kind: "file" });
    } catch (error) {
      this.#host.frame.put("arrival", band("arrival", [error.message]));
    }
  }

  async openSample() {
    const response = await fetch(ofBuild("samples/two-door.json"));
    await this.#take(await response.json(), { kind: "sample" });
  }

  /** What stands below the first question. */
  firstScreen(sample) {
    const input = el("input", {
      type: "file",
      accept: ".json,application/json",
      class: "visually-hidden",
      tabindex: "-1",
      "aria-hidden": "true",
      on: {
        change: () => {
          if (input.files[0]) this.#fromFile(input.files[0]);
          input.value = "";
        },
      },
    });
    return el(
      "div",
      { class: "first-notes" },
      el("p", {}, "Worked out on this device. Nothing you enter is sent to us."),
      el(
        "p",
        { class: "side-ways" },
        button("See one worked out (an invented car)", sample, { class: "quiet" }),
        button("Open a saved file", () => input.click(), { class: "quiet" }),
        input,
      ),
    );
  }

  otherTab(found) {
    const { frame, visit } = this.#host;
    if (!visit.state.keeping || found?.stamp === visit.state.stamp) return;
    if (!found || found === "unreadable") {
      visit.amend({ keeping: false });
      return;
    }
    const these = () => {
      frame.put("tabs", null);
      visit.amend({ keeping: false });
    };
    frame.put(
      "tabs",
      band(
        "tabs",
        ["Another tab has kept newer answers. This one no longer keeps its own."],
        [
          [
            "Go on with the newer ones",
            () => {
              frame.put("tabs", null);
              this.#openKept(found);
            },
          ],
          ["Go on with these, not kept", these],
        ],
      ),
    );
    visit.amend({ keeping: false });
  }
}
