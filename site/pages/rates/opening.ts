// Where rates come from: the website, a file, one of the samples, a draft that is saved on
// this device. Where some cannot be used, a band says why and what can be opened instead.

import { type BandButton, band } from "../shared/bands.ts";
import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Frame } from "../shared/frame.ts";
import { today } from "../shared/linkcontent.ts";
import { MOST_RATES } from "../shared/openshop.ts";
import { type DraftRates, draftRatesIn } from "../shared/ratesfile.ts";
import type { OpenedReply, RatesCheckedReply, RatesOutlineReply } from "../shared/replies.ts";
import { labelled } from "./boxes.ts";
import type { Draft } from "./draft.ts";
import type { Leaving } from "./leaving.ts";
import { type DraftPanel, draftStore, saveDraftText, whenText } from "./savepanel.ts";

export interface OpeningHost {
  client: EngineClient;
  draft: Draft;
  frame: Frame;
  panel: DraftPanel;
  leaving: Leaving;
  outline(): RatesOutlineReply;
  /** Makes these rates the draft. dirty: they differ from what is saved as a file. */
  open(rates: DraftRates, options?: { dirty?: boolean }): void;
  goTo(path: string): void;
}

const NOT_LOADED =
  "The file rates.json could not be loaded: it is not there, is far too large, or there is no connection.";

export class Opening {
  #host: OpeningHost;

  constructor(host: OpeningHost) {
    this.#host = host;
  }

  /** Asks the engine about a text of rates. Throws when the engine cannot say. */
  async check(text: string): Promise<RatesCheckedReply> {
    const reply = await this.#host.client.ask({ ask: "check_rates", rates: text, today: today() });
    if (reply.kind !== "rates_checked") throw new Error(reply.text);
    return reply;
  }

  /** The section with everything that can be opened. */
  section(): HTMLElement {
    const { draft, leaving } = this.#host;
    const file: HTMLInputElement = el("input", {
      type: "file",
      id: "rates-file",
      accept: ".json,application/json",
      on: {
        change: () => {
          const chosen = file.files?.[0];
          if (chosen) this.fromFile(chosen);
          file.value = "";
        },
      },
    });
    const site = draft.site === null ? null : draftRatesIn(draft.site);
    const back = site && button("Back to the site's rates", () => leaving.ask(() => this.#open(site)));
    return el(
      "section",
      { class: "other-rates", "aria-labelledby": "other-title" },
      el("h2", { id: "other-title" }, "Other rates"),
      labelled(
        "rates-file",
        "Open a rates file",
        file,
        el("p", { class: "hint" }, "Or drop it anywhere on this page."),
      ),
      el("div", { class: "add" }, back, ...this.#samples().map(([text, act]) => button(text, act))),
    );
  }

  #samples(): BandButton[] {
    const { leaving } = this.#host;
    return [
      ["Begin from the sample in dollars", () => leaving.ask(() => this.#sample("sample_us"))],
      ["Begin from the sample in pounds", () => leaving.ask(() => this.#sample("sample_uk"))],
    ];
  }

  #open(rates: DraftRates): void {
    this.#host.panel.stop();
    this.#host.open(rates);
  }

  #sampleRates(which: "sample_us" | "sample_uk"): DraftRates {
    const rates = draftRatesIn(this.#host.outline()[which]);
    if (!rates) throw new Error(`${which} cannot be read`);
    return rates;
  }

  /** A shop that begins from the sample is not invented itself. */
  #sample(which: "sample_us" | "sample_uk"): void {
    const { note, ...rates } = this.#sampleRates(which);
    this.#open({ ...rates, shop: { ...rates.shop, invented: false } });
  }

  async fromFile(file: File): Promise<void> {
    const { frame, leaving } = this.#host;
    const refuse = (text: string, more: BandButton[] = []) => {
      frame.put(
        "arrival",
        band("arrival", ["This file could not be opened as rates. The draft stays as it was.", text], more),
      );
      scrollTo(0, 0);
    };
    if (file.size > MOST_RATES) {
      refuse("It is far too large to be a rates file.");
      return;
    }
    const text = await file.text();
    let reply: RatesCheckedReply;
    try {
      reply = await this.check(text);
    } catch {
      refuse("The sums did not answer. Try once more.");
      return;
    }
    const rates = draftRatesIn(text);
    if (rates && reply.ok) {
      leaving.ask(() => this.#open(rates));
      return;
    }
    refuse(
      reply.faults.map((f) => f.text).join(" · "),
      rates ? [["Open it and mend it here", () => leaving.ask(() => this.#open(rates))]] : [],
    );
  }

  async fromSite(): Promise<void> {
    const { client, draft, frame, open } = this.#host;
    const response = await fetch("../rates.json", { cache: "no-cache" }).catch(() => null);
    const text = response?.ok ? await response.text() : null;
    if (text === null || text.length > MOST_RATES) {
      this.#siteBroken([NOT_LOADED], null);
      return;
    }
    const reply = await this.check(text);
    const rates = draftRatesIn(text);
    if (!rates || !reply.ok) {
      this.#siteBroken(
        reply.faults.map((f) => f.text),
        rates,
      );
      return;
    }
    draft.site = text;
    const opened = await client.open(text);
    if (opened.kind === "opened") {
      draft.siteCode = opened.rates.check_code;
      frame.shop(opened);
    }
    open(rates);
    if (opened.kind === "opened" && opened.rates.valid_until < today()) this.#past(opened);
  }

  /** broken: the rates on the site, where they can be put right here. */
  #siteBroken(faults: string[], broken: DraftRates | null): void {
    const { open, frame } = this.#host;
    frame.withoutRates();
    open(this.#sampleRates("sample_us"));
    const mend: BandButton[] = broken ? [["Mend the site's file here", () => this.#open(broken)]] : [];
    frame.put(
      "site",
      band(
        "site",
        [
          "The rates on the site could not be read, so customers see no figure.",
          ...faults,
          "Below is the invented sample. Open your last good file instead, or:",
        ],
        [["Open a file", () => document.getElementById("rates-file")?.click()], ...mend, ...this.#samples()],
      ),
    );
  }

  #past(opened: OpenedReply): void {
    this.#host.frame.put(
      "past",
      band(
        "past",
        [opened.rates.past_text.replace(/ Ask.*/, ""), "Customers are told so beside every range."],
        [["Renew the date", () => this.#host.goTo("valid_until")]],
      ),
    );
  }

  /** Offers a draft that is saved here; it replaces nothing by itself. */
  offerSaved(): void {
    const { frame, panel, draft, open, goTo } = this.#host;
    const found = draftStore.load();
    if (!found) return;
    const away = () => frame.put("found", null);
    const erase: BandButton = [
      "Erase it",
      () => {
        panel.erase();
        away();
        goTo("");
      },
    ];
    if (found === "unreadable") {
      frame.put(
        "found",
        band(
          "found",
          ["A draft is kept on this device, but it cannot be read."],
          [["Save what is there as a file", saveDraftText], erase],
        ),
      );
      return;
    }
    const site = draft.site ? `The rates below are those of the site, of ${draft.get("rates_of")}.` : "";
    frame.put(
      "found",
      band(
        "found",
        [
          `A draft is kept on this device, last changed ${whenText(found)}; its rates are of ${found.car.rates_of}. ${site} Another tab may have it in hand. Nothing is put together from both.`,
        ],
        [
          [
            "Go on with the draft",
            () => {
              away();
              open(found.car, { dirty: true });
              panel.goOn(found);
            },
          ],
          [
            "Leave it there",
            () => {
              away();
              goTo("");
            },
          ],
          erase,
        ],
      ),
    );
  }
}
