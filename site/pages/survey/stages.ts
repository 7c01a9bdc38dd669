// Before and after: a row of dots for each stage on one axis, what moved the range in words,
// and what the stages to come are worth. No figure is made here.

import type { CarFile } from "../shared/carfile.ts";
import { button, type Child, el, list } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { type EngineClient, Overtaken } from "../shared/engineclient.ts";
import type {
  Axis,
  BeforeAfterReply,
  LookWorth,
  MovedItem,
  StageRow,
  WorthReply,
} from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { type Failure, isRough } from "../shared/thiscar/gather.ts";
import { columnHeads } from "../shared/thiscar/letterparts.ts";
import { drawnRows, isDrawn, movedLists } from "../shared/thiscar/stagerows.ts";
import type { OpenCar } from "./opencar.ts";
import { Spent } from "./spent.ts";

export interface StagesHost {
  engine: EngineClient;
  /** The engine failed; null when it did not answer. */
  failed(reply: Failure | null): void;
}

export class StagesView {
  node = el("div", { class: "before-after" });
  #openCar: OpenCar;
  #host: StagesHost;
  #rows = el("div", {});
  #worth = el("div", { class: "worth" });
  #spent: Spent;
  #axis = 0;

  constructor(openCar: OpenCar, host: StagesHost) {
    this.#openCar = openCar;
    this.#host = host;
    this.#spent = new Spent(openCar, host);
    this.node.append(this.#rows, this.#spent.node, this.#worth);
  }

  async show(): Promise<void> {
    const { car } = this.#openCar;
    const { engine } = this.#host;
    this.#rows.replaceChildren(el("p", {}, "Working it out."));
    this.#worth.replaceChildren();
    const axis = this.#axis ? { axis_at_least: this.#axis } : {};
    try {
      const last = await engine.refine({ ask: "before_after", car, ...axis }, (reply) => this.#took(reply));
      this.#took(last);
      if (last.kind === "before_after") {
        await this.#spent.show();
        await this.#value(car);
      }
    } catch (error) {
      if (!(error instanceof Overtaken)) this.#host.failed(null);
    }
  }

  #took(reply: ReplyTo<"before_after">): void {
    if (reply.kind !== "before_after") {
      this.node.dataset.state = reply.kind;
      this.#rows.replaceChildren(
        el("p", { class: "error" }, reply.text),
        el("p", {}, "No figure is shown until this is put right."),
      );
      return;
    }
    this.node.dataset.state = reply.state;
    const drawn = drawnRows(reply);
    const newest = drawn.at(-1);
    if (!newest) return;
    this.#axis = Math.max(this.#axis, reply.axis.max_minor);
    const levels = levelsOf(drawn);
    const parts = [
      el("p", { class: "rough-note" }, isRough(reply) ? "About: still being worked out." : "\u00a0"),
      headline(reply),
      el(
        "p",
        { class: "caveat" },
        "This is a cost range. It is not an estimate, not a quotation and not a ceiling.",
      ),
      el(
        "div",
        { class: "stage-rows" },
        reply.rows.map((row) => stageRow(row, row === newest, reply.axis, levels)),
      ),
      el(
        "p",
        { class: "hint" },
        "Each dot stands for one car in twenty: 2 below the range, 16 inside it, 2 above.",
      ),
      ...movedLists(reply).map(({ name, lines }) => el("section", {}, el("h2", {}, name), list(lines))),
      reply.unseen_line && el("p", {}, reply.unseen_line),
      reply.other_figures_line && el("p", {}, reply.other_figures_line),
      reply.items.length > 0 && moved(reply.items),
      reply.not_a_limit && el("p", { class: "hint" }, reply.not_a_limit),
    ];
    this.#rows.replaceChildren(...parts.filter(isNode));
  }

  /** What the stages to come and the checks are worth. */
  async #value(car: CarFile): Promise<void> {
    const stop = button("Stop", () => this.#host.engine.stop(), { class: "quiet" });
    const line = el("p", {});
    const fill = (reply: ReplyTo<"worth">) => {
      if (reply.kind !== "worth") {
        this.#worth.replaceChildren(el("p", { class: "error" }, reply.text));
        return;
      }
      line.textContent = reply.progress_line;
      const parts = [
        el("h2", {}, "What each stage is worth"),
        reply.now_line && el("p", {}, reply.now_line),
        reply.stages.length > 0 && list(reply.stages.map((s) => s.line)),
        reply.state === "refining" && el("div", {}, line, stop),
        checks(reply),
      ];
      this.#worth.replaceChildren(...parts.filter(isNode));
    };
    const last = await this.#host.engine.refine({ ask: "worth", car, for: "shop" }, fill);
    fill(last);
    this.node.dataset.worth = last.kind === "worth" ? last.state : last.kind;
  }
}

const isNode = (child: Child): child is HTMLElement => child instanceof HTMLElement;

const headline = ({ headline: lines }: BeforeAfterReply) =>
  lines.length > 0 &&
  el(
    "div",
    { class: "sentence" },
    lines.map((t) => el("p", {}, t)),
  );

function stageRow(row: StageRow, newest: boolean, axis: Axis, levels: number): HTMLElement {
  const head = [row.name, row.date_text].filter(Boolean).join(", ");
  if (!isDrawn(row)) return el("div", { class: "stage-row" }, el("h3", {}, head), el("p", {}, "Not done."));
  return el(
    "div",
    { class: newest ? "stage-row is-newest" : "stage-row is-older" },
    el("h3", {}, head),
    dotRow({ dots: row.dots, dots_text: row.sentence }, axis, levels),
    el("p", {}, row.width_text),
    row.wider_line && el("p", {}, row.wider_line),
  );
}

function moved(items: readonly MovedItem[]): HTMLElement {
  return el(
    "details",
    { class: "moved-items", "data-paper": true },
    el("summary", {}, "Part by part"),
    el(
      "table",
      {},
      el("caption", { class: "visually-hidden" }, "Parts whose odds moved most"),
      columnHeads(["Part", "Before", "Now"]),
      el(
        "tbody",
        {},
        items.map((i) =>
          el(
            "tr",
            {},
            el("th", { scope: "row" }, i.name),
            el("td", {}, i.before_text),
            el("td", {}, i.after_text),
          ),
        ),
      ),
    ),
    el("p", { class: "hint" }, "Cars that have it rusted through or gone."),
  );
}

/** The checks that would make the range narrowest. */
function checks(reply: WorthReply): HTMLElement | null {
  if (reply.looks.length === 0) return null;
  return el(
    "section",
    {},
    el("h2", {}, "Looks that would help most"),
    reply.looks_note && el("p", { class: "hint" }, reply.looks_note),
    el("ul", { class: "worth-looks" }, reply.looks.map(checkItem)),
  );
}

function checkItem(l: LookWorth): HTMLElement {
  return el(
    "li",
    {},
    el("p", {}, el("strong", {}, l.text)),
    [l.place_line, l.whole_line].filter(Boolean).map((t) => el("p", {}, t)),
    l.caution && el("p", { class: "caution" }, l.caution),
  );
}
