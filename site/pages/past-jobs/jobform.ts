// A job that somebody enters or changes by hand. It counts once the engine has read it; faults
// are shown at the entry.

import type { CarFile } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { PastJob } from "../shared/jobsfile.ts";
import { CarPart, type CarPartHost } from "./carpart.ts";
import { type FileFault, faultList } from "./faults.ts";
import { type Entry, group } from "./fields.ts";
import { enteredJob, hasRange, jobEntries } from "./jobentries.ts";
import type { WaitingCar } from "./storage.ts";

export interface JobFormHost extends CarPartHost {
  /** Called with what was done, in words. */
  done(text: string): void;
  cancel(): void;
}

export class JobForm {
  node: HTMLElement;
  /** The car that this form completes, or null. */
  waiting: WaitingCar | null;
  #host: JobFormHost;
  /** The job that is changed, or null for a new one. The form looks for this very object in
   *  the file: its place moves when somebody undoes a change. */
  #old: PastJob | null;
  #entries: Entry[];
  #car: CarPart;
  #firstCar: CarFile | null;
  #problems = el("div", { class: "form-problems", role: "alert" });

  /** old: a job of the file, or null for a new one. waiting: a car that waits to be completed. */
  constructor(host: JobFormHost, old: PastJob | null = null, waiting: WaitingCar | null = null) {
    this.#host = host;
    this.#old = old;
    this.waiting = waiting;
    this.#firstCar = old?.car ?? waiting?.car ?? null;
    this.#car = new CarPart(host, this.#firstCar, old?.rates ?? "");
    this.#entries = jobEntries(old ?? {}, {
      currency: host.ledger.current.currency,
      opened: host.opened,
      ratesText: host.ratesText,
    });
    const title = waiting ? `Complete the job of ${waiting.name}` : "Enter a job";
    this.node = this.#draw(old ? `Change job ${old.name}` : title);
  }

  get changed(): boolean {
    return this.#entries.some((e) => e.text !== e.first) || this.#car.car !== this.#firstCar;
  }

  #draw(title: string): HTMLElement {
    const old = this.#old;
    const of = (start: string) => this.#entries.filter((e) => e.path.startsWith(start)).map((e) => e.node);
    const submit = (event: Event) => {
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
            old === null ? "Put it with the jobs" : "Take the change",
          ),
          button("Leave it", () => this.#host.cancel(), { class: "quiet" }),
          old && button("Remove this job", () => this.#remove(old), { class: "quiet" }),
        ),
      ),
    );
  }

  async #submit(): Promise<void> {
    const { ledger } = this.#host;
    const file = ledger.current;
    this.#problems.replaceChildren();
    for (const e of this.#entries) e.clear();
    if (this.#missing()) return;
    const { car, code, added } = this.#car;
    const job = enteredJob(this.#entries, car, code);
    const old = this.#old;
    const n = old ? file.jobs.indexOf(old) : file.jobs.length;
    if (n < 0) {
      this.#gone();
      return;
    }
    const jobs = [...file.jobs.slice(0, n), job, ...file.jobs.slice(old ? n + 1 : n)];
    const rates = car && added ? [...file.rates, added] : file.rates;
    const faults = await ledger.change(
      { ...file, rates, jobs },
      old === null ? `entering job ${job.name}` : `the change of job ${job.name}`,
      ledger.waiting.filter((w) => w !== this.waiting),
    );
    if (faults.length === 0) {
      this.#host.done(old === null ? `Job ${job.name} is with the jobs.` : `Job ${job.name} is changed.`);
      return;
    }
    this.#show(faults, `jobs[${n}].`);
  }

  /** Marks what has to be entered and is not. */
  #missing(): boolean {
    const none = this.#entries.filter((e) => e.required && e.text === "");
    for (const e of none) e.wrong(e.required);
    none[0]?.focus();
    if (none.length) return true;
    if (this.#car.car || hasRange(this.#entries)) return false;
    const low = this.#entries.find((e) => e.path === "said.low");
    low?.wrong("Write the two ends that were said, or open the car's file below.");
    low?.focus();
    return true;
  }

  /** Shows each fault at its entry, and the others above the form. start: the path of the job. */
  #show(faults: readonly FileFault[], start: string): void {
    const rest: FileFault[] = [];
    let first: Entry | null = null;
    for (const f of faults) {
      const path = f.path.startsWith(start) ? f.path.slice(start.length) : null;
      const e = path && this.#entries.find((one) => one.path === path);
      if (!e) {
        rest.push(f);
        continue;
      }
      e.wrong(f.expected ? `Expected ${f.expected}.` : (f.text ?? ""));
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

  #gone(): void {
    this.#problems.replaceChildren(
      el(
        "div",
        { class: "band" },
        el("p", {}, "This job has changed or gone since it was opened here. Leave it, and open it again."),
      ),
    );
  }

  async #remove(old: PastJob): Promise<void> {
    const { ledger } = this.#host;
    const file = ledger.current;
    if (!file.jobs.includes(old)) {
      this.#gone();
      return;
    }
    const faults = await ledger.change(
      { ...file, jobs: file.jobs.filter((one) => one !== old) },
      `removing job ${old.name}`,
    );
    if (faults.length === 0) this.#host.done(`Job ${old.name} is removed.`);
    else this.#show(faults, "");
  }
}
