// The drawing beside the list. Without it the list says the same.

import type { CarFile } from "../shared/carfile.ts";
import { el } from "../shared/dom.ts";
import type { SheetReply } from "../shared/replies.ts";
import { Drawing } from "../shared/thiscar/drawn.ts";
import { standing } from "../shared/thiscar/record.ts";

export interface PictureHost {
  car(): CarFile;
  /** The current part. */
  at(): string;
  /** Somebody pressed a part. */
  tap(on: string): void;
}

export class Picture {
  node = el("div", { class: "survey-picture" });
  #drawing: Drawing;
  #host: PictureHost;

  constructor(host: PictureHost) {
    this.#host = host;
    this.#drawing = new Drawing({
      condition: (on) => standing(host.car(), on)?.condition ?? null,
      tap: (on) => host.tap(on),
    });
  }

  show({ drawing, conditions }: SheetReply): void {
    this.node.replaceChildren(this.#drawing.node);
    this.#drawing.show(drawing, conditions).then(
      () => this.outline(),
      () => {
        this.node.replaceChildren(
          el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."),
        );
      },
    );
  }

  /** Draws what is recorded anew. */
  refresh(): void {
    this.#drawing.refresh();
  }

  /** Outlines the current part. */
  outline(): void {
    this.#drawing.outline(this.#host.at());
  }
}
