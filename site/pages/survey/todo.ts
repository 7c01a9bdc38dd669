// What to do: a card for each damaged part, the dearest first. A press chooses a way, and a
// second press undoes that. The differences are worked out on request.

import type { CarFile, Teller, Way } from "../shared/carfile.ts";
import { button, el, list } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { DangersReply, ToDoCard, ToDoWay } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { swap } from "../shared/swap.ts";
import { wayOf, withWay } from "../shared/thiscar/carmembers.ts";
import type { Failure } from "../shared/thiscar/gather.ts";
import { askDangers, dangersFold } from "./dangers.ts";
import type { OpenCar } from "./opencar.ts";

export interface ToDoHost {
  engine: EngineClient;
  say(text: string): void;
  /** The engine failed; null when it did not answer. */
  failed(reply: Failure | null): void;
}

/** A comparison of the ways of a part, and the car that it is about. */
interface Comparison {
  car: CarFile;
  reply: ReplyTo<"compare_ways">;
}

const BY: readonly (readonly [Teller, string])[] = [
  ["customer", "The customer chooses"],
  ["shop", "The shop chooses"],
];

export class ToDoView {
  node = el("div", { class: "to-do" });
  #openCar: OpenCar;
  #host: ToDoHost;
  #compared = new Map<string, Comparison>();
  #asked = 0;

  constructor(openCar: OpenCar, host: ToDoHost) {
    this.#openCar = openCar;
    this.#host = host;
  }

  async show(): Promise<void> {
    const asked = ++this.#asked;
    const { car } = this.#openCar;
    if (!this.node.hasChildNodes()) this.node.replaceChildren(el("p", {}, "Working it out."));
    const reply = await this.#host.engine.ask({ ask: "to_do", car }).catch(() => null);
    if (asked !== this.#asked) return;
    if (reply?.kind !== "to_do") {
      const text = reply?.text ?? "The sums stopped. Try once more.";
      this.node.replaceChildren(el("p", { class: "error" }, text));
      return;
    }
    const dangers = await askDangers(this.#openCar, this.#host.engine);
    if (asked !== this.#asked) return;
    const { cards } = reply;
    const listed = dangers.kind === "dangers" ? dangers : null;
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
      reply.shared.map((text) => el("p", {}, text)),
      cards.map((card) => this.#card(card, listed)),
      listed && wholeCar(listed),
      dangers.kind === "failed" && el("p", { class: "error" }, dangers.text),
    );
  }

  #by(): HTMLElement {
    return el(
      "div",
      { class: "marks by", role: "group", "aria-label": "Who chooses" },
      BY.map(([id, text]) =>
        button(
          text,
          () => {
            this.#openCar.change({ by: id });
            this.show();
          },
          { class: "mark", "data-key": `by-${id}`, "aria-pressed": String(this.#openCar.settings.by === id) },
        ),
      ),
    );
  }

  #card(card: ToDoCard, dangers: DangersReply | null): HTMLElement {
    const compared = this.#compared.get(card.on);
    const fresh = compared && this.#openCar.is(compared.car) ? compared.reply : null;
    const ways = fresh?.kind === "compare_ways" ? fresh : null;
    const line = (id: Way) => ways?.ways.find((w) => w.id === id)?.line;
    return el(
      "section",
      { class: "card", "data-card": card.on, "aria-label": card.title },
      el("h2", {}, card.title),
      el("p", {}, card.covered_by ? `Already covered by ${card.covered_by}. ` : "", card.chosen_text),
      card.caution && el("p", { class: "caution" }, card.caution),
      el(
        "ul",
        { class: "ways" },
        card.ways.map((way) =>
          el(
            "li",
            {},
            this.#way(card, way),
            [way.covers_text, ...way.opens.map((box) => `Opens ${box}`)]
              .filter(Boolean)
              .map((t) => el("p", { class: "way-more" }, t)),
            line(way.id) && el("p", { class: "way-more difference" }, line(way.id)),
          ),
        ),
      ),
      dangers &&
        dangersFold(
          dangers.to_do.filter((d) => d.on === card.on),
          dangers.closing,
          card.on,
        ),
      card.cannot_leave && el("p", { class: "hint" }, card.cannot_leave),
      card.opened.map((text) => el("p", { class: "hint" }, text)),
      fresh && fresh.kind !== "compare_ways" && el("p", { class: "error" }, fresh.text),
      ways?.how_sure && el("p", { class: "hint" }, ways.how_sure),
      button("Compare these on the same simulated cars", () => this.#compare(card.on), {
        class: "quiet",
        "data-key": `compare-${card.on}`,
      }),
    );
  }

  #way(card: ToDoCard, way: ToDoWay): HTMLButtonElement {
    return button(
      [el("strong", {}, way.name), ` ${[way.sentence, way.price_text].filter(Boolean).join("; ")}`],
      () => this.#choose(card, way),
      {
        class: "mark way",
        "data-key": `${card.on}-${way.id}`,
        "data-way": way.id,
        "aria-pressed": String(card.chosen === way.id),
        disabled: !way.allowed,
      },
    );
  }

  #choose(card: ToDoCard, way: ToDoWay): void {
    const had = wayOf(this.#openCar.car, card.on)?.way === way.id;
    this.#openCar.act(
      "todo",
      withWay(this.#openCar.car, card.on, had ? null : way.id, this.#openCar.settings.by),
      {
        at: card.on,
        said: way.name,
      },
    );
    this.#host.say(`${card.title}: ${had ? "not decided" : way.name}`);
    this.show();
  }

  async #compare(on: string): Promise<void> {
    const { car } = this.#openCar;
    this.#host.say("Comparing.");
    try {
      const reply = await this.#host.engine.ask({ ask: "compare_ways", car, on });
      this.#compared.set(on, { car, reply });
      this.#host.say(
        reply.kind === "compare_ways" ? list(reply.ways.map((w) => w.line)).textContent : reply.text,
      );
    } catch {
      this.#host.failed(null);
      return;
    }
    if (this.#openCar.hasCar) this.show();
  }
}

/** The dangers of what is done for the car as a whole, and of what is likely on parts that
 *  nobody has recorded. */
function wholeCar({ to_do, closing }: DangersReply): HTMLElement | null {
  const fold = dangersFold(
    to_do.filter((d) => d.on === ""),
    closing,
    "whole-car",
  );
  return fold && el("section", { "aria-label": "Dangers of the rest of the work" }, fold);
}
