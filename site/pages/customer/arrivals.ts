// Answers that do not come from the questions: a link, a file, the car saved on this device, the
// sample. The engine checks all of them before use.

import { ofBuild } from "../shared/address.ts";
import { type BandButton, band, notesBand, originBand } from "../shared/bands.ts";
import { isComplete } from "../shared/car.ts";
import type { CarFile } from "../shared/carfile.ts";
import { carriesCar, decode, Newer } from "../shared/carurl.ts";
import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { messageOf, readCarFile, saveFile, whenDropped } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { fromShared, type Origin } from "../shared/linkcontent.ts";
import { type Found, type Saved, customerStore as store } from "../shared/storage.ts";
import { dateText } from "../shared/timestamp.ts";
import type { App } from "./app.ts";
import type { VisitHistory, VisitState } from "./visithistory.ts";

/** What is saved may be from a newer page: it is only refused, never thrown away. */
const SAVE_KEPT: BandButton = [
  "Save what is there as a file",
  () => saveFile("my-car.json", store.text() ?? ""),
];

export interface ArrivalsHost {
  engine: EngineClient;
  visit: VisitHistory;
  frame: Frame;
  app: App;
  blank: CarFile;
}

export class Arrivals {
  #host: ArrivalsHost;

  constructor(host: ArrivalsHost) {
    this.#host = host;
    whenDropped(document.body, (file) => this.#fromFile(file));
    addEventListener("hashchange", () => this.fromAddress());
  }

  /** The bands that belong to a state. */
  bands(state: VisitState): void {
    const { frame, app, visit, blank } = this.#host;
    const again = (): void => visit.erase(blank);
    const from = state.step === "range" ? state.from : undefined;
    frame.put("origin", from && app.opened ? originBand(from, app.opened, { again }) : null);
    frame.put(
      "notes",
      from && app.opened && from.kind !== "sample"
        ? notesBand(state.notes ?? [], state.car, app.q, (step) => visit.go({ step, changing: true }))
        : null,
    );
    frame.put("kept", this.#savedBand(state));
  }

  #savedBand(state: VisitState): HTMLElement | null {
    const found = state.step === "body" && !state.car.bodies ? store.load() : null;
    if (!found) return null;
    const erase = (): void => {
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
        ["Open it", () => this.#openSaved(found)],
        ["Erase it", erase],
      ],
    );
  }

  #openSaved(found: Saved<CarFile>): Promise<boolean> {
    return this.#take(
      found.car,
      { kind: "kept", entered: found.when },
      { keeping: true, stamp: found.stamp },
    );
  }

  /** Checks a car with the engine and shows it; says why when the engine refuses it. True once
   *  it is shown. */
  async #take(car: unknown, from: Origin, more: Partial<VisitState> = {}): Promise<boolean> {
    const { engine, visit, frame } = this.#host;
    frame.put("arrival", null);
    try {
      const reply = await engine.ask({ ask: "check_car", car });
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
      const checked: CarFile = JSON.parse(reply.canonical);
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

  /** Opens the car in the address, once, and removes it from the address. */
  async fromAddress(): Promise<void> {
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

  async #fromFile(file: File): Promise<void> {
    try {
      await this.#take(await readCarFile(file), { kind: "file" });
    } catch (error) {
      this.#host.frame.put("arrival", band("arrival", [messageOf(error)]));
    }
  }

  async openSample(): Promise<void> {
    const response = await fetch(ofBuild("samples/two-door.json"));
    await this.#take(await response.json(), { kind: "sample" });
  }

  /** What else one can begin with, beside the first answers. */
  otherWays(): HTMLElement {
    const input: HTMLInputElement = el("input", {
      type: "file",
      accept: ".json,application/json",
      class: "visually-hidden",
      tabindex: "-1",
      "aria-hidden": "true",
      on: {
        change: () => {
          const [file] = input.files ?? [];
          if (file) this.#fromFile(file);
          input.value = "";
        },
      },
    });
    return el(
      "div",
      { class: "side-ways" },
      button("See one worked out", () => this.openSample(), { class: "quiet way-on" }),
      button("Open a saved file", () => input.click(), { class: "quiet way-on" }),
      input,
    );
  }

  /** Another tab has saved or erased the car, so this one has stopped saving its own. */
  otherTab(found: Found<CarFile>): void {
    if (!found || found === "unreadable") return;
    const { frame, visit } = this.#host;
    const away = (): void => frame.put("tabs", null);
    const these = (): void => {
      away();
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
              away();
              this.#openSaved(found);
            },
          ],
          ["Go on with these, not kept", these],
        ],
      ),
    );
  }
}
