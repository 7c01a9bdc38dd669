// Keeping the draft on this device, once asked. Two tabs on one draft are noticed
// and nothing is put together from both.

import { button, el } from "../dom.js";
import { band } from "../bands.js";
import { saveFile } from "../files.js";

const KEY = "underpaint rates draft 1";
const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

export function keptDraft() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return found && typeof found.rates === "object" && found.rates !== null && typeof found.when === "string" ? found : null;
  } catch { return null; }
}

const momentText = () => new Date().toLocaleString("en-GB", { dateStyle: "long", timeStyle: "short" });

export class KeepDraft {
  node = el("section", { class: "keep", "aria-labelledby": "keep-title" });
  on = false;
  #stamp = null;
  #said = el("p", { class: "keep-said", role: "status" });
  #host;

  /** host: draft, frame, canonical() (text or null), goOn(found) */
  constructor(host) {
    this.#host = host;
    addEventListener("storage", (event) => { if (this.on && (event.key === KEY || event.key === null) && keptDraft()?.stamp !== this.#stamp) this.#other(); });
    addEventListener("beforeunload", (event) => { if (!this.on && host.draft.changed) event.preventDefault(); });
    this.#draw();
  }

  /** Called with every change. */
  keep() {
    if (!this.on) return;
    const found = keptDraft();
    if (found && found.stamp !== this.#stamp) { this.#other(); return; }
    this.#write();
  }

  #write() {
    this.#stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    try {
      localStorage.setItem(KEY, JSON.stringify({ rates: this.#host.draft.rates, when: momentText(), stamp: this.#stamp }));
      this.#said.textContent = `Kept on this device, ${momentText()}.`;
      this.#host.frame.put("storage", null);
      return true;
    } catch {
      this.on = false;
      this.#host.frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
      return false;
    }
  }

  goOn(found) { this.on = true; this.#stamp = found.stamp; this.#draw(); this.#said.textContent = `Kept on this device, ${found.when}.`; }

  begin(force = false) {
    if (keptDraft() && !force) {
      this.#host.frame.put("replace", band("replace", ["Another draft is kept on this device already."], [["Put this one in its place", () => { this.#host.frame.put("replace", null); this.begin(true); }], ["Leave the other one", () => this.#host.frame.put("replace", null)]]));
      return;
    }
    this.on = true;
    this.#write();
    this.#draw();
  }

  #other() {
    this.on = false;
    this.#draw();
    const found = keptDraft();
    const { frame, goOn } = this.#host;
    if (!found) { frame.put("tabs", band("tabs", ["Another tab has erased the draft from the device. This tab no longer keeps it."])); return; }
    frame.put("tabs", band("tabs", [`Another tab has changed the draft kept here, ${found.when}; that one is the newer. Nothing is put together from both.`],
      [["Go on with the newer one", () => { frame.put("tabs", null); goOn(found); }], ["Keep this one instead", () => { frame.put("tabs", null); this.begin(true); }]]));
  }

  erase() {
    try { localStorage.removeItem(KEY); } catch { /* Nothing can be kept there, so nothing is. */ }
    this.on = false;
    this.#said.textContent = "Nothing of these rates is kept on this device now.";
    this.#draw();
  }

  /** A file of the draft as it stands, faults and all: it can be opened here again. */
  save() {
    saveFile("rates-draft.json", this.#host.canonical() ?? `${JSON.stringify(this.#host.draft.rates, null, 1)}\n`);
    this.#said.textContent = "The file went to where your browser saves files.";
  }

  #draw() {
    this.node.replaceChildren(el("h2", { id: "keep-title" }, "Keep the draft"),
      el("p", {}, this.on ? "Every change is kept on this device." : "The draft is not kept on this device: it is gone when this tab is closed."),
      el("div", { class: "keep-buttons" }, el("div", {}, this.on ? button("Erase from this device", () => this.erase()) : button("Keep on this device", () => this.begin()), button("Save a file", () => this.save()))), this.#said);
  }
}
