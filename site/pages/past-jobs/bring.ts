// Bringing jobs in: a table from a spreadsheet, car files, another file of past jobs. A table
// is shown first, and only its good rows can be taken.

import { showError } from "../shared/ask.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { messageOf } from "../shared/files.ts";
import { preview, type ReadJob } from "./bringpreview.ts";
import { faultList } from "./faults.ts";
import { chooser, readTableText } from "./jobfile.ts";
import type { Ledger } from "./ledger.ts";

const HEADINGS = "job, finished, said low, said high, came to";
const MORE = "rust found, more hours, dearer parts, changes agreed";
const EXAMPLE = "job,finished,said low,said high,came to\n2026-17,2026-06-20,52000,97000,71250.50";

export interface BringHost {
  client: EngineClient;
  ledger: Ledger;
  carFiles(files: File[]): unknown;
  jobsFile(file: File): unknown;
  /** Called with what was done, in words. */
  done(text: string): void;
  cancel(): void;
}

export class Bring {
  node: HTMLElement;
  #host: BringHost;
  #id = freshId("table");
  #error = el("p", { id: `${this.#id}-error`, class: "error", hidden: true });
  #area = el("textarea", {
    id: this.#id,
    rows: 6,
    spellcheck: "false",
    autocomplete: "off",
    "aria-describedby": `${this.#id}-hint ${this.#id}-error`,
  });
  #preview = el("div", { class: "preview", tabindex: "-1" });
  /** The mark before the cents, "" where nobody has said. */
  #decimal = "";

  constructor(host: BringHost) {
    this.#host = host;
    this.node = this.#draw();
  }

  #draw(): HTMLElement {
    const id = this.#id;
    const table = chooser(".csv,.tsv,.txt,text/csv,text/plain", ([file]) => this.table(file));
    const cars = chooser(".json,application/json", (files) => this.#host.carFiles(files), true);
    const jobs = chooser(".json,application/json", ([file]) => this.#host.jobsFile(file));
    const submit = (event: Event) => {
      event.preventDefault();
      this.#decimal = "";
      this.#read();
    };
    return el(
      "section",
      { class: "bring", "aria-labelledby": "bring-title" },
      el("h2", { id: "bring-title", tabindex: "-1" }, "Bring jobs in"),
      el("h3", {}, "From a spreadsheet"),
      el(
        "form",
        { novalidate: true, on: { submit } },
        el(
          "div",
          { id: `${id}-hint` },
          el(
            "p",
            {},
            `The first row names the columns: ${HEADINGS}. There may be also: ${MORE}. Days as 2026-06-20. For example:`,
          ),
          el("pre", {}, EXAMPLE),
        ),
        el("label", { for: id, class: "filter-label" }, "Paste the table"),
        this.#error,
        this.#area,
        el(
          "div",
          { class: "with-buttons" },
          el("button", { type: "submit", class: "go" }, "Look through it"),
          button("Open a table's file (CSV)", table.press, { "data-key": "table" }),
          table.node,
        ),
      ),
      this.#preview,
      el("h3", {}, "From car files"),
      el(
        "p",
        {},
        "Files that the page This car saved, several at once. Each becomes a job to complete: what it came to is asked, one after the other.",
      ),
      el("p", {}, button("Open car files", cars.press, { "data-key": "cars" }), cars.node),
      el("h3", {}, "From another file of past jobs"),
      el("p", {}, "Its jobs are put with these. The names must differ, and the money be the same."),
      el("p", {}, button("Open another file of past jobs", jobs.press, { "data-key": "merge" }), jobs.node),
      el(
        "p",
        {},
        button("Leave it", () => this.#host.cancel(), { class: "quiet" }),
      ),
    );
  }

  get changed(): boolean {
    return this.#area.value.trim() !== "";
  }

  /** Reads a table from a file. */
  async table(file: File): Promise<void> {
    try {
      this.#area.value = await readTableText(file);
      this.#decimal = "";
      await this.#read();
    } catch (error) {
      this.#wrong(messageOf(error));
    }
  }

  #wrong(text: string): void {
    this.#preview.replaceChildren();
    showError(this.#area, this.#error, text);
  }

  async #read(): Promise<void> {
    this.#error.hidden = true;
    this.#area.removeAttribute("aria-invalid");
    const { client, ledger } = this.#host;
    if (this.#area.value.trim() === "") {
      this.#wrong("Paste a table here first, or open its file.");
      return;
    }
    const reply = await client.ask({
      ask: "read_jobs",
      text: this.#area.value,
      decimal: this.#decimal,
      currency: ledger.current.currency,
    });
    if (reply.kind !== "jobs_read") {
      this.#wrong(reply.text);
      return;
    }
    const { currency, jobs } = ledger.current;
    const shown = preview(reply, {
      currency,
      names: new Set(jobs.map((j) => j.name)),
      take: (good) => this.#take(good),
      again: (decimal) => {
        this.#decimal = decimal;
        this.#read();
      },
    });
    this.#preview.replaceChildren(...shown);
    this.#preview.focus();
  }

  async #take(good: ReadJob[]): Promise<void> {
    const { ledger, done } = this.#host;
    const what = good.length === 1 ? "1 job" : `${good.length} jobs`;
    const faults = await ledger.change(
      { ...ledger.current, jobs: [...ledger.current.jobs, ...good] },
      `bringing in ${what}`,
    );
    if (faults.length === 0) done(`${what} brought in from the table.`);
    else this.#preview.replaceChildren(el("p", { class: "error" }, "Nothing was taken."), faultList(faults));
  }
}
