// What is around the list: its head, the ways to the zones, and its foot.

import { el } from "../shared/dom.ts";
import { swap } from "../shared/swap.ts";
import type { Cursor } from "./cursor.ts";
import { markHits } from "./hits.ts";
import { type AddressOf, type FootHost, listFoot, listHead, zoneLinks } from "./listparts.ts";
import { lookAgainLine } from "./lookagain.ts";
import type { OpenCar } from "./opencar.ts";

export interface ListFrameHost extends FootHost {
  /** Goes to a part, with the keyboard. */
  go(on: string): void;
  address: AddressOf;
}

export class ListFrame {
  head = el("div", { class: "survey-head" });
  links = el("div", { class: "survey-groups" });
  foot = el("div", {});
  #openCar: OpenCar;
  #host: ListFrameHost;

  constructor(openCar: OpenCar, host: ListFrameHost) {
    this.#openCar = openCar;
    this.#host = host;
  }

  /** Draws the foot anew. */
  draw(opening: boolean): void {
    this.foot.replaceChildren(listFoot(this.#openCar, this.#host, opening));
  }

  /** Shows the counts, as the engine last gave them. */
  counted({ opening, groups, group }: Cursor): void {
    const { address } = this.#host;
    swap(this.head, !opening && listHead(this.#openCar, groups, group, address));
    swap(this.links, !opening && zoneLinks(this.#openCar, groups, group, address));
    this.#lookAgain();
    const zone = this.#openCar.tally?.zones.find((z) => z.id === group.id);
    const rest = this.foot.querySelector<HTMLButtonElement>("[data-rest]");
    if (rest) {
      rest.textContent = zone?.rest_line ?? "Rest of the seen parts here: sound";
      rest.disabled = !zone?.seen_left;
    }
  }

  /** Something was recorded: the foot follows before the engine has counted. */
  recorded(): void {
    this.#lookAgain();
    const found = this.#openCar.car.whole_car ?? [];
    for (const node of this.foot.querySelectorAll<HTMLElement>("[data-whole]"))
      node.setAttribute("aria-pressed", String(found.includes(node.dataset.whole ?? "")));
    markHits(this.foot, this.#openCar);
  }

  #lookAgain(): void {
    const place = this.foot.querySelector<HTMLElement>("[data-again]");
    if (place)
      swap(
        place,
        lookAgainLine(this.#openCar, (on) => this.#host.go(on)),
      );
  }
}
