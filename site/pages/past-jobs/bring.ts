// Bringing jobs in: a table from a spreadsheet, car files, another file of past
// jobs. A table is looked through first; only the good rows can be taken.

import { button, el, freshId } from "../shared/dom.ts";
import { showError } from "../shared/ask.ts";
import { chooser, readTableText } from "./jobfile.ts";
import { faultList } from "./faults.ts";

const HEADINGS = "job, finished, said low, said high, came to";
const MORE = "rust found, more hours, dearer parts, changes agreed";
const EXAMPLE = "job,finished,said low,said high,came to\n2026-17,2026-06-20,52000,97000,71250.50";
const FULL = { low: ["said", "low"], high: ["said", "high"] };
const MOST_ROWS = 50;

/** host: link, ledger, done(text), cancel(), carFiles(files), jobsFile(file) */
export class Bring {
  node;
  #host;
  #area;
  #error;
  #preview = el("div", { class: "preview", tabindex: "-1" });
  #decimal = "";

  constructor(host) {
    this.#host = host;
    this.node = this.#draw();
  }

  #draw() {
    const id = freshId("table");
    this.#error = el("p", { id: `${id}-error`, class: "error", hidden: true });
    this.#area = el("textarea", {
      id,
      rows: 6,
      spellcheck: "false",
      autocomplete: "off",
      "aria-describedby": `${id}-hint ${id}-error`,
    });
    const table = chooser(".csv,.tsv,.txt,text/csv,text/plain", ([file]) => this.table(file));
    const cars = chooser(".json,application/json", (files) => this.#host.carFiles(files), true);
    const jobs = chooser(".json,application/json", ([file]) => this.#host.jobsFile(file));
    const submit = (event) => {
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

  get changed() {
    return this.#area.value.trim() !== "";
  }

  async table(file) {
    try {
      this.#area.value = await readTableText(file);
      this.#decimal = "";
      await this.#read();
    } catch (error) {
      this.#wrong(error.message);
    }
  }

  #wrong(text) {
    this.#preview.replaceChildren();
    showError(this.#area, this.#error, text);
  }

  async #read() {
    this.#error.hidden = true;
    this.#area.removeAttribute("aria-invalid");
    const { link, ledger } = this.#host;
    if (this.#area.value.trim() === "") {
      this.#wrong("Paste a table here first, or open its file.");
      return;
    }
    const reply = await link.ask({
      ask: "read_jobs",
      text: this.#area.value,
      decimal: this.#decimal,
      currency: ledger.file.currency,
    });
    if (reply.kind !== "jobs_read") {
      this.#wrong(reply.text);
      return;
    }
    this.#show(reply);
    this.#preview.focus();
  }

  #show(reply) {
    const have = new Set(this.#host.ledger.file.jobs.map((j) => j.name));
    const good = reply.jobs.filter((j) => !have.has(j.name));
    const twice = reply.jobs.filter((j) => have.has(j.name));
    const refused = reply.refused + twice.length;
    const rows = (n) => (n === 1 ? "1 row" : `${n} rows`);
    this.#preview.replaceChildren(
      el(
        "h3",
        {},
        `${rows(good.length).replace("row", "good row")}, ${refused === 0 ? "none" : rows(refused)} refused`,
      ),
      reply.questions.length > 0 ? this.#question(reply.questions) : "",
      refused > 0
        ? faultList([
            ...reply.refusals.map((r) => ({
              place: `Row ${r.row}, column ${r.heading}`,
              found: r.found === "" ? "nothing" : r.found,
              expected: r.expected,
              text: r.text,
            })),
            ...twice.map((j) => ({
              place: `Job ${j.name}`,
              found: "a name that one of your jobs has already",
              expected: "a name of its own",
            })),
          ])
        : "",
      reply.ignored.length > 0
        ? el("p", { class: "hint" }, `Columns that are not used: ${reply.ignored.join(", ")}.`)
        : "",
      good.length > 0 && reply.questions.length === 0 ? goodTable(good, this.#host.ledger.file.currency) : "",
      good.length > 0 && reply.questions.length === 0
        ? el(
            "p",
            { class: "with-buttons" },
            button(
              `Take the ${good.length === 1 ? "good row" : `${good.length} good rows`}`,
              () => this.#take(good),
              { class: "go", "data-key": "take" },
            ),
          )
        : "",
    );
  }

  #question(questions) {
    const answer = (mark) => {
      this.#decimal = mark;
      this.#read();
    };
    return el(
      "fieldset",
      { class: "group" },
      el("legend", {}, "Which mark stands before the cents?"),
      questions.map((q) =>
        el(
          "p",
          {},
          `Row ${q.row}, column ${q.heading}: does ${q.found} mean ${q.as_point} or ${q.as_comma}?`,
        ),
      ),
      el(
        "div",
        { class: "with-buttons" },
        button(`A point: ${questions[0].found} means ${questions[0].as_point}`, () => answer("point"), {
          "data-key": "point",
        }),
        button(`A comma: ${questions[0].found} means ${questions[0].as_comma}`, () => answer("comma"), {
          "data-key": "comma",
        }),
      ),
    );
  }

  async #take(good) {
    const { ledger, done } = this.#host;
    const what = good.length === 1 ? "1 job" : `${good.length} jobs`;
    const faults = await ledger.change(
      { ...ledger.file, jobs: [...ledger.file.jobs, ...good] },
      `bringing in ${what}`,
    );
    if (faults.length === 0) done(`${what} brought in from the table.`);
    else this.#preview.replaceChildren(el("p", { class: "error" }, "Nothing was taken."), faultList(faults));
  }
}

function goodTable(good, currency) {
  const at = (job, path) => path.reduce((v, step) => v?.[step], job) ?? "";
  const heads = ["Job", "Finished", "From", "to", "Came to"];
  return el(
    "div",
    { class: "scroll-box", role: "region", "aria-label": "The good rows", tabindex: "0" },
    el(
      "table",
      {},
      el("caption", {}, `The good rows, in ${currency}`),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          heads.map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
      el(
        "tbody",
        {},
        good
          .slice(0, MOST_ROWS)
          .map((j) =>
            el(
              "tr",
              {},
              el("th", { scope: "row" }, j.name),
              el("td", {}, j.finished),
              el("td", {}, at(j, FULL.low)),
              el("td", {}, at(j, FULL.high)),
              el("td", {}, j.came_to),
            ),
          ),
      ),
    ),
    good.length > MOST_ROWS && el("p", {}, `and ${good.length - MOST_ROWS} more`),
  );
}
