// Suppose: one part is taken as sound or as rusted through, and the places that
// keep it company move. Nothing of it is recorded.

import { button, el, freshId } from "../shared/dom.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import { missing } from "./sums.ts";
import { rowsOf } from "./twoways.ts";

const CHOICES = [
  ["sound", "Sound"],
  ["rusted_through", "Rusted through"],
];
/** More lines than this nobody reads beside a car. */
const MOST = 4;

export class Suppose {
  id = "suppose";
  title = "Suppose";
  line = "One look tells about the places that share its water.";
  needs = null;
  node = el("div", { class: "suppose" });
  #host;
  #of = null;
  #on = null;
  #choice = null;
  #reply = null;
  #turn = 0;
  #select = el("select", {
    id: freshId("part"),
    class: "big",
    on: { change: () => this.#take(this.#select.value) },
  });
  #buttons = CHOICES.map(([id, text]) =>
    button(text, () => this.#ask(id), { class: "big", "data-suppose": id }),
  );
  #result = el("div", { class: "suppose-result" });
  #drawing = new Drawing({
    condition: (on) => this.#condition(on),
    tap: (on) => {
      if (this.#select.querySelector(`[value="${CSS.escape(on)}"]`)) this.#take(on);
    },
  });
  #picture = el("div", { class: "suppose-picture" }, this.#drawing.node);

  /** host: link, say(text), hand() giving {car, sheet} */
  constructor(host) {
    this.#host = host;
  }

  draw() {
    const { car, sheet } = this.#host.hand();
    if (this.#of === car) return;
    this.#of = car;
    this.#turn++;
    // What was read off the outside of a closed box can still turn out otherwise.
    const sure = (r) => r.condition && (!sheet.items[r.on]?.closed || r.stage === "opening_up");
    const known = new Set((car.survey ?? []).filter(sure).map((r) => r.on));
    const zones = sheet.zones
      .map((z) => [
        z,
        z.rows
          .flatMap((r) => r.lines.flatMap((l) => [l.left, l.right, l.whole]))
          .filter((on) => on && !known.has(on)),
      ])
      .filter(([, all]) => all.length);
    if (zones.length === 0) {
      this.node.replaceChildren(
        el(
          "p",
          { class: "tells" },
          "Every part of this car has been seen: there is nothing left to suppose.",
        ),
      );
      return;
    }
    this.#select.replaceChildren(
      ...zones.map(([z, all]) =>
        el(
          "optgroup",
          { label: z.name },
          all.map((on) => el("option", { value: on }, sheet.items[on].name)),
        ),
      ),
    );
    this.node.replaceChildren(
      el(
        "div",
        { class: "suppose-ask" },
        el("label", { for: this.#select.id }, "Suppose this part is"),
        this.#select,
        el("div", { class: "big-buttons" }, this.#buttons),
        known.size > 0 && el("p", { class: "hint" }, "Parts already seen in bare metal are left out."),
      ),
      el("div", { class: "two-sides" }, this.#result, this.#picture),
    );
    this.#outline(sheet);
    this.#take((zones.find(([z]) => z.id === "sill") ?? zones[0])[1][0]);
  }

  async #outline(sheet) {
    try {
      await this.#drawing.show(sheet.drawing, []);
    } catch {
      this.#picture.replaceChildren(
        el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."),
      );
      return;
    }
    const key = hatchingKey([
      { id: "rusted_through", name: "Supposed rusted through" },
      { id: "light_pitting", name: "Its odds move" },
    ]);
    key.lastChild.remove();
    this.#drawing.node
      .querySelector("figcaption")
      .replaceChildren(el("p", {}, "A part can be picked here too: it gets a heavy outline."), key);
    this.#drawing.outline(this.#on);
  }

  /** Another part: what was supposed of the one before is gone. */
  #take(on) {
    this.#on = on;
    this.#select.value = on;
    this.#turn++;
    this.#show(null, null);
    this.#result.replaceChildren(el("p", { class: "hint" }, "Say which, and see who keeps it company."));
  }

  async #ask(condition) {
    const turn = ++this.#turn;
    const { car } = this.#host.hand();
    this.#show(condition, null);
    this.#result.replaceChildren(el("p", { class: "working" }, "Working it out."));
    let reply;
    try {
      reply = await this.#host.link.ask({ ask: "suppose", car, on: this.#on, condition });
    } catch {
      reply = { kind: "refused" };
    }
    if (turn !== this.#turn) return;
    const gap = missing(reply, () => this.#ask(condition));
    if (gap) {
      this.#result.replaceChildren(reply.path === "on" ? this.#ruledOut(condition) : gap);
      return;
    }
    this.#show(condition, reply);
    this.#result.replaceChildren(...supposed(reply));
    this.#host.say(`${reply.compared} ${reply.rows.map((r) => `${r.label}: ${r.sentence}`).join(" ")}`);
  }

  #ruledOut(condition) {
    const said = condition === "sound" ? "sound" : "rusted through";
    return el(
      "p",
      { class: "error" },
      `What is recorded of this car rules that out: ${this.#select.selectedOptions[0].textContent} cannot be ${said}.`,
    );
  }

  #show(choice, reply) {
    this.#choice = choice;
    this.#reply = reply;
    for (const node of this.#buttons)
      node.setAttribute("aria-pressed", String(node.dataset.suppose === choice));
    this.#drawing.refresh();
    this.#drawing.outline(this.#on);
  }

  #condition(on) {
    if (on === this.#on) return this.#choice === "rusted_through" ? "rusted_through" : null;
    return movedOf(this.#reply).some((n) => n.on === on) ? "light_pitting" : null;
  }
}

/** Neighbours whose odds still differ in words. */
const movedOf = (reply) =>
  (reply?.neighbours ?? []).filter((n) => n.before_text !== n.after_text).slice(0, MOST);

function supposed(reply) {
  const moved = movedOf(reply);
  const cell = (text) => el("td", {}, text);
  return [
    moved.length === 0
      ? el("p", { class: "tells" }, "No other place moves by as much as one car in ten.")
      : el(
          "table",
          { class: "neighbours" },
          el("caption", {}, "Cars with it rusted through or gone"),
          el(
            "thead",
            {},
            el(
              "tr",
              {},
              ["Place", "Now", "If so"].map((h) => el("th", { scope: "col" }, h)),
            ),
          ),
          el(
            "tbody",
            {},
            moved.map((n) =>
              el(
                "tr",
                {},
                el(
                  "th",
                  { scope: "row" },
                  n.name,
                  n.same_water && el("span", { class: "hint same-water" }, " (shares its water)"),
                ),
                cell(n.before_text),
                cell(n.after_text),
              ),
            ),
          ),
        ),
    rowsOf(reply),
    el("p", { class: "tells" }, reply.compared),
  ];
}
