// Saving the car on this device: every press at once, with its time shown. When two tabs
// save one car, that is noticed before anything is written over.

import { band } from "../shared/bands.ts";
import type { CarFile } from "../shared/carfile.ts";
import { encode, MOST_CHARACTERS } from "../shared/carurl.ts";
import { button, el } from "../shared/dom.ts";
import { type SurveyExtra, shopStore } from "../shared/durablestorage.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { RangeReply, RatesName } from "../shared/replies.ts";
import type { Found } from "../shared/storage.ts";
import type { FoundCar } from "../shared/thiscar/start.ts";
import { clockText, moment } from "../shared/timestamp.ts";
import type { OpenCar } from "./opencar.ts";
import { linkBox, linkTooLong, SaveView } from "./saveview.ts";

const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

export interface SaveHost {
  openCar: OpenCar;
  frame: Frame;
  rates(): RatesName;
  /** The range that is shown, or null. */
  reply(): RangeReply | null;
  /** Goes on with the car that another tab has saved. */
  goOn(found: FoundCar): unknown;
  /** Closes this car, for another one. */
  again(): void;
}

export class SavePanel {
  /** Whether this tab saves the car. */
  on = false;
  /** The page goes on to another page that takes the car along. */
  takenAlong = false;
  #host: SaveHost;
  #view: SaveView;
  #stamp: string | null = null;
  /** The time of the last press that was saved. */
  #last = "";
  #failed = false;
  /** The car file as it was opened, or as it was saved in a file: that much is not lost. */
  #safe: string | null = null;

  constructor(host: SaveHost) {
    this.#host = host;
    this.#view = new SaveView({
      save: () => this.begin(),
      erase: () => this.#erase(),
      file: () => this.#saveAsFile(),
      link: () => this.#link(),
      again: () => host.again(),
    });
    shopStore.whenOtherTabSaves((found) => {
      if (this.on && stampOf(found) !== this.#stamp) this.#other(found);
    });
    addEventListener("beforeunload", (event) => {
      if (this.loses) event.preventDefault();
    });
  }

  get node(): HTMLElement {
    return this.#view.node;
  }
  /** The short line that is always in view. */
  get line(): HTMLElement {
    return this.#view.line;
  }

  /** Whether anything is recorded that would be lost with this tab. */
  get loses(): boolean {
    const { openCar } = this.#host;
    if (!openCar.hasCar || this.takenAlong) return false;
    if (this.#failed) return true;
    return !this.on && openCar.from?.kind !== "sample" && openCar.text() !== this.#safe;
  }

  /** A car was opened. again: it comes from this tab's own history, so nothing else has it. */
  opened({ again }: { again: boolean }): void {
    this.#safe = again ? null : this.#host.openCar.text();
  }

  /** Saves the car, if this tab saves it; called in each press, before anything else. */
  save(): void {
    if (!this.on) {
      this.#draw();
      return;
    }
    const found = shopStore.load();
    if (found && found !== "unreadable" && stampOf(found) !== this.#stamp) {
      this.#other(found);
      return;
    }
    this.#write();
  }

  #write(): boolean {
    const { openCar, frame } = this.#host;
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const { settings: ways, from } = openCar;
    const done = shopStore.save(openCar.car, moment(), stamp, { ways, from });
    this.#failed = !done;
    if (done) {
      this.#stamp = stamp;
      this.#last = clockText();
      frame.put("storage", null);
    } else frame.put("storage", band("storage", [FULL], [["Save a file", () => this.#saveAsFile()]]));
    this.#draw();
    return done;
  }

  /** Goes on with the car that was found: this tab now saves it. */
  goOn(found: FoundCar): void {
    this.on = true;
    this.#stamp = found.stamp ?? null;
    this.#last = found.when.slice(11);
    this.#draw();
  }

  /** Starts saving. force: also in the place of another car that is saved there. */
  begin(force = false): void {
    if (shopStore.load() && !force) {
      this.#view.put(this.#askReplace());
      this.#view.focusFirst();
      return;
    }
    this.#view.put(null);
    this.on = true;
    if (!this.#write()) this.on = false;
    this.#draw();
  }

  stop(): void {
    this.on = false;
    this.#stamp = null;
    this.#last = "";
    this.#failed = false;
    this.#view.put(null);
    this.#view.say("");
    this.#draw();
  }

  #erase(): void {
    shopStore.erase();
    this.on = false;
    this.#draw();
    this.#view.say("Nothing of this car is kept on this device now.");
  }

  #askReplace(): HTMLElement {
    return el(
      "div",
      { class: "band", role: "group", "aria-label": "Replace the kept car?" },
      el("p", {}, "Another car is kept on this device already."),
      button("Put this one in its place", () => this.begin(true)),
      button("Leave the other one", () => this.#view.put(null)),
    );
  }

  /** Another tab has saved or erased meanwhile. Nothing is merged: a person chooses. */
  #other(found: Found<CarFile, SurveyExtra>): void {
    this.on = false;
    const { frame, goOn } = this.#host;
    if (!found || found === "unreadable") {
      frame.put(
        "tabs",
        band("tabs", ["Another tab has erased this car from the device. This tab no longer keeps it."]),
      );
    } else {
      const choose = (act: () => unknown) => () => {
        frame.put("tabs", null);
        act();
      };
      frame.put(
        "tabs",
        band(
          "tabs",
          [
            `Another tab has recorded on the car kept here, last at ${found.when.slice(11)}; that one is the newer. This tab kept its last press at ${this.#last}. Nothing is put together from both.`,
          ],
          [
            ["Go on with the newer one", choose(() => goOn(found))],
            ["Go on with this one and keep it instead", choose(() => this.begin(true))],
          ],
        ),
      );
    }
    this.#draw();
  }

  #saveAsFile(): void {
    const text = this.#host.openCar.text();
    saveFile("this-car.json", text);
    this.#safe = text;
    this.#view.say("The file went to where your browser saves files.");
  }

  async #link(): Promise<void> {
    const { openCar, rates, reply } = this.#host;
    const fragment = await encode(toShare(openCar.car, reply(), rates(), today()));
    if (fragment.length > MOST_CHARACTERS) {
      this.#view.put(linkTooLong());
      return;
    }
    const address = location.href.replace(/#.*$/s, "") + fragment;
    this.#view.put(
      linkBox(address, {
        say: (text) => this.#view.say(text),
        erase: () => this.#view.put(null),
      }),
    );
    this.#view.focusLink();
  }

  #draw(): void {
    this.#view.draw(this.on, this.#last);
  }
}

/** The stamp of a car that was found, null where it has none; undefined for anything else. */
const stampOf = (found: Found<CarFile, SurveyExtra>): string | null | undefined =>
  found === null || found === "unreadable" ? undefined : (found.stamp ?? null);
