// The view of the answers about the car, one of which may be open for a change.

import type { CarFile } from "../shared/carfile.ts";
import { answersView } from "../shared/thiscar/answers.ts";
import type { Shop } from "../shared/thiscar/context.ts";
import type { OpenCar } from "./opencar.ts";

export interface AnswersPaneHost {
  openCar: OpenCar;
  shop: Shop;
  /** An answer was changed. field: the id of its field, if it has one. */
  answered(field: string | undefined): void;
}

export class AnswersPane {
  /** The field that is open for a change. */
  editing: string | null = null;
  #host: AnswersPaneHost;
  #draw: (key: string | null) => void;

  /** draw shows the content anew. key: of what gets the keyboard. */
  constructor(host: AnswersPaneHost, draw: (key: string | null) => void) {
    this.#host = host;
    this.#draw = draw;
  }

  content(): HTMLElement {
    const { openCar, shop } = this.#host;
    return answersView(
      { opened: shop.opened, q: shop.q, openCar, changed: (car, field) => this.#changed(car, field) },
      this.editing,
      (id) => this.#edit(id),
    );
  }

  #edit(id: string | null): void {
    this.editing = id;
    this.#draw(id);
  }

  async #changed(car: CarFile, field: string | undefined): Promise<void> {
    this.editing = null;
    if (await this.#host.openCar.answered(car)) {
      this.#host.answered(field);
      this.#draw(field ?? "checked");
    }
  }

  /** Gives the keyboard to a field or a button, or else to the heading. */
  focus(screen: HTMLElement, key: string | null): void {
    const node =
      screen.querySelector<HTMLElement>(`[data-field="${key}"]`) ??
      screen.querySelector<HTMLElement>(`[data-key="${key}"]`) ??
      screen.querySelector("h1");
    node?.focus();
  }
}
