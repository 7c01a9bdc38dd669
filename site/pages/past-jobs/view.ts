// The sections of the page with a file open, and the one act that is open: entering, changing
// or bringing in jobs.

import { button, byId } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Frame } from "../shared/frame.ts";
import type { PastJob } from "../shared/jobsfile.ts";
import type { OpenedReply, ScoresReply } from "../shared/replies.ts";
import { swap } from "../shared/swap.ts";
import { Bring } from "./bring.ts";
import { waitingBox } from "./bringfiles.ts";
import { JobForm, type JobFormHost } from "./jobform.ts";
import { jobsHead, jobsSection, type ScoredJob } from "./jobstable.ts";
import { layOut, newParts, type Parts } from "./layout.ts";
import { Learning } from "./learning.ts";
import type { Ledger } from "./ledger.ts";
import { causesSection, outcomeSection, statisticsSection } from "./outcome.ts";
import type { JobsPanel } from "./savepanel.ts";
import type { Scoring } from "./scoring.ts";
import type { WaitingCar } from "./storage.ts";

/** The shop as the engine has opened it, and the text of its rates. */
export interface Shop {
  opened: OpenedReply;
  ratesText: string;
}

export interface ViewHost {
  client: EngineClient;
  ledger: Ledger;
  frame: Frame;
  scoring: Scoring;
  panel: JobsPanel;
  /** The shop; nothing is drawn before it is known. */
  shop(): Shop;
  carFiles(files: File[]): unknown;
  mergeFile(file: File): unknown;
}

export class View {
  #host: ViewHost;
  #scoredJobs = new Map<string, ScoredJob>();
  /** Null while no file is open. */
  #parts: Parts | null = null;

  constructor(host: ViewHost) {
    this.#host = host;
  }

  /** Shows the page without a file. moved: the reader comes from another view. */
  start(node: HTMLElement, moved: boolean): void {
    this.#parts = null;
    byId("steps").replaceChildren();
    byId("kept").replaceChildren();
    byId("screen").replaceChildren(node);
    if (moved) {
      scrollTo(0, 0);
      node.querySelector("h1")?.focus();
    }
  }

  /** Another file has been opened. */
  opened(): void {
    const { scoring, panel, ledger } = this.#host;
    this.#scoredJobs.clear();
    if (scoring.reply && !scoring.fresh) scoring.reply = null;
    const parts = this.#newParts();
    this.#parts = parts;
    layOut(parts, scoring.node, panel.node);
    this.draw();
    scrollTo(0, 0);
    parts.head.querySelector("h1")?.focus({ preventScroll: true });
    if (ledger.current.jobs.length === 0)
      parts.said.textContent = "No job is in the file yet. Enter one by hand, or bring some in.";
  }

  #newParts(): Parts {
    const { client, frame, shop } = this.#host;
    const { opened, ratesText } = shop();
    return newParts({
      frame,
      learning: new Learning({ client, ratesText, code: opened.rates.check_code }),
      drawWaiting: () => this.drawWaiting(),
    });
  }

  draw(): void {
    if (!this.#parts) return;
    const { ledger, scoring } = this.#host;
    const { head, buttons, outcome, jobs, causes, figures, learning } = this.#parts;
    const file = ledger.current;
    const some = file.jobs.length > 0;
    swap(head, jobsHead(ledger, scoring.fresh || !some));
    swap(
      buttons,
      button("Enter a job", () => this.#enter(), { "data-key": "enter" }),
      button("Bring jobs in", () => this.bring(), { "data-key": "bring" }),
      ledger.last &&
        button(`Take back ${ledger.last}`, () => this.#undo(), { class: "quiet", "data-key": "undo" }),
    );
    const reply = some ? scoring.reply : null;
    swap(outcome, some && outcomeSection(reply, scoring.fresh));
    swap(
      jobs,
      some &&
        jobsSection({
          file,
          amounts: ledger.amounts,
          working: !scoring.fresh,
          rowOf: (job) => this.#scoredJobs.get(JSON.stringify(job)) ?? null,
          edit: (job) => this.#enter(job),
        }),
    );
    swap(causes, some && causesSection(reply, scoring.fresh));
    swap(figures, some && statisticsSection(reply));
    if (reply) learning.show(reply, scoring.fresh);
    else learning.clear();
    byId("steps").hidden = !some;
    this.drawWaiting();
  }

  /** Draws the cars that wait, without the one that the open act completes. */
  drawWaiting(): void {
    if (!this.#parts) return;
    const { ledger } = this.#host;
    const { waiting, act } = this.#parts;
    swap(
      waiting,
      waitingBox(
        ledger.waiting.filter((w) => w !== act.waiting),
        {
          complete: (w) => this.complete(w),
          leave: (w) => ledger.setWaiting(ledger.waiting.filter((o) => o !== w)),
        },
      ),
    );
  }

  /** What is known of a job is only valid for the job as it was when it was scored. */
  scored(reply: ScoresReply): void {
    const why = new Map(reply.not_scored.map((n) => [n.name, n.why]));
    const { jobs } = this.#host.ledger.current;
    this.#scoredJobs.clear();
    for (const [n, row] of reply.table.entries())
      this.#scoredJobs.set(JSON.stringify(jobs[n]), { ...row, why: why.get(row.name) ?? null });
    this.draw();
  }

  #formHost(): JobFormHost {
    const { client, ledger, shop } = this.#host;
    return {
      client,
      ledger,
      ...shop(),
      done: (text) => this.done(text),
      cancel: () => this.#parts?.act.close(),
    };
  }

  #enter(job: PastJob | null = null, waiting: WaitingCar | null = null): void {
    this.#parts?.act.open(() => new JobForm(this.#formHost(), job, waiting));
  }

  complete(waiting: WaitingCar): void {
    this.#enter(null, waiting);
  }

  /** Opens the act of bringing jobs in. table: a file that is read there at once. */
  bring(table?: File): void {
    const { client, ledger, carFiles, mergeFile } = this.#host;
    this.#parts?.act.open(() => {
      const bring = new Bring({
        client,
        ledger,
        carFiles,
        jobsFile: mergeFile,
        done: (text) => this.done(text),
        cancel: () => this.#parts?.act.close(),
      });
      if (table) bring.table(table);
      return bring;
    });
  }

  /** Says what an act has done, closes it and opens the next car that waits. */
  done(text: string): void {
    if (!this.#parts) return;
    const { act, said } = this.#parts;
    act.close();
    said.textContent = text;
    const [next] = this.#host.ledger.waiting;
    if (next) {
      this.complete(next);
      said.textContent = text;
    } else said.scrollIntoView({ block: "nearest" });
  }

  async #undo(): Promise<void> {
    const name = await this.#host.ledger.undo();
    if (!this.#parts) return;
    const { said, buttons } = this.#parts;
    said.textContent = name === null ? "Nothing was taken back." : `Taken back: ${name}.`;
    const again = buttons.querySelector<HTMLElement>("[data-key=undo]");
    (again ?? buttons.querySelector("button"))?.focus();
  }
}
