// The box for the one act that is open: entering, changing or bringing in jobs.

import { band } from "../shared/bands.ts";
import { el } from "../shared/dom.ts";
import type { Frame } from "../shared/frame.ts";
import type { WaitingCar } from "./storage.ts";

export interface Act {
  node: HTMLElement;
  /** Whether something is typed that would be lost with it. */
  readonly changed: boolean;
  /** The car that it completes. */
  readonly waiting?: WaitingCar | null;
}

export interface ActBoxHost {
  frame: Frame;
  /** Called after an act has been opened, before it gets the focus. */
  opened(): void;
  closed(): void;
}

export class ActBox {
  node = el("div", { class: "act-box no-paper" });
  #act: Act | null = null;
  #host: ActBoxHost;

  constructor(host: ActBoxHost) {
    this.#host = host;
  }

  /** The car that the open act completes, or null. */
  get waiting(): WaitingCar | null {
    return this.#act?.waiting ?? null;
  }

  /** Opens an act. If the one before holds something typed, a band asks first. */
  open(make: () => Act): void {
    if (this.#act?.changed) this.#ask(make);
    else this.#show(make());
  }

  #show(act: Act): void {
    this.#act = act;
    this.node.replaceChildren(act.node);
    this.#host.opened();
    this.#focus();
  }

  #ask(make: () => Act): void {
    const away = () => this.#host.frame.put("act", null);
    const node = band(
      "act",
      ["Something is typed that is not with the jobs yet."],
      [
        [
          "Let it go",
          () => {
            away();
            this.#show(make());
          },
        ],
        [
          "Stay with it",
          () => {
            away();
            this.#focus();
          },
        ],
      ],
    );
    this.#host.frame.put("act", node);
    node.querySelector("button")?.focus();
  }

  #focus(): void {
    const heading = this.node.querySelector("h2");
    heading?.focus();
    heading?.scrollIntoView({ block: "start" });
  }

  close(): void {
    this.#act = null;
    this.node.replaceChildren();
    this.#host.closed();
  }
}
