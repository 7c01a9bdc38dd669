// A job by hand: entered or changed. It counts once the engine has read it; what
// is wrong is said at the entry.

import { button, el } from "../shared/dom.ts";
import { Entry, group } from "./fields.ts";
import { CarPart } from "./carpart.ts";
import { faultList } from "./faults.ts";

const TRADES = ["metal", "prep", "body", "paint", "fit"];
const CAUSES = [
  ["rust_found", "Rust found"],
  ["hours", "More hours than thought"],
  ["parts", "Dearer parts"],
  ["changes_agreed", "Changes agreed on top"],
];
const MONEY = "Digits and a point only, such as 52400 or 52400.50";

/** "without tax" or "tax in it", as the shop's rates publish. */
function taxWords(ratesText) {
  return JSON.parse(ratesText).tax?.published === "with_tax"
    ? "with the tax in it, as the ranges on this site are"
    : "without tax, as the ranges on this site are";
}

export class JobForm {
  node;
  #host;
  /** The job that is changed, as it stood, or null for a new one. It is found
   *  again by itself: its place moves when something is taken back. */
  #old = null;
  #entries;
  #car;
  #problems = el("div", { class: "form-problems", role: "alert" });

  /** host: link, ledger, opened, ratesText, done(text), cancel(); n: which job of
   *  the file, or null for a new one; waiting: a car that waits to be completed */
  constructor(host, n = null, waiting = null) {
    this.#host = host;
    if (n !== null) this.#old = host.ledger.file.jobs[n];
    this.waiting = waiting;
    const job = this.#old ?? {};
    this.#car = new CarPart(host, job.car ?? waiting?.car ?? null, job.rates ?? "");
    this.#entries = this.#make(job);
    this.node = this.#draw(
      n === null
        ? waiting
          ? `Complete the job of ${waiting.name}`
          : "Enter a job"
        : `Change job ${job.name}`,
    );
  }

  get changed() {
    return this.#entries.some((e) => e.text !== e.first) || this.#car.car !== this.firstCar;
  }

  #make(job) {
    const unit = this.#host.ledger.file.currency;
    const entry = (path, label, more = {}) => {
      const value = path.split(".").reduce((at, step) => at?.[step], job);
      const e = new Entry({ path, label, value: value === undefined ? "" : String(value), ...more });
      e.first = e.text;
      return e;
    };
    const trade = (id) => this.#host.opened.labour[TRADES.indexOf(id)].name;
    this.firstCar = this.#car.car;
    return [
      entry("name", "The shop's own word for the job", {
        hint: "Such as 2026-17. Not a person's name.",
        required: "Write a word for the job, such as 2026-17.",
      }),
      entry("finished", "Finished on", { kind: "date", required: "Write the day on which it was finished." }),
      entry("came_to", "Came to", {
        kind: "money",
        unit,
        hint: `All in all, ${taxWords(this.#host.ratesText)}. ${MONEY}.`,
        required: "Write what the job came to.",
      }),
      entry("said.low", "From", { kind: "money", unit }),
      entry("said.high", "to", { kind: "money", unit }),
      ...TRADES.map((id) => entry(`hours.${id}`, trade(id), { kind: "number", unit: "hours" })),
      ...CAUSES.map(([id, label]) =>
        entry(`more_because.${id}`, label, {
          kind: "money",
          unit,
          hint:
            id === "changes_agreed"
              ? "Taken off before the job is scored: it is no fault of the range."
              : null,
        }),
      ),
    ];
  }

  #draw(title) {
    const of = (start) => this.#entries.filter((e) => e.path.startsWith(start)).map((e) => e.node);
    const submit = (event) => {
      event.preventDefault();
      this.#submit();
    };
    return el(
      "section",
      { class: "job-form", "aria-labelledby": "form-title" },
      el("h2", { id: "form-title", tabindex: "-1" }, title),
      el(
        "form",
        { novalidate: true, on: { submit } },
        this.#problems,
        el("div", { class: "entries" }, of("name"), of("finished"), of("came_to")),
        group(
          "The range that was first said",
          "8 cars in 10 were to come between these. Leave both empty where the car's file is opened below: then the range is worked out again at the rates of its day.",
          el("div", { class: "entries" }, of("said")),
        ),
        this.#car.node,
        group(
          "Hours worked, by trade",
          "In all, the strip and survey included. Leave empty what is not known.",
          el("div", { class: "entries" }, of("hours")),
        ),
        group(
          "Why it came to more",
          "How much of it each came to, as far as the shop knows. Leave empty what was not so.",
          el("div", { class: "entries" }, of("more_because")),
        ),
        el(
          "div",
          { class: "form-acts" },
          el(
            "button",
            { type: "submit", class: "go" },
            this.#old === null ? "Put it with the jobs" : "Take the change",
          ),
          button("Leave it", () => this.#host.cancel(), { class: "quiet" }),
          this.#old && button("Remove this job", () => this.#remove(), { class: "quiet" }),
        ),
      ),
    );
  }

  /** The job as entered: amounts as typed, hours as numbers where they are. */
  #job() {
    const job = {};
    const put = (path, value) => {
      const [a, b] = path.split(".");
      if (b) (job[a] ??= {})[b] = value;
      else job[a] = value;
    };
    const code = this.#car.car ? this.#car.code : "";
    for (const e of this.#entries) {
      if (e.path === "came_to" && code) job.rates = code;
      if (e.path === "came_to" && this.#car.car) job.car = this.#car.car;
      if (e.text === "" && !(e.path.startsWith("said.") && this.#said())) continue;
      put(e.path, e.path.startsWith("hours.") && /^\d+(\.\d+)?$/.test(e.text) ? Number(e.text) : e.text);
    }
    return job;
  }

  #said() {
    return this.#entries.some((e) => e.path.startsWith("said.") && e.text !== "");
  }

  async #submit() {
    const { ledger } = this.#host;
    this.#problems.replaceChildren();
    for (const e of this.#entries) e.clear();
    if (this.#missing()) return;
    const job = this.#job();
    const old = this.#old;
    const n = old ? ledger.file.jobs.indexOf(old) : ledger.file.jobs.length;
    if (n < 0) {
      this.#gone();
      return;
    }
    const jobs = ledger.file.jobs.toSpliced(n, old ? 1 : 0, job);
    const rates =
      this.#car.car && this.#car.added ? [...ledger.file.rates, this.#car.added] : ledger.file.rates;
    const faults = await ledger.change(
      { ...ledger.file, rates, jobs },
      old === null ? `entering job ${job.name}` : `the change of job ${job.name}`,
      ledger.waiting.filter((w) => w !== this.waiting),
    );
    if (faults.length === 0) {
      this.#host.done(old === null ? `Job ${job.name} is with the jobs.` : `Job ${job.name} is changed.`);
      return;
    }
    this.#show(faults, `jobs[${n}].`);
  }

  #missing() {
    const none = this.#entries.filter((e) => e.required && e.text === "");
    for (const e of none) e.wrong(e.required);
    none[0]?.focus();
    if (none.length) return true;
    if (this.#car.car || this.#said()) return false;
    const low = this.#entries.find((e) => e.path === "said.low");
    low.wrong("Write the two ends that were said, or open the car's file below.");
    low.focus();
    return true;
  }

  /** Each fault at its entry, the rest above the form. */
  #show(faults, start) {
    const rest = [];
    let first = null;
    for (const f of faults) {
      const path = f.path.startsWith(start) ? f.path.slice(start.length) : null;
      const e = path && this.#entries.find((one) => one.path === path);
      if (!e) {
        rest.push(f);
        continue;
      }
      e.wrong(f.expected ? `Expected ${f.expected}.` : f.text);
      first ??= e;
    }
    if (rest.length)
      this.#problems.replaceChildren(
        el(
          "div",
          { class: "band" },
          el("p", {}, "This cannot be taken yet. The jobs stay as they were."),
          faultList(rest),
        ),
      );
    first?.focus();
  }

  #gone() {
    this.#problems.replaceChildren(
      el(
        "div",
        { class: "band" },
        el("p", {}, "This job has changed or gone since it was opened here. Leave it, and open it again."),
      ),
    );
  }

  async #remove() {
    const { ledger } = this.#host;
    const { name } = this.#old;
    if (!ledger.file.jobs.includes(this.#old)) {
      this.#gone();
      return;
    }
    const faults = await ledger.change(
      { ...ledger.file, jobs: ledger.file.jobs.filter((one) => one !== this.#old) },
      `removing job ${name}`,
    );
    if (faults.length === 0) this.#host.done(`Job ${name} is removed.`);
    else this.#show(faults, "");
  }
}
