// What makes the range wide and what could make it worse, worked out when it is
// asked for: it takes the engine some seconds, in which nothing else is refined.

import { el, list } from "./dom.js";
import { Overtaken } from "./engine-link.js";

export class WideBox {
  node;
  #body = el("div", {});
  #asked = false;
  #host;

  /** host: link, car */
  constructor(host) {
    this.#host = host;
    this.node = el("details", { class: "wide-box", on: { toggle: () => { if (this.node.open && !this.#asked) this.#ask(); } } },
      el("summary", {}, "What makes it wide, and what could make it worse"), this.#body);
  }

  async #ask() {
    this.#asked = true;
    const { link, car } = this.#host;
    this.#body.replaceChildren(el("p", { role: "status" }, "Taking the width apart."));
    try {
      const reply = await link.refine({ ask: "wide", car }, (part) => { this.#body.firstChild.textContent = part.progress_text ?? part.text; });
      if (reply.kind !== "wide") { this.#body.replaceChildren(el("p", {}, reply.text)); return; }
      this.#show(reply);
    } catch (error) {
      this.#asked = false;
      this.#body.replaceChildren(el("p", {}, error instanceof Overtaken ? "Put aside for a newer answer. Fold this and open it again." : "The sums did not answer. The range above stands."));
    }
  }

  #show(reply) {
    this.node.dataset.state = reply.state;
    this.#body.replaceChildren(
      el("ol", { class: "wide-shares" }, reply.shares.map((s) => el("li", {}, el("strong", {}, `${s.share_text} ${s.name}. `), s.why))),
      el("p", {}, `${reply.rest_text}.`), el("p", { class: "hint" }, reply.shares_note),
      el("h3", {}, "What could make it worse"),
      el("ol", {}, reply.worse.map((p) => el("li", {}, el("strong", {}, p.name), list([p.likely_line, p.cost_line, p.find_line])))),
      el("p", { class: "hint" }, reply.worse_note));
  }
}
