// What finished stages of the work cost, against their ranges: the running total.

import type { PaidStage } from "../shared/carfile.ts";
import { el, freshId, list } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { PlanReply, PlanStage } from "../shared/replies.ts";
import { withMember } from "../shared/thiscar/carmembers.ts";
import type { OpenCar } from "./opencar.ts";

export interface SpentHost {
  engine: EngineClient;
}

export class Spent {
  node = el("section", { class: "spent", "aria-labelledby": "spent-title" });
  #openCar: OpenCar;
  #engine: EngineClient;
  #said = el("div", { role: "status" });

  constructor(openCar: OpenCar, { engine }: SpentHost) {
    this.#openCar = openCar;
    this.#engine = engine;
  }

  async show(): Promise<void> {
    if (!this.#openCar.hasCar) return;
    const reply = await this.#engine.ask({ ask: "plan", car: this.#openCar.car }).catch(() => null);
    if (!reply || !this.#openCar.hasCar) return;
    if (reply.kind !== "plan") {
      this.#fault(reply.text);
      return;
    }
    if (!this.node.hasChildNodes()) this.#begin(reply);
    this.#said.replaceChildren(
      ...(reply.so_far_line ? [el("p", {}, el("strong", {}, reply.so_far_line))] : []),
      el("ol", { class: "plan-stages" }, reply.stages.map(stageItem)),
      ...(reply.promise_end_line ? [el("p", {}, reply.promise_end_line)] : []),
      el("p", { class: "hint" }, reply.note),
    );
  }

  #begin(plan: PlanReply): void {
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
        plan.stages.map((stage) => this.#field(stage)),
      ),
      this.#said,
    );
  }

  #fault(text: string): void {
    this.#said.replaceChildren(el("p", { class: "error" }, text));
  }

  #field({ id, name }: PlanStage): HTMLElement {
    const input: HTMLInputElement = el("input", {
      id: freshId("spent"),
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      maxlength: 14,
      "data-spent": id,
      on: { change: () => this.#put(id, input.value.trim()) },
    });
    input.value = String(this.#openCar.car.came_to?.[id] ?? "");
    return el("div", { class: "typed" }, el("label", { for: input.id }, name), input);
  }

  /** Writes the amount of a stage; blank removes it. What the engine refuses is not
   *  recorded. */
  async #put(id: PaidStage, text: string): Promise<void> {
    const { [id]: _, ...rest } = this.#openCar.car.came_to ?? {};
    const car = withMember(this.#openCar.car, "came_to", text === "" ? rest : { ...rest, [id]: text });
    const reply = await this.#engine.ask({ ask: "plan", car });
    if (reply.kind !== "plan") {
      this.#fault(reply.text);
      return;
    }
    this.#openCar.act("spent", car);
    await this.show();
  }
}

function stageItem(s: PlanStage): HTMLElement {
  return el(
    "li",
    {},
    el("strong", {}, `${s.name}: ${s.money_text}`),
    list([s.actual_line, `${s.hours_text}, ${s.weeks_text}.`, s.by_then_text, s.stop_line].filter(Boolean)),
  );
}
