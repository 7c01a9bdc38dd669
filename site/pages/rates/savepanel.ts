// Keeping the draft on this device, once asked. Two tabs on one draft are noticed
// and nothing is put together from both.

import { button, el } from "../shared/dom.ts";
import { band } from "../shared/bands.ts";
import { saveFile } from "../shared/files.ts";
import { DurableStore } from "../shared/durablestorage.ts";
import { clockText, moment, momentText } from "../shared/timestamp.ts";

/** A shelf of its own beside the cars. It calls what lies there "car". */
const shelf = new DurableStore("underpaint rates draft 1");
const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

/** {rates, when, stamp}, null when nothing is kept, "unreadable". */
export function keptDraft() {
  const found = shelf.load();
  return found === null || found === "unreadable"
    ? found
    : { rates: found.car, when: found.when, stamp: found.stamp };
}

/** Takes what the disk has newer, before a draft is offered. */
export const settleDraft = () => shelf.settle();

/** When a kept draft was last changed, in words. */
export const whenText = (found) => momentText(found.when);

/** The draft as it lies there, for a file when it cannot be used. */
export const saveKeptText = () => saveFile("rates-draft.json", shelf.text() ?? "");

export class KeepDraft {
  node = el("section", { class: "keep", "aria-labelledby": "keep-title" });
  on = false;
  #stamp = null;
  #line = el("p", { class: "keep-line" });
  #said = el("p", { class: "keep-said", role: "status" });
  #keepButton = button("Keep on this device", () => this.begin());
  #eraseButton = button("Erase from this device", () => this.erase(true));
  #host;

  /** host: draft, frame, canonical() (text or null), goOn(found) */
  constructor(host) {
    this.#host = host;
    shelf.whenOtherTabSaves((found) => {
      if (this.on && found?.stamp !== this.#stamp) this.#other();
    });
    this.node.append(
      el("h2", { id: "keep-title" }, "Keep the draft"),
      this.#line,
      el(
        "div",
        { class: "keep-buttons" },
        el(
          "div",
          {},
          this.#keepButton,
          this.#eraseButton,
          button("Save a file", () => this.save()),
        ),
      ),
      this.#said,
    );
    this.#draw();
  }

  /** Are there changes that would be gone with this tab? */
  get loses() {
    return !this.on && this.#host.draft.changed;
  }

  /** Called with every change. */
  keep() {
    if (!this.on) return;
    const found = keptDraft();
    if (found && found.stamp !== this.#stamp) {
      this.#other();
      return;
    }
    this.#write();
  }

  #write() {
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const { draft, frame } = this.#host;
    this.on = shelf.save(draft.rates, moment(), stamp);
    if (this.on) {
      this.#stamp = stamp;
      this.#said.textContent = `Kept on this device at ${clockText()}.`;
      frame.put("storage", null);
    } else frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
    this.#draw();
    return this.on;
  }

  goOn(found) {
    this.on = true;
    this.#stamp = found.stamp;
    this.#said.textContent = `Kept on this device, ${whenText(found)}.`;
    this.#draw();
  }

  /** Another draft is now in hand: what is kept stays as it is. */
  stop() {
    this.on = false;
    this.#stamp = null;
    this.#said.textContent = "";
    this.#draw();
  }

  begin(force = false) {
    const { frame } = this.#host;
    if (keptDraft() && !force) {
      const away = () => frame.put("replace", null);
      frame.put(
        "replace",
        band(
          "replace",
          ["Another draft is kept on this device already."],
          [
            [
              "Put this one in its place",
              () => {
                away();
                this.begin(true);
              },
            ],
            ["Leave the other one", away],
          ],
        ),
      );
      scrollTo(0, 0);
      return;
    }
    if (this.#write()) this.#eraseButton.focus();
  }

  #other() {
    this.on = false;
    this.#draw();
    const found = keptDraft();
    const { frame, goOn } = this.#host;
    const away = () => frame.put("tabs", null);
    if (!found || found === "unreadable") {
      frame.put(
        "tabs",
        band("tabs", [
          "Another tab has erased the draft from the device. This tab no longer keeps it; it is still here until the tab is closed.",
        ]),
      );
      return;
    }
    frame.put(
      "tabs",
      band(
        "tabs",
        [
          `Another tab has changed the draft kept here, ${whenText(found)}; that one is the newer. Nothing is put together from both.`,
        ],
        [
          [
            "Go on with the newer one",
            () => {
              away();
              goOn(found);
            },
          ],
          [
            "Keep this one instead",
            () => {
              away();
              this.begin(true);
            },
          ],
        ],
      ),
    );
  }

  erase(fromButton = false) {
    shelf.erase();
    this.on = false;
    this.#said.textContent = "Nothing of these rates is kept on this device now.";
    this.#draw();
    if (fromButton) this.#keepButton.focus();
  }

  /** A file of the draft as it stands, faults and all: it can be opened here again. */
  save() {
    saveFile(
      "rates-draft.json",
      this.#host.canonical() ?? `${JSON.stringify(this.#host.draft.rates, null, 1)}\n`,
    );
    this.#host.draft.saved();
    this.#said.textContent = "The file went to where your browser saves files. Open it here to go on.";
  }

  #draw() {
    this.#line.textContent = this.on
      ? "Every change is kept on this device."
      : "The draft is not kept on this device: it is gone when this tab is closed.";
    this.#keepButton.hidden = this.on;
    this.#eraseButton.hidden = !this.on;
  }
}
