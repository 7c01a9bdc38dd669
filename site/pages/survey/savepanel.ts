// Saving the car on this device at every press, as a file and as a link. What goes for every
// page of the shop is in shared/savepanel.ts.

import type { CarFile } from "../shared/carfile.ts";
import { encode, MOST_CHARACTERS } from "../shared/carurl.ts";
import { button, el } from "../shared/dom.ts";
import { type SurveyExtra, shopStore } from "../shared/durablestorage.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { linkBox } from "../shared/linkbox.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { RangeReply, RatesName } from "../shared/replies.ts";
import { SavePanel } from "../shared/savepanel.ts";
import { REPLACE_CAR, type SaveWords } from "../shared/savewords.ts";
import type { FoundCar } from "../shared/thiscar/start.ts";
import type { OpenCar } from "./opencar.ts";

const WORDS: SaveWords = {
  title: "Keep it",
  line: (on, last) =>
    on
      ? `Kept on this device, last press at ${last}.`
      : "Not kept on this device: it is gone when this tab is closed.",
  replace: REPLACE_CAR,
  erasedElsewhere: "Another tab has erased this car from the device. This tab no longer keeps it.",
  newer: (when, last) =>
    `Another tab has recorded on the car kept here, last at ${when}; that one is the newer. This tab kept its last press at ${last}. Nothing is put together from both.`,
  takeNewer: "Go on with the newer one",
  keepThis: "Go on with this one and keep it instead",
  erased: "Nothing of this car is kept on this device now.",
  filed: "The file went to where your browser saves files.",
};

const TOO_LONG = "So much is recorded that it does not fit into a link. Save a file instead.";

export interface CarSavingHost {
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

export class CarSaving {
  panel: SavePanel<CarFile, SurveyExtra>;
  /** The short line that is always in view. */
  line = el("p", { class: "keep-short" });
  /** The page goes on to another page that takes the car along. */
  takenAlong = false;
  #host: CarSavingHost;
  /** The car file as it was opened, or as it was saved in a file: that much is not lost. */
  #safe: string | null = null;

  constructor(host: CarSavingHost) {
    this.#host = host;
    const { openCar, frame, goOn, again } = host;
    this.panel = new SavePanel<CarFile, SurveyExtra>({
      store: shopStore,
      frame,
      words: WORDS,
      current: () => ({ thing: openCar.car, more: { ways: openCar.settings, from: openCar.from } }),
      file: () => this.#saveAsFile(),
      goOn,
      drawn: (on, last) => {
        this.line.textContent = on ? `Kept on this device ${last}` : "Not kept on this device";
      },
      triesAgain: true,
      buttons: button("Make a link", () => this.#link()),
      below: el("p", {}, button("Another car", again, { class: "quiet", "data-key": "again" })),
    });
    addEventListener("beforeunload", (event) => {
      if (this.loses) event.preventDefault();
    });
  }

  /** Whether anything is recorded that would be lost with this tab. */
  get loses(): boolean {
    const { openCar } = this.#host;
    if (!openCar.hasCar || this.takenAlong) return false;
    if (this.panel.failed) return true;
    return !this.panel.on && openCar.from?.kind !== "sample" && openCar.text() !== this.#safe;
  }

  /** A car was opened. again: it comes from this tab's own history, so nothing else has it.
   *  found: the entry on this device that it comes from. */
  opened({ again, found }: { again: boolean; found: FoundCar | null }): void {
    this.#safe = again ? null : this.#host.openCar.text();
    if (found) this.panel.goOn(found);
  }

  #saveAsFile(): void {
    const text = this.#host.openCar.text();
    saveFile("this-car.json", text);
    this.#safe = text;
  }

  async #link(): Promise<void> {
    const { openCar, rates, reply } = this.#host;
    const { panel } = this;
    const fragment = await encode(toShare(openCar.car, reply(), rates(), today()));
    if (fragment.length > MOST_CHARACTERS) {
      panel.show(el("p", { class: "error" }, TOO_LONG));
      return;
    }
    const box = linkBox(location.href.replace(/#.*$/s, "") + fragment, {
      hint: "It holds the answers and everything recorded. Whoever has it can read that, and it stays in histories and chats where it was pasted.",
      say: (text) => panel.say(text),
      erase: () => panel.show(null),
    });
    panel.show(box);
    box.querySelector("textarea")?.focus();
  }
}
