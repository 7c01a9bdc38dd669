// What the jobs teach, figure by figure. The shop uses nothing that it has not ticked. A ticked
// figure goes into a rates file, and is in use once that file is on the site.

import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { saveFile } from "../shared/files.ts";
import { today } from "../shared/linkcontent.ts";
import { openedRatesIn, type RatesFile } from "../shared/ratesfile.ts";
import type { LearntLine, ScoresReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { showEffect } from "./effects.ts";
import { learntLine, recordTick } from "./learntline.ts";

export interface LearningHost {
  client: EngineClient;
  /** The rates on the site, and their check code. */
  ratesText: string;
  code: string;
}

/** The learnt figures that rates use already, by the ids of the lines. */
function figuresIn(rates: RatesFile): Set<string> {
  const own = rates.own_figures;
  if (!own) return new Set();
  return new Set([
    ...own.rust.map((r) => `rust.${r.group}`),
    ...Object.keys(own.hours).map((trade) => `hours.${trade}`),
    ...(own.spread ? ["spread"] : []),
    ...(own.doubt ? ["doubt"] : []),
  ]);
}

export class Learning {
  node = el("section", { id: "learning", "aria-labelledby": "learning-title" });
  #host: LearningHost;
  #reply: ScoresReply | null = null;
  #use = new Set<string>();
  /** Whether the customer's page is to show how the ranges came out. */
  #publish = false;
  #effect = el("div", { class: "effect-box" });
  #said = el("div", { class: "adopt-said", role: "status" });
  #chosenLine = el("p", { class: "chosen" });
  /** Whether the ticks at the beginning are set. */
  #begun = false;
  #ofSite: RatesFile;
  #inUse: Set<string>;

  constructor(host: LearningHost) {
    this.#host = host;
    this.#ofSite = openedRatesIn(host.ratesText);
    this.#inUse = figuresIn(this.#ofSite);
  }

  /** Ticks stay as long as the figure is offered. A figure that the site's rates use already is
   *  ticked at the beginning, since without the tick it would be removed. fresh: the reply is
   *  about the file as it is now. */
  show(reply: ScoresReply, fresh: boolean): void {
    if (!this.#begun) {
      this.#use = new Set(this.#inUse);
      this.#publish = Boolean(this.#ofSite.record);
      this.#begun = true;
    }
    const offered = new Set(reply.learning.lines.filter((l) => l.offered).map((l) => l.id));
    this.#use = new Set([...this.#use].filter((id) => offered.has(id)));
    this.#publish &&= reply.record !== null;
    this.#reply = reply;
    this.#effect.replaceChildren();
    this.#said.replaceChildren();
    this.#draw(reply, fresh);
  }

  clear(): void {
    this.node.replaceChildren();
    this.#reply = null;
    this.#use.clear();
    this.#publish = false;
    this.#begun = false;
  }

  #draw({ learning, record, invented }: ScoresReply, fresh: boolean): void {
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
        recordTick(record !== null, {
          ticked: this.#publish,
          fresh,
          changed: (on) => {
            this.#publish = on;
            this.#changed();
          },
        }),
      ),
      fresh
        ? this.#acts()
        : el("p", { class: "from-before" }, "This can be used once the jobs are worked out anew."),
    );
  }

  #line(line: LearntLine, fresh: boolean): HTMLElement {
    return learntLine(line, this.#inUse.has(line.id), {
      ticked: this.#use.has(line.id),
      fresh,
      changed: (on) => {
        if (on) this.#use.add(line.id);
        else this.#use.delete(line.id);
        this.#changed();
      },
    });
  }

  #changed(): void {
    this.#effect.replaceChildren();
    this.#said.replaceChildren();
    this.#drawState();
  }

  #acts(): HTMLElement {
    const box = el(
      "div",
      { class: "no-paper" },
      this.#chosenLine,
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
    this.#drawState();
    return box;
  }

  #drawState(): void {
    const n = this.#use.size;
    const dropped = [...this.#inUse].some((id) => !this.#use.has(id));
    this.#chosenLine.textContent = `${n === 0 ? "No figure is ticked" : n === 1 ? "1 figure is ticked" : `${n} figures are ticked`}${this.#publish ? ", and how the ranges came out is to be published" : ""}.${dropped ? " Figures that the site uses and that are not ticked are taken out." : ""}`;
  }

  /** Asks for rates with these figures. */
  #adopt(use: string[], record: boolean): Promise<ReplyTo<"adopt">> {
    const { client, ratesText } = this.#host;
    return client.ask({ ask: "adopt", rates: ratesText, use, record, today: today() });
  }

  /** In the order of the lines, so that the same ticks give the same file. */
  #chosen(): string[] {
    const lines = this.#reply?.learning.lines ?? [];
    return lines.map((l) => l.id).filter((id) => this.#use.has(id));
  }

  async #see(): Promise<void> {
    const reply = await this.#adopt(this.#chosen(), this.#publish);
    if (reply.kind !== "adopted") {
      this.#refused(reply);
      return;
    }
    await showEffect(this.#effect, this.#host.client, this.#host.ratesText, reply.rates);
  }

  #refused(reply: { text: string }): void {
    this.#said.replaceChildren(el("p", { class: "error" }, `Nothing was saved: ${reply.text}`));
  }

  async #save(): Promise<void> {
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

  /** Adopts nothing. The ticks go too, so that they agree with the file. */
  async #takeOut(): Promise<void> {
    const reply = await this.#adopt([], false);
    if (reply.kind !== "adopted") {
      this.#refused(reply);
      return;
    }
    this.#use.clear();
    this.#publish = false;
    if (this.#reply) this.#draw(this.#reply, true);
    saveFile("rates.json", reply.rates);
    this.#tell(
      reply.check_code,
      "Rates without any learnt figure went, as rates.json, to where your browser saves files.",
    );
    this.node.querySelector<HTMLElement>("[data-key=take-out]")?.focus();
  }

  #tell(code: string, text: string): void {
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
