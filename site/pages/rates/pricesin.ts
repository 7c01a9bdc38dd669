// Part prices from a spreadsheet: somebody pastes or opens a table, and looks at it before
// any of it goes into the draft.

import { button, el, list } from "../shared/dom.ts";
import type { PartPrice, PricesReadReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { labelled } from "./boxes.ts";
import type { FormHost } from "./formhost.ts";

/** Longest table read, in bytes; rows and refusals shown. */
const MOST_BYTES = 4_000_000;
const MOST_ROWS = 100;
const MOST_REFUSALS = 50;

/** The names by id of what a price is about. */
export interface PriceNames {
  parts: Record<string, string>;
  ways: Record<string, string>;
  bodies: Record<string, string>;
  had: Record<string, string>;
}

export function pricesIn(host: FormHost, names: PriceNames): HTMLElement {
  const pasted = el("textarea", {
    id: "prices-text",
    rows: 5,
    spellcheck: "false",
    "aria-describedby": "prices-hint",
  });
  const file = el("input", { type: "file", id: "prices-file", accept: ".csv,.tsv,.txt,text/csv" });
  const said = el("p", { role: "status" });
  const rows = el("div", {});
  const refuse = (text: string) => {
    said.textContent = text;
    rows.replaceChildren();
  };
  const read = async (text: string, decimal = "") => {
    if (!text.trim()) {
      refuse("Nothing was pasted.");
      return;
    }
    if (new Blob([text]).size > MOST_BYTES) {
      refuse("This table is longer than can be read here (4 MB).");
      return;
    }
    let reply: ReplyTo<"read_prices">;
    try {
      reply = await host.client.ask({
        ask: "read_prices",
        text,
        decimal,
        words: host.words(),
        currency: host.draft.get("currency"),
      });
    } catch {
      refuse("The sums did not answer. Try once more.");
      return;
    }
    if (reply.kind !== "prices_read") {
      refuse(reply.text);
      return;
    }
    const good = reply.prices.length;
    said.textContent = `${good} good ${rowsText(good)}, ${reply.refused} refused. Nothing is taken yet.`;
    rows.replaceChildren(...preview(reply, { host, names, again: (mark) => read(text, mark) }));
  };
  file.addEventListener("change", async () => {
    const one = file.files?.[0];
    if (!one) return;
    if (one.size > MOST_BYTES) {
      refuse("This table is longer than can be read here (4 MB).");
      return;
    }
    pasted.value = "";
    await read(await one.text());
  });
  return el(
    "section",
    { class: "prices-in" },
    el("h3", {}, "Prices from a spreadsheet"),
    el(
      "p",
      { class: "hint", id: "prices-hint" },
      "Columns: part, way, low, likely, high; if you like body, had, note. The first row holds these names. Part and way by name or id. A row with the likely price alone is taken as exact. To see how it looks, save one below.",
    ),
    labelled("prices-text", "Paste the table", pasted),
    button("Look at it", () => read(pasted.value)),
    labelled("prices-file", "or open a file", file),
    el("div", { class: "found" }, said, rows),
  );
}

const rowsText = (n: number) => (n === 1 ? "row" : "rows");

interface PreviewHost {
  host: FormHost;
  names: PriceNames;
  /** Reads the table again with another mark for decimals. */
  again(mark: string): void;
}

/** What the table holds. Nothing of it is in the draft yet. */
function preview(reply: PricesReadReply, { host, names, again }: PreviewHost): Node[] {
  const good = reply.prices.length;
  return [
    ...reply.questions.slice(0, 1).map((q) =>
      el(
        "div",
        { class: "band" },
        el("p", {}, q.text),
        el(
          "div",
          { class: "band-buttons" },
          button("The point marks decimals: 1,234.50", () => again("point")),
          button("The comma marks decimals: 1.234,50", () => again("comma")),
        ),
      ),
    ),
    reply.refused > 0 &&
      el(
        "div",
        {},
        el("h4", {}, "Refused"),
        list(
          reply.refusals.slice(0, MOST_REFUSALS).map((r) => r.text),
          { class: "refusals", tabindex: "0", role: "group", "aria-label": "Refused rows" },
        ),
        reply.refused > MOST_REFUSALS &&
          el("p", { class: "hint" }, `and ${reply.refused - MOST_REFUSALS} more.`),
      ),
    reply.ignored.length > 0 && el("p", { class: "hint" }, `Columns not read: ${reply.ignored.join(", ")}.`),
    good > 0 && goodRows(reply.prices, names),
    good > 0 &&
      button(`Take the ${good} good ${rowsText(good)}`, () => take(host, reply.prices), { class: "go" }),
  ].filter((node) => node !== false);
}

function goodRows(prices: readonly PartPrice[], names: PriceNames): HTMLElement {
  const cells = (p: PartPrice) => [
    names.ways[p.way] ?? p.way,
    names.bodies[p.body ?? ""] ?? "every body",
    ...(p.price ?? ["starting", "", ""]).map(String),
    names.had[p.had ?? ""] ?? p.had,
  ];
  return el(
    "div",
    { class: "scroll", tabindex: "0", role: "group", "aria-label": "Good rows" },
    el(
      "table",
      { class: "good-rows" },
      el("caption", {}, prices.length > MOST_ROWS ? `Good rows, the first ${MOST_ROWS}` : "Good rows"),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          ["Part", "What to do", "Body", "Low", "Likely", "High", "How it is had"].map((h) =>
            el("th", { scope: "col" }, h),
          ),
        ),
      ),
      el(
        "tbody",
        {},
        prices.slice(0, MOST_ROWS).map((p) =>
          el(
            "tr",
            {},
            el("th", { scope: "row" }, names.parts[p.part] ?? p.part),
            cells(p).map((c) => el("td", {}, c)),
          ),
        ),
      ),
    ),
  );
}

/** Puts the good rows into the draft, in place of entries for the same part, work and
 *  body. */
function take(host: FormHost, prices: readonly PartPrice[]): void {
  const key = (p: { part?: string; way?: string; body?: string }) => [p.part, p.way, p.body ?? ""].join(" ");
  const taken = new Set(prices.map(key));
  const kept = host.draft.current.parts.prices.filter((old) => !taken.has(key(old)));
  host.draft.set("parts.prices", [...kept, ...prices], `took ${prices.length} part prices`);
  host.redraw(`parts.prices[${kept.length}]`);
}
