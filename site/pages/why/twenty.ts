// Twenty cars: one press, one imagined car. Its drawing is hatched where it is
// rusted through, its price is said, and its dot drops on the axis.

import { button, el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import { amount } from "./bars.ts";
import { missing } from "./sums.ts";

const HOLED = "rusted_through";

export class Twenty {
  id = "twenty";
  title = "Twenty cars";
  line = "Same kind of car, same answers. These are twenty ways it could turn out.";
  needs = "twenty";
  node = el("div", { class: "twenty" });
  #count = 0;
  #of = null;
  #holed = new Set();
  #wait = el("div", {});
  #total = el("p", { class: "total" });
  #found = el("p", { class: "found" });
  #row = el("div", { class: "twenty-row" });
  #next = button("Next car", () => this.#step(), { class: "big", "data-key": "next-car" });
  #all = button("Show all twenty", () => this.#show(20), { class: "big quiet", "data-key": "all" });
  #note = el("p", { class: "hint" });
  #picture = el("div", { class: "twenty-picture" });
  #drawing = new Drawing({ condition: (on) => (this.#holed.has(on) ? HOLED : null), tap: () => {} });
  #host;

  /** host: say(text), again(name) */
  constructor(host) {
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

  get focus() {
    return this.#next;
  }

  /** Space stands for the next car, until there is none. */
  act() {
    if (!this.#of || this.#count >= 20) return false;
    this.#show(this.#count + 1);
    return true;
  }

  #step() {
    this.#show(this.#count >= 20 ? 0 : this.#count + 1);
  }

  draw(replies) {
    const reply = replies.get("twenty");
    if (reply === this.#of && reply) return;
    const gap = missing(reply, () => this.#host.again("twenty"));
    this.#wait.replaceChildren(...[gap].filter(Boolean));
    this.#of = gap ? null : reply;
    for (const box of [this.#all, this.#total, this.#found, this.#row, this.#note, this.#picture])
      box.hidden = Boolean(gap);
    if (gap) return;
    this.#note.textContent = reply.note;
    this.#outline(reply.drawing);
    this.#show(0);
  }

  async #outline(body) {
    try {
      await this.#drawing.show(body, []);
    } catch {
      this.#picture.replaceChildren(
        el("p", { class: "hint" }, "The drawing could not be loaded; the words say the same."),
      );
      return;
    }
    const key = hatchingKey([{ id: HOLED, name: "Rusted through or gone" }]);
    key.lastChild.remove();
    this.#drawing.node
      .querySelector("figcaption")
      .replaceChildren(el("p", {}, "The car opened out flat, nose up; its left is on your left."), key);
  }

  #show(count) {
    if (!this.#of) return;
    const { cars, axis } = this.#of;
    const one = count > this.#count && count - this.#count === 1;
    this.#count = count;
    const car = cars[count - 1] ?? null;
    const prices = cars.map((c) => c.total_text).sort((a, b) => amount(a) - amount(b));
    const end = `The cheapest of the twenty: ${prices[0]}. The dearest: ${prices.at(-1)}.`;
    this.#holed = new Set(car?.holed ?? []);
    this.#drawing.refresh();
    this.#total.textContent = !car
      ? "Each press imagines one."
      : count === 20
        ? end
        : `Car ${count}: ${car.total_text}`;
    this.#found.textContent = !car
      ? "\u00a0"
      : count === 20
        ? `Car 20: ${car.total_text}. ${car.found_text}`
        : car.found_text;
    const dots = cars.slice(0, count).map((c) => ({ at: c.at, stack: c.stack, inside: true }));
    const text =
      count === 0
        ? "No car yet."
        : count === 1
          ? "One dot, one car."
          : `${count} of the twenty cars, a dot for each.`;
    this.#row.replaceChildren(dotRow({ dots, dots_text: text }, axis, levelsOf([{ dots: cars }])));
    if (one) [...this.#row.querySelectorAll(".dot")].at(-1).classList.add("dropping");
    this.#next.textContent = count === 20 ? "Begin the twenty again" : "Next car";
    this.#all.hidden = count === 20;
    // The button that showed all is gone now: the focus must not go with it.
    if (document.activeElement === document.body && this.node.isConnected)
      this.#next.focus({ preventScroll: true });
    if (car) this.#host.say(count === 20 ? end : `Car ${count} of 20: ${car.total_text}. ${car.found_text}`);
  }
}
