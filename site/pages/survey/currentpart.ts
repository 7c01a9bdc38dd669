// The current part beside the list: its name, the six words, what is wrong or asked there,
// what is recorded, and its notes.

import type { PanelFit } from "../shared/carfile.ts";
import { el } from "../shared/dom.ts";
import { swap } from "../shared/swap.ts";
import { recordAt, stageOf, type TextName } from "../shared/thiscar/record.ts";
import type { Act } from "./keys.ts";
import { countsText } from "./listparts.ts";
import { lookAgainHere } from "./lookagain.ts";
import type { OpenCar } from "./opencar.ts";
import { panelHead, panelMore, panelNow } from "./panel.ts";
import { itemOf } from "./partwords.ts";
import { markWord, wordButtons } from "./words.ts";

export interface CurrentPartHost {
  act(...act: Act): void;
  go(on: string): void;
  text(on: string, name: TextName, value: string): void;
  panelFit(on: string, fit: PanelFit | "", said: string): void;
}

export class CurrentPart {
  /** The words with what is above them; what is recorded; and what may be added. */
  words = el("div", { class: "survey-hand" });
  now = el("div", { class: "survey-now" });
  more = el("div", { class: "survey-more" });
  /** Whether the letter of a finding comes next. */
  finding = false;
  /** What the engine says about the last entry, while the range is shown. */
  odds = "";
  /** Why the last act could not be. */
  refused = "";
  #counts = el("p", { class: "counts" });
  #place = el("div", { class: "hand-place" });
  #alert = el("div", { class: "hand-alert" });
  #openCar: OpenCar;
  #host: CurrentPartHost;

  constructor(openCar: OpenCar, host: CurrentPartHost) {
    this.#openCar = openCar;
    this.#host = host;
  }

  /** Begins with the words of the sheet. */
  begin(): void {
    const { conditions } = this.#openCar.sheet;
    this.words.replaceChildren(
      this.#counts,
      this.#place,
      this.#alert,
      wordButtons(conditions, (...act) => this.#host.act(...act)),
    );
  }

  /** Another part is current. */
  reset(): void {
    this.finding = false;
    this.odds = "";
    this.refused = "";
  }

  show(on: string): void {
    const { car, sheet } = this.#openCar;
    const record = recordAt(car, on, stageOf(car, itemOf(sheet, on)));
    markWord(this.words, record?.condition, Boolean(record?.could_not_see));
    const host = {
      act: (...act: Act) => this.#host.act(...act),
      go: (to: string) => this.#host.go(to),
      text: (name: TextName, value: string) => this.#host.text(on, name, value),
      panelFit: (fit: PanelFit | "", said: string) => this.#host.panelFit(on, fit, said),
    };
    swap(this.#place, panelHead(this.#openCar, on, host));
    swap(
      this.#alert,
      this.refused && el("p", { class: "error" }, this.refused),
      lookAgainHere(this.#openCar, on, host.act),
    );
    swap(this.now, panelNow(this.#openCar, on, this.odds));
    swap(this.more, panelMore(this.#openCar, on, host, this.finding));
  }

  /** The engine has counted. What it says about the part is drawn only where there is, or
   *  was, something, so that the fields are left alone. */
  counted(on: string): void {
    const { car, secondLooks } = this.#openCar;
    this.#counts.textContent = countsText(this.#openCar);
    const shown = this.now.querySelector(".error") || this.words.querySelector(".look-again");
    if (shown || this.#openCar.faultOn(on) || secondLooks.at(car, on)) this.show(on);
  }

  focusNote(): void {
    this.more.querySelector<HTMLElement>("[data-entry=note]")?.focus();
  }

  focusWord(): void {
    this.words.querySelector<HTMLElement>('[data-word][aria-pressed="true"], [data-word]')?.focus();
  }

  scrollToFindings(): void {
    this.more.querySelector(".find-fold")?.scrollIntoView({ block: "nearest" });
  }
}
