// Before and after: one row of dots for each stage on one axis, what moved it in
// words, and what the stages to come are worth. No figure is made here.

import { button, el, list } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { Overtaken } from "../shared/engineclient.ts";
import { Spent } from "./spent.ts";

export class StagesView {
  node = el("div", { class: "before-after" });
  #job;
  #host;
  #rows = el("div", {});
  #worth = el("div", { class: "worth" });
  #spent;
  #axis = 0;

  /** host: link, failed(reply) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
    this.#spent = new Spent(job, host);
    this.node.append(this.#rows, this.#spent.node, this.#worth);
  }

  async show() {
    const { car } = this.#job;
    this.#rows.replaceChildren(el("p", {}, "Working it out."));
    this.#worth.replaceChildren();
    const request = { ask: "before_after", car, ...(this.#axis ? { axis_at_least: this.#axis } : {}) };
    try {
      const last = await this.#host.link.refine(request, (reply) => this.#took(reply));
      this.#took(last);
      if (last.kind === "before_after") {
        await this.#spent.show();
        await this.#value(car);
      }
    } catch (error) {
      if (!(error instanceof Overtaken)) this.#host.failed(null);
    }
  }

  #took(reply) {
    this.node.dataset.state = reply.state ?? reply.kind;
    if (reply.kind !== "before_after") {
      this.#rows.replaceChildren(
        el("p", { class: "error" }, reply.text),
        el("p", {}, "No figure is shown until this is put right."),
      );
      return;
    }
    const rough = reply.state === "rough" || reply.state === "refining";
    const drawn = reply.rows.filter((row) => row.done && row.dots?.length);
    if (drawn.length === 0) return;
    this.#axis = Math.max(this.#axis, reply.axis.max_minor);
    const levels = levelsOf(drawn);
    const newest = drawn.at(-1);
    const lists = [
      ["Worse than usual", reply.worse],
      ["Better than usual", reply.better],
    ].filter(([, l]) => l?.length);
    this.#rows.replaceChildren(
      ...[
        el("p", { class: "rough-note" }, rough ? "About: still being worked out." : "\u00a0"),
        reply.headline?.length > 0 &&
          el(
            "div",
            { class: "sentence" },
            reply.headline.map((t) => el("p", {}, t)),
          ),
        el("p", { class: "caveat" }, "A cost range: not an estimate, not a quotation, not a ceiling."),
        el(
          "div",
          { class: "stage-rows" },
          reply.rows.map((row) => stageRow(row, row === newest, reply.axis, levels)),
        ),
        el("p", { class: "hint" }, "Each dot is one car in twenty: 2 below, 16 between, 2 above."),
        ...lists.map(([name, l]) => el("section", {}, el("h2", {}, name), list(l))),
        reply.unseen_line && el("p", {}, reply.unseen_line),
        reply.items?.length > 0 && moved(reply.items),
        reply.not_a_limit && el("p", { class: "hint" }, reply.not_a_limit),
      ].filter(Boolean),
    );
  }

  async #value(car) {
    const stop = button("Stop", () => this.#host.link.stop(), { class: "quiet" });
    const line = el("p", {});
    const fill = (reply) => {
      if (reply.kind !== "worth") {
        this.#worth.replaceChildren(el("p", { class: "error" }, reply.text));
        return;
      }
      line.textContent = reply.progress_line;
      const rows = reply.stages ?? [];
      this.#worth.replaceChildren(
        ...[
          el("h2", {}, "What each stage is worth"),
          reply.now_line && el("p", {}, reply.now_line),
          rows.length > 0 && list(rows.map((s) => s.line)),
          reply.state === "refining" && el("div", {}, line, stop),
          looks(reply),
        ].filter(Boolean),
      );
    };
    const last = await this.#host.link.refine({ ask: "worth", car, for: "shop" }, fill);
    fill(last);
    this.node.dataset.worth = last.state ?? last.kind;
  }
}

function stageRow(row, newest, axis, levels) {
  const head = [row.name, row.date_text].filter(Boolean).join(", ");
  if (!row.dots?.length)
    return el(
      "div",
      { class: "stage-row" },
      el("h3", {}, head),
      el("p", {}, row.expected_line || "Not done."),
    );
  return el(
    "div",
    { class: newest ? "stage-row is-newest" : "stage-row is-older" },
    el("h3", {}, head),
    dotRow({ ...row, dots_text: row.sentence }, axis, levels),
    el("p", {}, row.width_text),
    row.wider_line && el("p", {}, row.wider_line),
  );
}

function moved(items) {
  return el(
    "details",
    { class: "moved-items", "data-paper": true },
    el("summary", {}, "Part by part"),
    el(
      "table",
      {},
      el("caption", { class: "visually-hidden" }, "Parts whose odds moved most"),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          ["Part", "Before", "Now"].map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
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

function looks(reply) {
  if (!reply.looks?.length) return null;
  return el(
    "section",
    {},
    el("h2", {}, "Looks that would help most"),
    reply.looks_note && el("p", { class: "hint" }, reply.looks_note),
    el(
      "ul",
      { class: "worth-looks" },
      reply.looks.map((l) =>
        el(
          "li",
          {},
          el("p", {}, el("strong", {}, l.text)),
          [l.place_line, l.whole_line].filter(Boolean).map((t) => el("p", {}, t)),
          l.caution && el("p", { class: "caution" }, l.caution),
        ),
      ),
    ),
  );
}
