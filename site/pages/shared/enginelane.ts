// One worker with the engine in it: promises that always settle, and a new worker
// with the same rates when the old one dies.

import { ofBuild } from "./address.ts";

/** A worker that says nothing for this long is taken for dead. One slice of
 *  work is about a twentieth of a second, so this is very generous. */
const SILENCE_MS = 20000;
const START_SILENCE_MS = 60000;
/** A request that kills the engine twice is given up, or it would do so for ever. */
const MOST_DEATHS = 2;

export class Overtaken extends Error {}
export class EngineDied extends Error {}

/** What the engine told of a mistake of its own; the customer's engine tells it on the
 *  console alone. */
const whatBroke = ({ text, panic, stack = [] }) => [panic ?? text, ...stack].join("\n");

export class Lane {
  /** True once no worker could be started with the rates. */
  gone = false;
  #worker = null;
  #ready = null;
  #settleReady = null;
  #isReady = false;
  #byName = false;
  #pending = new Map();
  #nextId = 1;
  #timer = 0;
  #opening = null;
  #code;
  #restarted;
  #mistake;

  /** code: the promise of engine-load.js. restarted() is called once another worker
   *  has taken over, mistake(text) with what is known of why the last one ended. */
  constructor(code, { restarted, mistake = () => {} }) { this.#code = code; this.#restarted = restarted; this.#mistake = mistake; this.#begin(); }

  #begin() {
    this.#ready = new Promise((resolve, reject) => { this.#settleReady = { resolve, reject }; });
    this.#ready.catch(() => {});
    this.#launch();
  }

  #launch() {
    this.#isReady = false;
    let worker;
    try {
      worker = new Worker(ofBuild("worker.js"));
    } catch (error) { this.#giveUp(String(error)); return; }
    this.#worker = worker;
    worker.onmessage = ({ data }) => this.#hear(data);
    worker.onerror = (event) => { event.preventDefault(); this.#died(event.message || "the worker failed"); };
    worker.onmessageerror = () => this.#died("a message could not be read");
    this.#code.then((code) => { if (worker === this.#worker) this.#start(code); },
      (error) => { if (worker === this.#worker) { this.#byName = true; this.#died(String(error?.message ?? error)); } });
  }

  /** Hands the compiled engine over; a browser that does not let it through gets the
   *  name, and the worker loads and compiles it by itself. */
  #start({ module, name, sum }) {
    this.#watch(START_SILENCE_MS);
    if (!this.#byName) {
      try { this.#worker.postMessage({ kind: "start", module }); return; } catch { this.#byName = true; }
    }
    this.#worker.postMessage({ kind: "start", name, sum });
  }

  #watch(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#died("no answer"), ms);
  }

  #hear(data) {
    if (data.kind === "dead") { this.#died(data.text); return; }
    if (data.kind === "ready") { clearTimeout(this.#timer); this.#isReady = true; this.#settleReady.resolve(); return; }
    const waiting = this.#pending.get(data.id);
    if (data.kind === "reply" && waiting && !data.last) {
      this.#watch(SILENCE_MS);
      waiting.update(data.reply);
      return;
    }
    this.#pending.delete(data.id);
    if (this.#pending.size === 0) clearTimeout(this.#timer); else this.#watch(SILENCE_MS);
    if (!waiting) return;
    if (data.kind === "overtaken") { waiting.reject(new Overtaken()); return; }
    waiting.resolve(data.reply);
    // After a broken answer the engine's memory is not to be trusted.
    if (data.reply.kind === "broken") this.#died(whatBroke(data.reply));
  }

  #giveUp(text) {
    this.gone = true;
    this.#settleReady.reject(new EngineDied(text));
    for (const w of this.#pending.values()) w.reject(new EngineDied(text));
    this.#pending.clear();
  }

  /** Ends the old worker, starts another, opens the same rates, and asks again
   *  what was not answered. */
  #died(text) {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = null;
    if (!this.#isReady && !this.#byName) { this.#byName = true; this.#launch(); return; }
    this.#mistake(text);
    const again = [...this.#pending.values()];
    if (this.#opening === null || again.some((w) => w.request.ask === "open")) { this.#giveUp(text); return; }
    this.#settleReady.reject(new EngineDied(text));
    this.#pending.clear();
    this.#begin();
    const opened = this.#send("ask", { ask: "open", rates: this.#opening }, () => {}, false, 0);
    opened.then(() => this.#restarted(), () => {});
    for (const w of again) {
      if (w.deaths + 1 >= MOST_DEATHS) { w.reject(new EngineDied(text)); continue; }
      opened.then(() => this.#send(w.kind, w.request, w.update, w.aside, w.deaths + 1)).then(w.resolve, w.reject);
    }
  }

  async #send(kind, request, update, aside, deaths) {
    await this.#ready;
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      if (!this.#worker) { reject(new EngineDied("the worker is gone")); return; }
      this.#pending.set(id, { kind, request, update, aside, deaths, resolve, reject });
      this.#watch(SILENCE_MS);
      this.#worker.postMessage({ kind, id, request, aside });
    });
  }

  /** Loads the rates; must be called first, and is repeated after a death. */
  async open(rates) {
    const reply = await this.#send("ask", { ask: "open", rates }, () => {}, false, 0);
    if (reply.kind === "opened") this.#opening = rates;
    return reply;
  }

  /** kind: "ask" or "refine"; update(reply) for every answer but the last. */
  send(kind, request, update, aside) { return this.#send(kind, request, update, aside, 0); }

  /** Nobody waits any more for what is being refined. */
  stop() { this.#worker?.postMessage({ kind: "stop" }); }
}
