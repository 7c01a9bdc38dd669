// What finished stages of the work came to, against their ranges: the running total.

import { el, freshId, list } from "../shared/dom.ts";
import { withMember } from "../shared/thiscar/record.ts";

const STAGES = ["strip_and_survey", "structure", "outer_metal", "paint", "assembly"];

export class Spent {
  node = el("section", { class: "spent", "aria-labelledby": "spent-title" });
  #job;
  #host;
  #said = el("div", { role: "status" });

  /** host: link */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
  }

  async show() {
    let reply;
    try {
      reply = await this.#host.link.ask({ ask: "plan", car: this.#job.car });
    } catch {
      return;
    }
    if (reply.kind !== "plan") {
      this.#fault(reply);
      return;
    }
    if (!this.node.hasChildNodes()) {
      this.node.append(
        el("h2", { id: "spent-title" }, "The job in stages, and what they came to"),
        el(
          "p",
          { class: "hint" },
          "Write what a stage came to when it is finished, the first ones first. Tax as the rates have it.",
        ),
        el(
          "div",
          { class: "hour-fields" },
          reply.stages.map((s, k) => this.#field(s, STAGES[k])),
        ),
        this.#said,
      );
    }
    this.#said.replaceChildren(
      ...[
        reply.so_far_line && el("p", {}, el("strong", {}, reply.so_far_line)),
        el(
          "ol",
          { class: "plan-stages" },
          reply.stages.map((s) =>
            el(
              "li",
              {},
              el("strong", {}, `${s.name}: ${s.money_text}`),
              list(
                [s.actual_line, `${s.hours_text}, ${s.weeks_text}.`, s.by_then_text, s.stop_line].filter(
                  Boolean,
                ),
              ),
            ),
          ),
        ),
        el("p", { class: "hint" }, reply.note),
      ].filter(Boolean),
    );
  }

  #fault(reply) {
    this.#said.replaceChildren(el("p", { class: "error" }, reply.text));
  }

  #field(stage, id) {
    const input = el("input", {
      id: freshId("spent"),
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      maxlength: 14,
      "data-spent": id,
      on: { change: () => this.#put(id, input.value.trim()) },
    });
    input.value = this.#job.car.came_to?.[id] ?? "";
    return el("div", { class: "typed" }, el("label", { for: input.id }, stage.name), input);
  }

  /** Blank takes the figure out. What the engine refuses is not taken in. */
  async #put(id, text) {
    const { [id]: _, ...rest } = this.#job.car.came_to ?? {};
    const car = withMember(this.#job.car, "came_to", text === "" ? rest : { ...rest, [id]: text });
    const reply = await this.#host.link.ask({ ask: "plan", car });
    if (reply.kind !== "plan") {
      this.#fault(reply);
      return;
    }
    this.#job.act("spent", car);
    await this.show();
  }
}
