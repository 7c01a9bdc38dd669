// What the jobs teach, figure by figure. Nothing is used unless it is ticked, and
// a ticked figure stands in a rates file only, until that is on the site.

import { button, el } from "../shared/dom.ts";
import { saveFile } from "../shared/files.ts";
import { today } from "../shared/linkcontent.ts";
import { tick } from "./fields.ts";
import { showEffect } from "./effects.ts";

/** The learnt figures that a rates file uses already, by the ids of the lines. */
function figuresIn(rates) {
  const own = rates.own_figures;
  if (!own) return new Set();
  return new Set([
    ...(own.rust ?? []).map((r) => `rust.${r.group}`),
    ...Object.keys(own.hours ?? {}).map((trade) => `hours.${trade}`),
    ...(own.spread ? ["spread"] : []),
  ]);
}

export class Learning {
  node = el("section", { id: "learning", "aria-labelledby": "learning-title" });
  #host;
  #reply = null;
  #use = new Set();
  #publish = false;
  #effect = el("div", { class: "effect-box" });
  #said = el("div", { class: "adopt-said", role: "status" });
  #ticked = false;
  #inUse;

  /** host: link, ratesText (of the site), code (its check code) */
  constructor(host) {
    this.#host = host;
    this.#inUse = figuresIn(JSON.parse(host.ratesText));
  }

  /** Ticks stay while the figure is still offered. What the site's rates use
   *  already starts ticked, since leaving it out would take it out. */
  show(reply, fresh) {
    const ofSite = JSON.parse(this.#host.ratesText);
    if (!this.#ticked) {
      this.#use = new Set(this.#inUse);
      this.#publish = Boolean(ofSite.record);
      this.#ticked = true;
    }
    const offered = new Set(reply.learning.lines.filter((l) => l.offered).map((l) => l.id));
    this.#use = new Set([...this.#use].filter((id) => offered.has(id)));
    this.#publish &&= reply.record !== null;
    this.#reply = reply;
    this.#effect.replaceChildren();
    this.#said.replaceChildren();
    this.#draw(fresh);
  }

  clear() {
    this.node.replaceChildren();
    this.#reply = null;
    this.#use.clear();
    this.#publish = false;
    this.#ticked = false;
  }

  #draw(fresh) {
    const { learning, record, invented } = this.#reply;
    this.node.replaceChildren(
      el("h2", { id: "learning-title", tabindex: "-1" }, "What the jobs teach"),
      el("p", {}, learning.compared),
      invented
        ? el(
            "p",
            { class: "caution" },
            "These jobs are invented, and so is what they teach. Do not put it on a real shop's site.",
          )
        : "",
      learning.lines.length > 0
        ? el(
            "ul",
            { class: "taught" },
            learning.lines.map((l) => this.#line(l, fresh)),
          )
        : el(
            "p",
            {},
            "Jobs teach something once their car's file is with them: entered figures alone do not.",
          ),
      el("p", { class: "hint" }, learning.note),
      el(
        "div",
        { class: "record-out no-paper" },
        record !== null
          ? tick(
              "Show how our ranges came out on the customer's page",
              this.#publish,
              (on) => {
                this.#publish = on;
                this.#changed();
              },
              { "data-tick": "record", disabled: !fresh },
            )
          : el(
              "p",
              {},
              "How the ranges came out can be published on the customer's page from 10 scored jobs on.",
            ),
      ),
      fresh
        ? this.#acts()
        : el("p", { class: "from-before" }, "This can be used once the jobs are worked out anew."),
    );
  }

  #line(l, fresh) {
    const inUse = `in use ${l.in_use_text}, ${this.#inUse.has(l.id) ? "learnt before" : "the starting figure"}`;
    return el(
      "li",
      { class: "taught-line" },
      el("h3", {}, l.name),
      el("p", {}, l.text),
      el(
        "p",
        { class: "taught-figures" },
        `${l.jobs_text} · ${l.share_text} · ${inUse}`,
        l.offered && [" · offered ", el("strong", {}, l.factor_text)],
      ),
      l.offered
        ? el(
            "div",
            { class: "no-paper" },
            tick(
              ["Use it", el("span", { class: "visually-hidden" }, `: ${l.name}, ${l.factor_text}`)],
              this.#use.has(l.id),
              (on) => {
                if (on) this.#use.add(l.id);
                else this.#use.delete(l.id);
                this.#changed();
              },
              { "data-tick": l.id, disabled: !fresh },
            ),
          )
        : el("p", { class: "hint" }, "Too few jobs to offer a figure."),
    );
  }

  #changed() {
    this.#effect.replaceChildren();
    this.#said.replaceChildren();
    this.#drawState();
  }

  #acts() {
    const box = el(
      "div",
      { class: "no-paper" },
      el("p", { class: "chosen" }),
      el(
        "div",
        { class: "with-buttons" },
        button("See what it does", () => this.#see(), { "data-key": "effect" }),
        button("Save the rates with these figures", () => this.#save(), { "data-key": "save-rates" }),
        button("Take out again", () => this.#takeOut(), { "data-key": "take-out" }),
      ),
      this.#said,
      this.#effect,
    );
    queueMicrotask(() => this.#drawState());
    return box;
  }

  #drawState() {
    const n = this.#use.size;
    const line = this.node.querySelector(".chosen");
    const dropped = [...this.#inUse].some((id) => !this.#use.has(id));
    if (line)
      line.textContent = `${n === 0 ? "No figure is ticked" : n === 1 ? "1 figure is ticked" : `${n} figures are ticked`}${this.#publish ? ", and how the ranges came out is to be published" : ""}.${dropped ? " Figures that the site uses and that are not ticked are taken out." : ""}`;
  }

  #adopt(use, record) {
    return this.#host.link.ask({ ask: "adopt", rates: this.#host.ratesText, use, record, today: today() });
  }

  /** In the order of the lines, so that the same ticks give the same file. */
  #chosen() {
    return this.#reply.learning.lines.map((l) => l.id).filter((id) => this.#use.has(id));
  }

  async #see() {
    const reply = await this.#adopt(this.#chosen(), this.#publish);
    if (reply.kind !== "adopted") {
      this.#refused(reply);
      return;
    }
    await showEffect(this.#effect, this.#host.link, this.#host.ratesText, reply.rates);
  }

  #refused(reply) {
    this.#said.replaceChildren(el("p", { class: "error" }, `Nothing was saved: ${reply.text}`));
  }

  async #save() {
    if (this.#use.size === 0 && !this.#publish) {
      this.#said.replaceChildren(
        el(
          "p",
          {},
          "Nothing was saved: nothing is ticked. To take out what the site uses, press Take out again.",
        ),
      );
      return;
    }
    const reply = await this.#adopt(this.#chosen(), this.#publish);
    if (reply.kind !== "adopted") {
      this.#refused(reply);
      return;
    }
    saveFile("rates.json", reply.rates);
    this.#tell(
      reply.check_code,
      "The rates with these figures went, as rates.json, to where your browser saves files.",
    );
  }

  /** Adopting nothing. The ticks go too, so that the page says what it says. */
  async #takeOut() {
    const reply = await this.#adopt([], false);
    if (reply.kind !== "adopted") {
      this.#refused(reply);
      return;
    }
    this.#use.clear();
    this.#publish = false;
    this.#draw(true);
    saveFile("rates.json", reply.rates);
    this.#tell(
      reply.check_code,
      "Rates without any learnt figure went, as rates.json, to where your browser saves files.",
    );
    this.node.querySelector("[data-key=take-out]").focus();
  }

  #tell(code, text) {
    const same = code === this.#host.code;
    this.#said.replaceChildren(
      el("p", {}, text),
      el(
        "p",
        {},
        "Their rates check code is ",
        el("strong", { class: "saved-code" }, code),
        ". ",
        same
          ? "The site has these same rates: nothing needs to be put there."
          : `They are not on the site yet: it still works with ${this.#host.code}. Put the file on the website as the page Rates says; they are in use once the foot of the customer's page shows the code above.`,
      ),
    );
  }
}
