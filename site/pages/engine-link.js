// The page's side of the engine: promises that always settle, newer range
// requests overtaking older ones, and a new worker when the old one dies.

/** A worker that says nothing for this long is taken for dead. One slice of
 *  work is about a twentieth of a second, so this is very generous. */
const SILENCE_MS = 20000;
const LOAD_SILENCE_MS = 60000;
/** A request that kills the engine twice is given up, or it would do so for ever. */
const MOST_DEATHS = 2;

export class Overtaken extends Error {}
export class EngineDied extends Error {}

export class EngineLink {
  #worker = null;
  #ready = null;
  #settleReady = null;
  #pending = new Map();
  #nextId = 1;
  #timer = 0;
  #opening = null;
  #hooks;
  #engine;

  /** hooks: loading(bytes), restarted(). The customer's page names an engine of its
   *  own, which answers what that page asks and is smaller. */
  constructor(hooks, engine = "engine.wasm") { this.#hooks = hooks; this.#engine = engine; this.#begin(); }

  #begin() {
    this.#ready = new Promise((resolve, reject) => { this.#settleReady = { resolve, reject }; });
    this.#ready.catch(() => {});
    try {
      this.#worker = new Worker(new URL("worker.js", import.meta.url));
    } catch (error) { this.#settleReady.reject(new EngineDied(String(error))); return; }
    this.#worker.onmessage = ({ data }) => this.#hear(data);
    this.#worker.onerror = (event) => { event.preventDefault(); this.#died(event.message || "the worker failed"); };
    this.#worker.onmessageerror = () => this.#died("a message could not be read");
    this.#worker.postMessage({ kind: "start", engine: this.#engine });
    this.#watch(LOAD_SILENCE_MS);
  }

  #watch(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#died("no answer"), ms);
  }

  #hear(data) {
    if (data.kind === "dead") { this.#died(data.text); return; }
    if (data.kind === "loading") { this.#watch(LOAD_SILENCE_MS); this.#hooks.loading(data.loaded); return; }
    if (data.kind === "ready") { clearTimeout(this.#timer); this.#settleReady.resolve(); return; }
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
    if (data.reply.kind === "broken") this.#died(data.reply.text);
  }

  /** Ends the old worker, starts another, opens the same rates, and asks again
   *  what was not answered. */
  #died(text) {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = null;
    this.#settleReady.reject(new EngineDied(text));
    const again = [...this.#pending.values()];
    this.#pending.clear();
    const failedWhileOpening = again.some((w) => w.request.ask === "open") || this.#opening === null;
    if (failedWhileOpening) {
      for (const w of again) w.reject(new EngineDied(text));
      return;
    }
    this.#begin();
    const opened = this.#send("ask", { ask: "open", rates: this.#opening }, () => {}, 0);
    opened.then(() => this.#hooks.restarted(), () => {});
    for (const w of again) {
      if (w.deaths + 1 >= MOST_DEATHS) { w.reject(new EngineDied(text)); continue; }
      opened.then(() => this.#send(w.kind, w.request, w.update, w.deaths + 1)).then(w.resolve, w.reject);
    }
  }

  async #send(kind, request, update, deaths) {
    await this.#ready;
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      if (!this.#worker) { reject(new EngineDied("the worker is gone")); return; }
      this.#pending.set(id, { kind, request, update, deaths, resolve, reject });
      this.#watch(SILENCE_MS);
      this.#worker.postMessage({ kind, id, request });
    });
  }

  /** Loads the rates; must be called first, and is repeated after a death. */
  async open(rates) {
    const reply = await this.#send("ask", { ask: "open", rates }, () => {}, 0);
    if (reply.kind === "opened") this.#opening = rates;
    return reply;
  }

  ask(request) { return this.#send("ask", request, () => {}, 0); }

  /** update(reply) is called for every rough answer; the promise gives the last. */
  range(request, update) { return this.refine({ ask: "range", ...request }, update); }

  /** The same for any request that is answered better and better. A newer one
   *  overtakes it, whatever it asks. */
  refine(request, update) { return this.#send("refine", request, update, 0); }

  /** Nobody waits any more for what is being refined. */
  stop() { this.#worker?.postMessage({ kind: "stop" }); }
}
