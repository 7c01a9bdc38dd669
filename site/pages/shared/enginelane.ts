// One worker with the engine in it. Its promises always settle, and when the worker dies a new
// one with the same rates takes over.

import { ofBuild } from "./address.ts";
import type { CompiledEngine } from "./engineload.ts";
import type { BrokenReply } from "./replies.ts";
import type { Ask, EngineRequest, ReplyTo, Update } from "./requests.ts";
import type { AnswerKind, FromWorker, ToWorker } from "./workermessages.ts";

/** A worker that says nothing for this long counts as dead. One slice of work takes about a
 *  twentieth of a second, so this is very generous. */
const SILENCE_MS = 20000;
const START_SILENCE_MS = 60000;
/** A request that kills the engine twice is not repeated, or it would do so for ever. */
const MOST_DEATHS = 2;

/** A newer request took the place of this one. */
export class Overtaken extends Error {}
/** The worker ended, and this request was not answered. */
export class EngineDied extends Error {}

/** What the engine said of a mistake of its own. The customer's engine says it only on the
 *  console. */
const whatBroke = ({ text, panic, stack = [] }: BrokenReply): string => [panic ?? text, ...stack].join("\n");

export interface LaneHooks {
  /** Called once another worker has taken over. */
  restarted(): void;
  /** Called with what is known of why the last worker ended. */
  mistake?(text: string): void;
}

/** A request without its last reply yet. One map has requests of all kinds, so it does not
 *  know which reply belongs to which request; send does. */
interface Waiting {
  kind: AnswerKind;
  request: EngineRequest;
  update: (reply: ReplyTo<Ask>) => void;
  aside: boolean;
  deaths: number;
  resolve: (reply: ReplyTo<Ask>) => void;
  reject: (reason: Error) => void;
}

export class Lane {
  /** True once no worker could be started with the rates. */
  gone = false;
  #worker: Worker | null = null;
  #ready!: Promise<void>;
  #settleReady!: { resolve: () => void; reject: (reason: Error) => void };
  #isReady = false;
  #byName = false;
  #pending = new Map<number, Waiting>();
  #nextId = 1;
  #timer = 0;
  #opening: string | null = null;
  #code: Promise<CompiledEngine>;
  #hooks: LaneHooks;

  constructor(code: Promise<CompiledEngine>, hooks: LaneHooks) {
    this.#code = code;
    this.#hooks = hooks;
    this.#begin();
  }

  #begin(): void {
    this.#ready = new Promise((resolve, reject) => {
      this.#settleReady = { resolve, reject };
    });
    this.#ready.catch(() => {});
    this.#launch();
  }

  #launch(): void {
    this.#isReady = false;
    let worker: Worker;
    try {
      worker = new Worker(ofBuild("worker.js"));
    } catch (error) {
      this.#giveUp(String(error));
      return;
    }
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#hear(data);
    worker.onerror = (event) => {
      event.preventDefault();
      this.#died(event.message || "the worker failed");
    };
    worker.onmessageerror = () => this.#died("a message could not be read");
    this.#code.then(
      (code) => {
        if (worker === this.#worker) this.#start(code);
      },
      (error) => {
        if (worker === this.#worker) {
          this.#byName = true;
          this.#died(String(error?.message ?? error));
        }
      },
    );
  }

  /** Gives the compiled engine to the worker. In a browser that cannot send it, the worker gets
   *  the name, and loads and compiles the engine itself. */
  #start({ module, name, sum }: CompiledEngine): void {
    this.#watch(START_SILENCE_MS);
    if (!this.#byName) {
      try {
        this.#tell({ kind: "start", module });
        return;
      } catch {
        this.#byName = true;
      }
    }
    this.#tell({ kind: "start", name, sum });
  }

  #tell(message: ToWorker): void {
    this.#worker?.postMessage(message);
  }

  #watch(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#died("no answer"), ms);
  }

  #hear(data: FromWorker): void {
    if (data.kind === "dead") {
      this.#died(data.text);
      return;
    }
    if (data.kind === "ready") {
      clearTimeout(this.#timer);
      this.#isReady = true;
      this.#settleReady.resolve();
      return;
    }
    const waiting = this.#pending.get(data.id);
    if (data.kind === "reply" && waiting && !data.last) {
      this.#watch(SILENCE_MS);
      waiting.update(data.reply);
      return;
    }
    this.#pending.delete(data.id);
    if (this.#pending.size === 0) clearTimeout(this.#timer);
    else this.#watch(SILENCE_MS);
    if (!waiting) return;
    if (data.kind === "overtaken") {
      waiting.reject(new Overtaken());
      return;
    }
    waiting.resolve(data.reply);
    // After a broken reply the engine's memory may be wrong.
    if (data.reply.kind === "broken") this.#died(whatBroke(data.reply));
  }

  #giveUp(text: string): void {
    this.gone = true;
    this.#settleReady.reject(new EngineDied(text));
    for (const w of this.#pending.values()) w.reject(new EngineDied(text));
    this.#pending.clear();
  }

  /** Ends the old worker, starts another, opens the same rates, and repeats the requests that
   *  were not answered. */
  #died(text: string): void {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = null;
    if (!this.#isReady && !this.#byName) {
      this.#byName = true;
      this.#launch();
      return;
    }
    this.#hooks.mistake?.(text);
    const again = [...this.#pending.values()];
    if (this.#opening === null || again.some((w) => w.request.ask === "open")) {
      this.#giveUp(text);
      return;
    }
    this.#settleReady.reject(new EngineDied(text));
    this.#pending.clear();
    this.#begin();
    const opened = this.#send("ask", { ask: "open", rates: this.#opening }, () => {}, false, 0);
    opened.then(
      () => this.#hooks.restarted(),
      () => {},
    );
    for (const w of again) {
      if (w.deaths + 1 >= MOST_DEATHS) {
        w.reject(new EngineDied(text));
        continue;
      }
      opened
        .then(() => this.#send(w.kind, w.request, w.update, w.aside, w.deaths + 1))
        .then(w.resolve, w.reject);
    }
  }

  async #send<A extends Ask>(
    kind: AnswerKind,
    request: EngineRequest<A>,
    update: Update<A>,
    aside: boolean,
    deaths: number,
  ): Promise<ReplyTo<A>> {
    await this.#ready;
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      if (!this.#worker) {
        reject(new EngineDied("the worker is gone"));
        return;
      }
      const waiting = { kind, request, update, aside, deaths, resolve, reject } as Waiting;
      this.#pending.set(id, waiting);
      this.#watch(SILENCE_MS);
      this.#tell({ kind, id, request: waiting.request, aside });
    });
  }

  /** Loads the rates. The page calls it first; the lane repeats it after a death. */
  async open(rates: string): Promise<ReplyTo<"open">> {
    const reply = await this.#send("ask", { ask: "open", rates }, () => {}, false, 0);
    if (reply.kind === "opened") this.#opening = rates;
    return reply;
  }

  /** Calls update with every reply but the last, which the promise gives. */
  send<A extends Ask>(
    kind: AnswerKind,
    request: EngineRequest<A>,
    update: Update<A>,
    aside: boolean,
  ): Promise<ReplyTo<A>> {
    return this.#send(kind, request, update, aside, 0);
  }

  /** Stops what is being refined, because nobody waits for it any more. */
  stop(): void {
    this.#tell({ kind: "stop" });
  }
}
