// The sections of the page with a file in hand, and the one act that is open:
// entering, changing or bringing in jobs.

import { button, el } from "../shared/dom.ts";
import { band } from "../shared/bands.ts";
import { dateText, today } from "../shared/linkcontent.ts";
import { swap } from "../shared/swap.ts";
import { Bring } from "./bring.ts";
import { JobForm } from "./jobform.ts";
import { Learning } from "./learning.ts";
import { jobsSection } from "./jobstable.ts";
import { causesSection, outcomeSection, statisticsSection } from "./outcome.ts";
import { waitingBox } from "./bringfiles.ts";

const byId = (id) => document.getElementById(id);
const STEPS = [
  ["outcome", "How our ranges have come out"],
  ["jobs", "The jobs"],
  ["causes", "Why jobs came to more"],
  ["learning", "What the jobs teach"],
  ["keep-title", "Keep it"],
];

export class View {
  #host;
  #act = null;
  #scoredJobs = new Map();
  #parts = null;
  #learning = null;

  /** host: link, ledger, shop, frame, scoring, keeping, carFiles(files), mergeFile(file) */
  constructor(host) {
    this.#host = host;
  }

  start(node, moved) {
    this.#parts = null;
    byId("steps").replaceChildren();
    byId("kept").replaceChildren();
    byId("screen").replaceChildren(node);
    if (moved) {
      scrollTo(0, 0);
      node.querySelector("h1").focus();
    }
  }

  /** Another file is in hand. */
  opened() {
    const { scoring, keeping, shop, link, ledger } = this.#host;
    const box = (name) => el("div", { class: name });
    this.#scoredJobs.clear();
    if (scoring.reply && !scoring.fresh) scoring.reply = null;
    this.#learning = new Learning({ link, ratesText: shop.ratesText, code: shop.opened.rates.check_code });
    this.#parts = {
      head: box("jobs-head"),
      said: el("p", { class: "last-said", role: "status" }),
      acts: box("with-buttons no-paper"),
      act: box("act-box no-paper"),
      waiting: box("no-paper"),
      outcome: box("part"),
      jobs: box("part"),
      causes: box("part"),
      figures: box("part"),
    };
    const { head, said, acts, act, waiting, outcome, jobs, causes, figures } = this.#parts;
    byId("steps").replaceChildren(
      el(
        "ul",
        { class: "jumps" },
        STEPS.map(([id, text]) => el("li", {}, el("a", { href: `#${id}` }, text))),
      ),
    );
    byId("screen").replaceChildren(
      head,
      acts,
      said,
      act,
      waiting,
      scoring.node,
      outcome,
      jobs,
      causes,
      this.#learning.node,
      figures,
    );
    byId("kept").replaceChildren(keeping.node);
    this.#act = null;
    this.draw();
    scrollTo(0, 0);
    head.querySelector("h1").focus({ preventScroll: true });
    if (ledger.file.jobs.length === 0)
      said.textContent = "No job is in the file yet. Enter one by hand, or bring some in.";
  }

  draw() {
    if (!this.#parts) return;
    const { ledger, scoring } = this.#host;
    const { head, acts, outcome, jobs, causes, figures } = this.#parts;
    const { file } = ledger;
    const some = file.jobs.length > 0;
    swap(
      head,
      el("h1", { tabindex: "-1" }, "Past jobs"),
      el(
        "p",
        { class: "jobs-line" },
        [
          file.jobs.length === 1 ? "1 job" : `${file.jobs.length} jobs`,
          file.invented ? "invented, a sample" : null,
          `amounts in ${file.currency}`,
          `check code of these jobs ${ledger.code}`,
        ]
          .filter(Boolean)
          .join(" · "),
      ),
      el(
        "p",
        { class: "paper" },
        `Printed on ${dateText(today())}. ${scoring.fresh || !some ? "" : "Not worked out to the end: figures may be missing."}`,
      ),
    );
    swap(
      acts,
      button("Enter a job", () => this.#open(() => new JobForm(this.#formHost())), { "data-key": "enter" }),
      button("Bring jobs in", () => this.bring(), { "data-key": "bring" }),
      ledger.last &&
        button(`Take back ${ledger.last}`, () => this.#takeBack(), { class: "quiet", "data-key": "undo" }),
    );
    const reply = some ? scoring.reply : null;
    swap(outcome, some && outcomeSection(reply, scoring.fresh));
    swap(
      jobs,
      some &&
        jobsSection({
          file,
          sums: ledger.sums,
          working: !scoring.fresh,
          rowOf: (job) => this.#rowOf(job),
          whyNot: (job) => this.#rowOf(job)?.why ?? null,
          edit: (n) => this.#open(() => new JobForm(this.#formHost(), n)),
        }),
    );
    swap(causes, some && causesSection(reply, scoring.fresh));
    swap(figures, some && statisticsSection(reply));
    if (reply) this.#learning.show(reply, scoring.fresh);
    else this.#learning.clear();
    byId("steps").hidden = !some;
    this.drawWaiting();
  }

  drawWaiting() {
    const { ledger } = this.#host;
    if (this.#parts)
      swap(
        this.#parts.waiting,
        waitingBox(
          ledger.waiting.filter((w) => w !== this.#act?.waiting),
          {
            complete: (w) => this.complete(w),
            leave: (w) => ledger.setWaiting(ledger.waiting.filter((o) => o !== w)),
          },
        ),
      );
  }

  /** What is known of each job belongs to the job as it was when it was scored. */
  scored(reply) {
    const why = new Map(reply.not_scored.map((n) => [n.name, n.why]));
    this.#scoredJobs.clear();
    reply.table.forEach((row, n) =>
      this.#scoredJobs.set(JSON.stringify(this.#host.ledger.file.jobs[n]), {
        ...row,
        why: why.get(row.name) ?? null,
      }),
    );
    this.draw();
  }

  #rowOf(job) {
    return this.#scoredJobs.get(JSON.stringify(job)) ?? null;
  }

  #formHost() {
    const { link, ledger, shop } = this.#host;
    return {
      link,
      ledger,
      opened: shop.opened,
      ratesText: shop.ratesText,
      done: (text) => this.done(text),
      cancel: () => this.#close(),
    };
  }

  bring() {
    const { link, ledger, carFiles, mergeFile } = this.#host;
    return this.#open(
      () =>
        new Bring({
          link,
          ledger,
          carFiles,
          jobsFile: mergeFile,
          done: (text) => this.done(text),
          cancel: () => this.#close(),
        }),
    );
  }

  complete(waiting) {
    this.#open(() => new JobForm(this.#formHost(), null, waiting));
  }

  /** Opens an act; one that holds something typed is asked about first. */
  #open(make, over = false) {
    const { frame } = this.#host;
    if (this.#act?.changed && !over) {
      frame.put(
        "act",
        band(
          "act",
          ["Something is typed that is not with the jobs yet."],
          [
            [
              "Let it go",
              () => {
                frame.put("act", null);
                this.#open(make, true);
              },
            ],
            [
              "Stay with it",
              () => {
                frame.put("act", null);
                this.#focusAct();
              },
            ],
          ],
        ),
      );
      document.querySelector('[data-band="act"] button').focus();
      return this.#act;
    }
    this.#act = make();
    this.#parts.act.replaceChildren(this.#act.node);
    this.#parts.said.textContent = "";
    this.drawWaiting();
    this.#focusAct();
    return this.#act;
  }

  #focusAct() {
    const h = this.#parts.act.querySelector("h2");
    h?.focus();
    h?.scrollIntoView({ block: "start" });
  }

  #close() {
    this.#act = null;
    this.#parts.act.replaceChildren();
    this.drawWaiting();
    this.#parts.acts.querySelector("button").focus();
  }

  /** An act was done: what it did is said, and the next car that waits comes up. */
  done(text) {
    this.#close();
    this.#parts.said.textContent = text;
    const [next] = this.#host.ledger.waiting;
    if (next) {
      this.complete(next);
      this.#parts.said.textContent = text;
    } else this.#parts.said.scrollIntoView({ block: "nearest" });
  }

  async #takeBack() {
    const name = await this.#host.ledger.takeBack();
    this.#parts.said.textContent = name === null ? "Nothing was taken back." : `Taken back: ${name}.`;
    (this.#parts.acts.querySelector("[data-key=undo]") ?? this.#parts.acts.querySelector("button")).focus();
  }
}
