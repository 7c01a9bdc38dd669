// Where rates come from: the website, a file, one of the samples, a draft kept on
// this device. What cannot be used is said, with its reason and with what can be
// opened instead.

import { button, el } from "../shared/dom.ts";
import { band } from "../shared/bands.ts";
import { MOST_RATES } from "../shared/openshop.ts";
import { labelled } from "./boxes.ts";
import { today } from "../shared/linkcontent.ts";
import { keptDraft, saveKeptText, whenText } from "./savepanel.ts";

/** Without these the form has nothing to stand on. */
const NEEDED = ["shop", "labour", "materials", "parts", "strip_and_survey", "sent_out", "tax", "time"];

export class Opening {
  #host;
  /** Rates on the site that could be mended here, or null. */
  #broken = null;

  /** host: link, draft, frame, keep, leaving, outline(), open(rates, options), goTo(path) */
  constructor(host) {
    this.#host = host;
  }

  check(text) {
    return this.#host.link.ask({ ask: "check_rates", rates: text, today: today() });
  }

  /** The section with everything that can be opened. */
  section() {
    const { draft, leaving } = this.#host;
    const file = el("input", {
      type: "file",
      id: "rates-file",
      accept: ".json,application/json",
      on: {
        change: () => {
          if (file.files[0]) this.fromFile(file.files[0]);
          file.value = "";
        },
      },
    });
    const back = draft.site
      ? button("Back to the site's rates", () => leaving.ask(() => this.#open(JSON.parse(draft.site))))
      : null;
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

  #samples() {
    const { leaving } = this.#host;
    return [
      ["Begin from the sample in dollars", "sample_us"],
      ["Begin from the sample in pounds", "sample_uk"],
    ].map(([text, which]) => [text, () => leaving.ask(() => this.#sample(which))]);
  }

  #open(rates) {
    this.#host.keep.stop();
    this.#host.open(rates);
  }

  /** A shop that begins from the sample is not invented itself. */
  #sample(which) {
    const { note, ...rates } = JSON.parse(this.#host.outline()[which]);
    this.#open({ ...rates, shop: { ...rates.shop, invented: false } });
  }

  async fromFile(file) {
    const { frame, leaving } = this.#host;
    const refuse = (text, more) => {
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
    let reply;
    try {
      reply = await this.check(text);
    } catch {
      refuse("The sums did not answer. Try once more.");
      return;
    }
    const rates = parsed(text);
    if (reply.ok) {
      leaving.ask(() => this.#open(rates));
      return;
    }
    refuse(
      reply.faults.map((f) => f.text).join(" · "),
      mendable(rates) ? [["Open it and mend it here", () => leaving.ask(() => this.#open(rates))]] : [],
    );
  }

  async fromSite() {
    const { link, draft, frame, open } = this.#host;
    const response = await fetch("../rates.json", { cache: "no-cache" }).catch(() => null);
    const text = response?.ok ? await response.text() : null;
    const missing = text === null || text.length > MOST_RATES;
    const reply = missing
      ? {
          ok: false,
          faults: [
            {
              text: "The file rates.json could not be loaded: it is not there, is far too large, or there is no connection.",
            },
          ],
        }
      : await this.check(text);
    if (!reply.ok) {
      this.#broken = missing ? null : parsed(text);
      this.#siteBroken(reply);
      return;
    }
    draft.site = text;
    const opened = await link.open(text);
    if (opened.kind === "opened") {
      draft.siteCode = opened.rates.check_code;
      frame.shop(opened);
    }
    open(parsed(text));
    if (opened.kind === "opened" && opened.rates.valid_until < today()) this.#past(opened);
  }

  #siteBroken(reply) {
    this.#host.frame.withoutRates();
    const { outline, open, frame } = this.#host;
    open(JSON.parse(outline().sample_us));
    const mend = mendable(this.#broken)
      ? [["Mend the site's file here", () => this.#open(this.#broken)]]
      : [];
    frame.put(
      "site",
      band(
        "site",
        [
          "The rates on the site could not be read, so customers see no figure.",
          ...reply.faults.map((f) => f.text),
          "Below is the invented sample. Open your last good file instead, or:",
        ],
        [["Open a file", () => document.getElementById("rates-file").click()], ...mend, ...this.#samples()],
      ),
    );
  }

  #past(opened) {
    this.#host.frame.put(
      "past",
      band(
        "past",
        [opened.rates.past_text.replace(/ Ask.*/, ""), "Customers are told so beside every range."],
        [["Renew the date", () => this.#host.goTo("valid_until")]],
      ),
    );
  }

  /** A draft kept here is offered, never put in place of anything by itself. */
  offerKept() {
    const { frame, keep, draft, open, goTo } = this.#host;
    const found = keptDraft();
    if (!found) return;
    const away = () => frame.put("found", null);
    const erase = [
      "Erase it",
      () => {
        keep.erase();
        away();
        goTo("");
      },
    ];
    if (found === "unreadable" || !mendable(found.rates)) {
      frame.put(
        "found",
        band(
          "found",
          ["A draft is kept on this device, but it cannot be read."],
          [["Save what is there as a file", saveKeptText], erase],
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
          `A draft is kept on this device, last changed ${whenText(found)}; its rates are of ${found.rates.rates_of}. ${site} Another tab may have it in hand. Nothing is put together from both.`,
        ],
        [
          [
            "Go on with the draft",
            () => {
              away();
              open(found.rates, { dirty: true });
              keep.goOn(found);
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

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null; /* The engine has said why. */
  }
}

/** Rates with faults can be mended in the form, as long as they are rates at all. */
function mendable(rates) {
  return (
    rates !== null &&
    typeof rates === "object" &&
    NEEDED.every((m) => rates[m] && typeof rates[m] === "object") &&
    Array.isArray(rates.materials) &&
    Array.isArray(rates.parts.prices) &&
    Array.isArray(rates.strip_and_survey.charged) &&
    Array.isArray(rates.sent_out.work)
  );
}
