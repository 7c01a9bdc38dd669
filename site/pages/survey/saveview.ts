// The section "Keep it" of This car: its buttons, and the line that says whether the car is
// saved. What the buttons do is in savepanel.ts.

import { button, el } from "../shared/dom.ts";

export interface SaveActs {
  /** Starts saving on this device. */
  save(): void;
  erase(): void;
  /** Saves a file. */
  file(): void;
  /** Makes a link. */
  link(): unknown;
  /** Another car. */
  again(): void;
}

export class SaveView {
  /** The short line that is always in view, and the whole section. */
  line = el("p", { class: "keep-short" });
  node: HTMLElement;
  #long = el("p", { class: "keep-line" });
  #save: HTMLButtonElement;
  #erase: HTMLButtonElement;
  #area = el("div", { class: "keep-area" });
  #said = el("p", { class: "keep-said", role: "status" });

  constructor(acts: SaveActs) {
    this.#save = button("Keep on this device", () => acts.save(), { "data-key": "keep" });
    this.#erase = button("Erase from this device", () => acts.erase(), { "data-key": "erase" });
    this.node = el(
      "section",
      { class: "keep", "aria-labelledby": "keep-title" },
      el("h2", { id: "keep-title" }, "Keep it"),
      this.#long,
      el(
        "div",
        { class: "keep-buttons" },
        el(
          "div",
          {},
          this.#save,
          this.#erase,
          button("Save a file", () => acts.file()),
          button("Make a link", () => acts.link()),
        ),
      ),
      this.#area,
      this.#said,
      el(
        "p",
        {},
        button("Another car", () => acts.again(), { class: "quiet", "data-key": "again" }),
      ),
    );
  }

  /** on: whether this tab saves the car. last: the time of the last press that was saved. */
  draw(on: boolean, last: string): void {
    this.line.textContent = on ? `Kept on this device ${last}` : "Not kept on this device";
    this.#long.textContent = on
      ? `Kept on this device, last press at ${last}.`
      : "Not kept on this device: it is gone when this tab is closed.";
    this.#save.hidden = on;
    this.#erase.hidden = !on;
  }

  say(text: string): void {
    this.#said.textContent = text;
  }

  /** Shows something below the buttons; null takes it away. */
  put(node: HTMLElement | null): void {
    this.#area.replaceChildren(...(node ? [node] : []));
  }

  focusFirst(): void {
    this.#area.querySelector("button")?.focus();
  }

  focusLink(): void {
    this.#area.querySelector("textarea")?.focus();
  }
}

export const linkTooLong = (): HTMLElement =>
  el("p", { class: "error" }, "So much is recorded that it does not fit into a link. Save a file instead.");

/** A link to copy. */
export function linkBox(
  address: string,
  { say, erase }: { say(text: string): void; erase(): void },
): HTMLElement {
  const area: HTMLTextAreaElement = el("textarea", {
    id: "car-link",
    rows: 4,
    readonly: true,
    spellcheck: "false",
    on: { focus: () => area.select() },
  });
  area.value = address;
  return el(
    "div",
    { class: "link-box" },
    el("label", { for: "car-link" }, "The link"),
    area,
    el(
      "p",
      { class: "hint" },
      "It holds the answers and everything recorded. Whoever has it can read that, and it stays in histories and chats where it was pasted.",
    ),
    button("Copy the link", async () => {
      try {
        await navigator.clipboard.writeText(address);
        say("The link is copied.");
      } catch {
        area.focus();
      }
    }),
    button("Erase the link here", erase, { class: "quiet" }),
  );
}
