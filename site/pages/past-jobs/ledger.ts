// The open file of past jobs. The engine reads every change before it counts: a change with
// a fault leaves the last good file in force, here and in the engine.

import type { EngineClient } from "../shared/engineclient.ts";
import type { JobsFile } from "../shared/jobsfile.ts";
import type { RatesFile } from "../shared/ratesfile.ts";
import type { JobAmounts } from "../shared/replies.ts";
import type { FileFault } from "./faults.ts";
import type { WaitingCar } from "./storage.ts";

const FORMAT = "underpaint past jobs 1";
const MOST_BACK = 50;

export const blankFile = (currency: string): JobsFile => ({ format: FORMAT, currency, rates: [], jobs: [] });

export interface LedgerHost {
  client: EngineClient;
  /** Called after every change that counts: of the file, or of the waiting cars alone. */
  told(what: "file" | "waiting"): void;
}

/** The check code of rates and their line, or the faults that they have. */
export type RatesCode =
  | { code: string; line: string; faults?: undefined }
  | { code?: undefined; line?: undefined; faults: FileFault[] };

/** What the engine says of a text. */
type Checked = { code: string; amounts: JobAmounts[]; faults?: undefined } | { faults: FileFault[] };

interface Before {
  text: string;
  file: JobsFile;
  waiting: WaitingCar[];
  /** The change that followed, in words. */
  name: string;
}

export class Ledger {
  /** The file, or null while none is open. */
  file: JobsFile | null = null;
  code = "";
  /** The amounts of each job of the file in words. */
  amounts: JobAmounts[] = [];
  /** Cars that are still to become jobs. */
  waiting: WaitingCar[] = [];
  #text = "";
  #saved = "";
  #back: Before[] = [];
  #codes = new Map<string, RatesCode>();
  #host: LedgerHost;

  constructor(host: LedgerHost) {
    this.#host = host;
  }

  /** The file, for whoever works only while one is open. */
  get current(): JobsFile {
    if (!this.file) throw new Error("no file of past jobs is open");
    return this.file;
  }

  /** Reads a text and opens it if nothing is wrong with it. Gives the faults otherwise. */
  async open(
    text: string,
    { saved = false, waiting = [] }: { saved?: boolean; waiting?: WaitingCar[] } = {},
  ): Promise<FileFault[]> {
    const reply = await this.#check(text);
    if (reply.faults) return reply.faults;
    this.#back = [];
    this.waiting = waiting;
    this.#set(text, JSON.parse(text) as JobsFile, reply);
    if (saved) this.#saved = text;
    return [];
  }

  /** The same for a change of the open file. next: the file with the change. name: the change
   *  in words, for undoing it. waiting: the cars that wait after it. */
  async change(next: object, name: string, waiting = this.waiting): Promise<FileFault[]> {
    const text = JSON.stringify(next);
    const before = { text: this.#text, file: this.current, waiting: this.waiting, name };
    const reply = await this.#check(text);
    if (reply.faults) return reply.faults;
    this.#back.push(before);
    if (this.#back.length > MOST_BACK) this.#back.shift();
    this.waiting = waiting;
    this.#set(text, next as JobsFile, reply);
    return [];
  }

  /** The change that undo would undo, in words, or null. */
  get last(): string | null {
    return this.#back.at(-1)?.name ?? null;
  }

  /** Undoes the last change and gives its name; null when nothing was undone. */
  async undo(): Promise<string | null> {
    const last = this.#back.at(-1);
    if (!last) return null;
    const reply = await this.#check(last.text);
    if (reply.faults) return null;
    this.#back.pop();
    this.waiting = last.waiting;
    this.#set(last.text, last.file, reply);
    return last.name;
  }

  close(): void {
    this.file = null;
    this.#text = "";
    this.#saved = "";
    this.code = "";
    this.amounts = [];
    this.#back = [];
    this.waiting = [];
  }

  /** Cars that wait are no part of the file. */
  setWaiting(waiting: WaitingCar[]): void {
    this.waiting = waiting;
    this.#host.told("waiting");
  }

  /** Gives the file to the engine again, which forgets it when it is started again. */
  async again(): Promise<void> {
    if (this.file) await this.#check(this.#text);
  }

  text(): string {
    return this.#text;
  }
  /** The file was saved just now. */
  saved(): void {
    this.#saved = this.#text;
  }
  get unsaved(): boolean {
    return this.file !== null && this.#text !== this.#saved;
  }

  /** today: as 2026-06-20. */
  async codeOf(ratesText: string, today: string): Promise<RatesCode> {
    const known = this.#codes.get(ratesText);
    if (known) return known;
    const reply = await this.#host.client.ask({ ask: "check_rates", rates: ratesText, today });
    const found: RatesCode =
      reply.kind !== "rates_checked"
        ? { faults: [whole(reply)] }
        : reply.ok
          ? { code: reply.check_code, line: reply.rates_line }
          : { faults: reply.faults };
    this.#codes.set(ratesText, found);
    return found;
  }

  /** The rates in a file of past jobs, each with its check code. */
  async codes(
    today: string,
    file: Pick<JobsFile, "rates"> = this.current,
  ): Promise<(RatesCode & { rates: RatesFile })[]> {
    const all = [];
    for (const rates of file.rates) all.push({ rates, ...(await this.codeOf(JSON.stringify(rates), today)) });
    return all;
  }

  async #check(text: string): Promise<Checked> {
    const reply = await this.#host.client.ask({ ask: "open_jobs", jobs: text });
    if (reply.kind !== "jobs_checked") return { faults: [whole(reply)] };
    return reply.ok ? { code: reply.check_code, amounts: reply.sums } : { faults: reply.faults };
  }

  #set(text: string, file: JobsFile, { code, amounts }: { code: string; amounts: JobAmounts[] }): void {
    this.#text = text;
    this.file = file;
    this.code = code;
    this.amounts = amounts;
    this.#host.told("file");
  }
}

/** What stops a whole request, as a fault. */
const whole = (reply: { path?: string; text: string }): FileFault => ({
  path: reply.path ?? "",
  text: reply.text,
});
