// What to do: one card for each damaged part, dearest first. A press chooses a
// way, a second press takes it back; the differences are worked out on request.

import { button, el, list } from "../shared/dom.ts";
import { swap } from "../shared/swap.ts";
import { wayOf, withWay } from "../shared/thiscar/record.ts";

const BY = [
  ["customer", "The customer chooses"],
  ["shop", "The shop chooses"],
];

export class ToDoView {
  node = el("div", { class: "to-do" });
  #job;
  #host;
  #compared = new Map();
  #asked = 0;

  /** host: link, say(text), failed(reply) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
  }

  async show() {
    const asked = ++this.#asked;
    const { car } = this.#job;
    if (!this.node.hasChildNodes()) this.node.replaceChildren(el("p", {}, "Working it out."));
    let reply;
    try {
      reply = await this.#host.link.ask({ ask: "to_do", car });
    } catch {
      reply = { kind: "refused", text: "The sums stopped. Try once more." };
    }
    if (asked !== this.#asked) return;
    if (reply.kind !== "to_do") {
      this.node.replaceChildren(el("p", { class: "error" }, reply.text));
      return;
    }
    const cards = reply.cards ?? [];
    swap(
      this.node,
      cards.length === 0 && el("p", {}, "Nothing recorded asks for a decision yet."),
      cards.length > 0 && el("p", {}, reply.undecided_line),
      cards.length > 0 && this.#by(),
      cards.length > 0 &&
        el(
          "p",
          { class: "hint" },
          "The sums price every way that is allowed; which one is cut and which saved the customer chooses, and the shop may decline. Frame, sills, posts, floors and mounts are priced here, not approved: fitness for the road is for a competent inspector under local rules.",
        ),
      (reply.shared ?? []).map((text) => el("p", {}, text)),
      cards.map((card) => this.#card(card)),
    );
  }

  #by() {
    return el(
      "div",
      { class: "marks by", role: "group", "aria-label": "Who chooses" },
      BY.map(([id, text]) =>
        button(
          text,
          () => {
            this.#job.setWays({ by: id });
            this.show();
          },
          { class: "mark", "data-key": `by-${id}`, "aria-pressed": String(this.#job.ways.by === id) },
        ),
      ),
    );
  }

  #card(card) {
    const compared = this.#compared.get(card.on);
    const fresh = compared?.car === this.#job.car ? compared : null;
    const line = (id) => fresh?.reply.ways?.find((w) => w.id === id)?.line;
    return el(
      "section",
      { class: "card", "data-card": card.on, "aria-label": card.title },
      el("h2", {}, card.title),
      el("p", {}, card.covered_by ? `Already covered by ${card.covered_by}. ` : "", card.chosen_text),
      card.caution && el("p", { class: "caution" }, card.caution),
      el(
        "ul",
        { class: "ways" },
        (card.ways ?? []).map((way) =>
          el(
            "li",
            {},
            this.#way(card, way),
            [
              way.covers_text,
              ...(way.opens ?? []).map((o) => (typeof o === "string" ? `Opens ${o}` : o.text)),
            ]
              .filter(Boolean)
              .map((t) => el("p", { class: "way-more" }, t)),
            line(way.id) && el("p", { class: "way-more difference" }, line(way.id)),
          ),
        ),
      ),
      card.cannot_leave && el("p", { class: "hint" }, card.cannot_leave),
      (card.opened ?? []).map((o) => el("p", { class: "hint" }, typeof o === "string" ? o : o.text)),
      fresh?.reply.text && el("p", { class: "error" }, fresh.reply.text),
      fresh?.reply.how_sure && el("p", { class: "hint" }, fresh.reply.how_sure),
      button("Compare these on the same imagined cars", () => this.#compare(card.on), {
        class: "quiet",
        "data-key": `compare-${card.on}`,
      }),
    );
  }

  #way(card, way) {
    return button(
      [el("strong", {}, way.name), ` ${[way.sentence, way.price_text].filter(Boolean).join("; ")}`],
      () => this.#choose(card, way),
      {
        class: "mark way",
        "data-key": `${card.on}-${way.id}`,
        "data-way": way.id,
        "aria-pressed": String(card.chosen === way.id),
        disabled: way.allowed === false,
      },
    );
  }

  #choose(card, way) {
    const had = wayOf(this.#job.car, card.on)?.way === way.id;
    this.#job.act("todo", withWay(this.#job.car, card.on, had ? null : way.id, this.#job.ways.by), {
      at: card.on,
      said: way.name,
    });
    this.#host.say(`${card.title}: ${had ? "not decided" : way.name}`);
    this.show();
  }

  async #compare(on) {
    const { car } = this.#job;
    this.#host.say("Comparing.");
    try {
      const reply = await this.#host.link.ask({ ask: "compare_ways", car, on });
      this.#compared.set(on, { car, reply });
      this.#host.say(
        reply.kind === "compare_ways" ? list(reply.ways.map((w) => w.line)).textContent : reply.text,
      );
    } catch {
      this.#host.failed(null);
      return;
    }
    this.show();
  }
}
