// The file of past jobs in hand. A change is read by the engine before it counts:
// with a fault the last good file stays in force, here and in the engine.

const FORMAT = "underpaint past jobs 1";
const MOST_BACK = 50;

export const blankFile = (currency) => ({ format: FORMAT, currency, rates: [], jobs: [] });

export class Ledger {
  /** The file, or null while none is open. */
  file = null;
  code = "";
  /** The amounts of each job of the file in words: {came_to_text, said_text}. */
  sums = [];
  /** Names of car files that are still to become jobs: {name, car}. */
  waiting = [];
  #text = "";
  #saved = "";
  #back = [];
  #codes = new Map();
  #host;

  /** host: link, told() after every change that counts */
  constructor(host) {
    this.#host = host;
  }

  /** Reads a text and, when it is whole, makes it the file in hand. Gives the
   *  faults, each with its path; none when it was taken. */
  async open(text, { saved = false, waiting = [] } = {}) {
    const reply = await this.#check(text);
    if (reply.faults) return reply.faults;
    this.#back = [];
    this.waiting = waiting;
    this.#set(text, JSON.parse(text), reply);
    if (saved) this.#saved = text;
    return [];
  }

  /** The same for a change of the file in hand. name: the change in words, for
   *  taking it back. waiting: the cars still to complete after it. */
  async change(next, name, waiting = this.waiting) {
    const text = JSON.stringify(next);
    const before = { text: this.#text, file: this.file, waiting: this.waiting, name };
    const reply = await this.#check(text);
    if (reply.faults) return reply.faults;
    this.#back.push(before);
    if (this.#back.length > MOST_BACK) this.#back.shift();
    this.waiting = waiting;
    this.#set(text, next, reply);
    return [];
  }

  /** What taking back would take back, in words, or null. */
  get last() {
    return this.#back.at(-1)?.name ?? null;
  }

  async takeBack() {
    const last = this.#back.at(-1);
    if (!last) return null;
    const reply = await this.#check(last.text);
    if (reply.faults) return null;
    this.#back.pop();
    this.waiting = last.waiting;
    this.#set(last.text, last.file, reply);
    return last.name;
  }

  close() {
    this.file = null;
    this.#text = "";
    this.#saved = "";
    this.code = "";
    this.sums = [];
    this.#back = [];
    this.waiting = [];
  }

  /** Cars that wait are no part of the file. */
  setWaiting(waiting) {
    this.waiting = waiting;
    this.#host.told("waiting");
  }

  /** The engine forgets what it had in hand when it is started again. */
  async again() {
    if (this.file) await this.#check(this.#text);
  }

  text() {
    return this.#text;
  }
  saved() {
    this.#saved = this.#text;
  }
  get unsaved() {
    return this.file !== null && this.#text !== this.#saved;
  }

  /** The check code of a rates file, or the faults that it has. */
  async codeOf(ratesText, today) {
    const known = this.#codes.get(ratesText);
    if (known) return known;
    const reply = await this.#host.link.ask({ ask: "check_rates", rates: ratesText, today });
    const found =
      reply.kind === "refused"
        ? { faults: [{ path: reply.path ?? "", text: reply.text }] }
        : reply.ok
          ? { code: reply.check_code, line: reply.rates_line }
          : { faults: reply.faults };
    this.#codes.set(ratesText, found);
    return found;
  }

  /** The rates in the file, each with its check code. */
  async codes(today, file = this.file) {
    const all = [];
    for (const rates of file.rates) all.push({ rates, ...(await this.codeOf(JSON.stringify(rates), today)) });
    return all;
  }

  async #check(text) {
    const reply = await this.#host.link.ask({ ask: "open_jobs", jobs: text });
    if (reply.kind === "jobs_checked" && reply.ok) return { code: reply.check_code, sums: reply.sums };
    if (reply.kind === "jobs_checked") return { faults: reply.faults };
    return { faults: [{ path: reply.path ?? "", text: reply.text }] };
  }

  #set(text, file, { code, sums }) {
    this.#text = text;
    this.file = file;
    this.code = code;
    this.sums = sums;
    this.#host.told("file");
  }
}
