// Twenty cars: each press simulates one car. The drawing is hatched where that car is
// rusted through, its price is said, and its dot drops on the axis.

import { button, el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import type { TwentyReply } from "../shared/replies.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import type { Replies } from "../shared/thiscar/gather.ts";
import { amount } from "./bars.ts";
import { answer, missing, type Need } from "./sums.ts";
import type { TalkPage } from "./talk.ts";

const HOLED = "rusted_through";

export interface TwentyHost {
  say(text: string): void;
  again(name: Need): void;
}

export class Twenty implements TalkPage {
  readonly id = "twenty";
  readonly title = "Twenty cars";
  readonly line = "Same kind of car, same answers. These are twenty ways it could turn out.";
  readonly needs = "twenty";
  readonly node = el("div", { class: "twenty" });
  #count = 0;
  #of: TwentyReply | null = null;
  #holed = new Set<string>();
  #wait = el("div", {});
  #total = el("p", { class: "total" });
  #found = el("p", { class: "found" });
  #row = el("div", { class: "twenty-row" });
  #next = button("Next car", () => this.#step(), { class: "big", "data-key": "next-car" });
  #all = button("Show all twenty", () => this.#show(20), { class: "big quiet", "data-key": "all" });
  #note = el("p", { class: "hint" });
  #picture = el("div", { class: "twenty-picture" });
  #drawing = new Drawing({ condition: (on) => (this.#holed.has(on) ? HOLED : null), tap: () => {} });
  #host: TwentyHost;

  constructor(host: TwentyHost) {
    this.#host = host;
    this.#picture.append(this.#drawing.node);
    this.node.append(
      el(
        "div",
        { class: "twenty-words" },
        this.#wait,
        el("div", { class: "big-buttons" }, this.#next, this.#all),
        this.#total,
        this.#found,
      ),
      this.#picture,
      el("div", { class: "twenty-dots" }, this.#row, this.#note),
    );
  }

  get focus(): HTMLElement {
    return this.#next;
  }

  /** Space asks for the next car until all twenty are there. */
  act(): boolean {
    if (!this.#of || this.#count >= 20) return false;
    this.#show(this.#count + 1);
    return true;
  }

  #step(): void {
    this.#show(this.#count >= 20 ? 0 : this.#count + 1);
  }

  draw(replies: Replies): void {
    const reply = answer(replies, "twenty");
    if (reply && reply === this.#of) return;
    const gap = missing(replies.get("twenty"), () => this.#host.again("twenty"));
    this.#wait.replaceChildren(...(gap ? [gap] : []));
    this.#of = reply;
    for (const box of [this.#all, this.#total, this.#found, this.#row, this.#note, this.#picture])
      box.hidden = !reply;
    if (!reply) return;
    this.#note.textContent = reply.note;
    this.#outline(reply.drawing);
    this.#show(0);
  }

  async #outline(body: string): Promise<void> {
    try {
      await this.#drawing.show(body, []);
    } catch {
      this.#picture.replaceChildren(
        el("p", { class: "hint" }, "The drawing could not be loaded; the words say the same."),
      );
      return;
    }
    const key = hatchingKey([{ id: HOLED, name: "Rusted through or gone" }]);
    key.lastChild?.remove();
    this.#drawing.node
      .querySelector("figcaption")
      ?.replaceChildren(el("p", {}, "The car opened out flat, nose up; its left is on your left."), key);
  }

  #show(count: number): void {
    if (!this.#of) return;
    const { cars } = this.#of;
    const dropped = count === this.#count + 1;
    this.#count = count;
    const car = cars[count - 1] ?? null;
    const prices = cars.map((c) => c.total_text).sort((a, b) => amount(a) - amount(b));
    const end = `The cheapest of the twenty: ${prices[0]}. The dearest: ${prices.at(-1)}.`;
    this.#holed = new Set(car?.holed ?? []);
    this.#drawing.refresh();
    this.#total.textContent = !car
      ? "Each press simulates one."
      : count === 20
        ? end
        : `Car ${count}: ${car.total_text}`;
    this.#found.textContent = !car
      ? "\u00a0"
      : count === 20
        ? `Car 20: ${car.total_text}. ${car.found_text}`
        : car.found_text;
    this.#drawDots(this.#of, dropped);
    this.#next.textContent = count === 20 ? "Begin the twenty again" : "Next car";
    this.#all.hidden = count === 20;
    // The button that showed all is hidden now, and the focus must not be lost with it.
    if (document.activeElement === document.body && this.node.isConnected)
      this.#next.focus({ preventScroll: true });
    if (car) this.#host.say(count === 20 ? end : `Car ${count} of 20: ${car.total_text}. ${car.found_text}`);
  }

  /** A dot for each car so far. dropped: the last one is new and drops. */
  #drawDots({ cars, axis }: TwentyReply, dropped: boolean): void {
    const count = this.#count;
    const dots = cars.slice(0, count).map((c) => ({ at: c.at, stack: c.stack, inside: true }));
    const text =
      count === 0
        ? "No car yet."
        : count === 1
          ? "One dot, one car."
          : `${count} of the twenty cars, a dot for each.`;
    this.#row.replaceChildren(dotRow({ dots, dots_text: text }, axis, levelsOf([{ dots: cars }])));
    if (dropped) [...this.#row.querySelectorAll(".dot")].at(-1)?.classList.add("dropping");
  }
}
