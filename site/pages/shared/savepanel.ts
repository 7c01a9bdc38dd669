// The section "Keep it" of a page of the shop: saving on this device at each change, once
// somebody asked for it, and saving a file. When two tabs save the same thing, the panel asks
// which of the two goes on and never merges them. The rules of saving are in saving.ts.

import { type BandButton, band } from "./bands.ts";
import { button, type Children, el } from "./dom.ts";
import type { Frame } from "./frame.ts";
import { FULL, NOT_ERASED, replaceQuestion, type SaveWords } from "./savewords.ts";
import { Saving } from "./saving.ts";
import type { Found, Saved, Store } from "./storage.ts";
import { clockText } from "./timestamp.ts";

export interface SavePanelHost<T extends object, More extends object> {
  store: Store<T, More>;
  frame: Frame;
  words: SaveWords;
  /** What is to be saved now, and what belongs to it. */
  current(): { thing: T; more?: More };
  /** Saves a file. */
  file(): void;
  /** Opens what another tab has saved. */
  goOn(found: Saved<T, More>): unknown;
  /** The panel was drawn anew, for what else the page shows of it. */
  drawn?(on: boolean, last: string): void;
  /** The time of a saved entry in words; its clock time if this is left out. */
  timeOf?(found: Saved<T, More>): string;
  /** Goes on saving after the device has refused: the next change tries again. */
  triesAgain?: boolean;
  /** Further buttons beside "Save a file", and what is below everything. */
  buttons?: Children;
  below?: Children;
  className?: string;
}

export class SavePanel<T extends object, More extends object = object> {
  node: HTMLElement;
  /** The device refused the last time. */
  failed = false;
  #host: SavePanelHost<T, More>;
  #saving: Saving<T, More>;
  #last = "";
  #line = el("p", { class: "keep-line" });
  #saveButton = button("Keep on this device", () => this.#begin(), { "data-key": "keep" });
  #eraseButton = button("Erase from this device", () => this.#eraseHere(), { "data-key": "erase" });
  #area = el("div", { class: "keep-area" });
  #said = el("p", { class: "keep-said", role: "status" });

  constructor(host: SavePanelHost<T, More>) {
    this.#host = host;
    this.#saving = new Saving({ store: host.store, other: (found) => this.#other(found) });
    this.node = el(
      "section",
      { class: `keep ${host.className ?? ""}`.trim(), "aria-labelledby": "keep-title" },
      el("h2", { id: "keep-title", tabindex: "-1" }, host.words.title),
      this.#line,
      el(
        "div",
        { class: "keep-buttons" },
        el(
          "div",
          {},
          this.#saveButton,
          this.#eraseButton,
          button("Save a file", () => this.saveFile(), { "data-key": "save" }),
          host.buttons,
        ),
      ),
      this.#area,
      this.#said,
      host.below,
    );
    this.draw();
  }

  /** Whether this tab saves. */
  get on(): boolean {
    return this.#saving.on;
  }

  /** Saves, if this tab saves; called at each change, before anything else happens. */
  save(): void {
    if (!this.on) {
      this.draw();
      return;
    }
    const { thing, more } = this.#host.current();
    const outcome = this.#saving.save(thing, more);
    if (outcome === "saved" || outcome === "refused") this.#wrote(outcome === "saved");
  }

  /** Saves in place of whatever is saved, and goes on saving unless the device refuses. */
  #write(): void {
    this.show(null);
    const { thing, more } = this.#host.current();
    const done = this.#saving.write(thing, more);
    this.#wrote(done);
    // The button that was pressed is gone. The panel may be far below a band that had it.
    if (done) this.#eraseButton.focus({ preventScroll: true });
  }

  #wrote(done: boolean): void {
    const { frame, words, triesAgain } = this.#host;
    this.failed = !done;
    if (done) {
      this.#last = clockText();
      if (words.saved) this.say(words.saved(this.#last));
    } else if (!triesAgain) this.#saving.on = false;
    frame.put("storage", done ? null : band("storage", [FULL], [["Save a file", () => this.saveFile()]]));
    this.draw();
  }

  #begin(): void {
    const { store, words } = this.#host;
    const begin = () => this.#write();
    if (!store.load()) {
      begin();
      return;
    }
    this.show(replaceQuestion(words.replace, begin, () => this.show(null)));
    this.#area.querySelector("button")?.focus();
  }

  /** What was found on this device is now open, and this tab saves it. */
  goOn(found: Saved<T, More>): void {
    const { words } = this.#host;
    this.#saving.goOn(found);
    this.#last = this.#timeOf(found);
    if (words.found) this.say(words.found(this.#last));
    this.draw();
  }

  /** Something else is open now: what is saved stays as it is. */
  stop(): void {
    this.#saving.stop();
    this.#last = "";
    this.failed = false;
    this.show(null);
    this.say("");
    this.draw();
  }

  /** Saves nothing until the function that it returns is called. */
  pause(): () => void {
    const { on } = this.#saving;
    this.#saving.on = false;
    return () => {
      this.#saving.on = on;
    };
  }

  erase(): void {
    const { store, words } = this.#host;
    const gone = store.erase();
    this.#saving.stop();
    this.draw();
    this.say(gone ? words.erased : NOT_ERASED);
  }

  #eraseHere(): void {
    this.erase();
    this.#saveButton.focus();
  }

  /** Another tab has saved or erased meanwhile, and this one has stopped: a person chooses. */
  #other(found: Found<T, More>): void {
    const { frame, words, goOn } = this.#host;
    this.draw();
    if (!found || found === "unreadable") {
      frame.put("tabs", band("tabs", [words.erasedElsewhere]));
      return;
    }
    const choose = (act: () => unknown) => () => {
      frame.put("tabs", null);
      act();
    };
    const buttons: BandButton[] = [
      [words.takeNewer, choose(() => goOn(found))],
      [words.keepThis, choose(() => this.#write())],
    ];
    frame.put("tabs", band("tabs", [words.newer(this.#timeOf(found), this.#last)], buttons));
  }

  #timeOf(found: Saved<T, More>): string {
    return this.#host.timeOf?.(found) ?? found.when.slice(11);
  }

  /** Saves a file, whether this tab saves on the device or not. */
  saveFile(): void {
    const { file, words } = this.#host;
    file();
    this.say(words.filed);
    this.draw();
  }

  say(text: string): void {
    this.#said.textContent = text;
  }

  /** Shows something below the buttons, in place of what was there; null takes it away. */
  show(node: HTMLElement | null): void {
    this.#area.replaceChildren(...(node ? [node] : []));
  }

  draw(): void {
    const { words, drawn } = this.#host;
    const { on } = this;
    this.#line.textContent = words.line(on, this.#last);
    this.#saveButton.hidden = on;
    this.#eraseButton.hidden = !on;
    drawn?.(on, this.#last);
  }
}
