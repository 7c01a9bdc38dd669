// The page's side of the engine: which worker answers what. The range, and what recording
// waits for, have a worker of their own. Other requests, which may take seconds, go to a
// second worker on machines with enough cores.

import { EngineDied, Lane, type LaneHooks, Overtaken } from "./enginelane.ts";
import { loadEngine } from "./engineload.ts";
import type { Ask, EngineRequest, ReplyTo, Update } from "./requests.ts";

export { EngineDied, Overtaken };

/** A second worker needs this many cores: one for the page, one for each worker, one for
 *  everything else that runs. A machine with fewer also has little memory (assumption). */
const CORES_FOR_TWO = 4;

export interface EngineHooks extends LaneHooks {
  /** Called with the number of bytes of the engine that have come so far. */
  loading(bytes: number): void;
}

export class EngineClient {
  #main: Lane;
  #side: Lane | null = null;
  #code: ReturnType<typeof loadEngine>;
  #rates: string | null = null;
  #aside: Set<Ask>;
  #hooks: EngineHooks;
  #cores = navigator.hardwareConcurrency ?? 1;

  /** engine: its file. The customer's page has a smaller engine, which answers only what that
   *  page asks. aside: the requests that the second worker answers. Requests that build on
   *  each other must go to the same worker. */
  constructor(hooks: EngineHooks, engine = "engine.wasm", aside: Ask[] = []) {
    this.#hooks = hooks;
    this.#aside = new Set(aside);
    this.#code = loadEngine(engine, hooks.loading);
    this.#main = new Lane(this.#code, hooks);
  }

  /** The worker that answers a request. The second one starts when it is first needed; if it
   *  cannot, the first answers everything. */
  #laneOf(ask: Ask): Lane {
    if (!this.#aside.has(ask) || this.#cores < CORES_FOR_TWO || this.#rates === null || this.#side?.gone) {
      return this.#main;
    }
    if (!this.#side) {
      this.#side = new Lane(this.#code, this.#hooks);
      this.#side.open(this.#rates).catch(() => {});
    }
    return this.#side;
  }

  async #send<A extends Ask>(
    kind: "ask" | "refine",
    request: EngineRequest<A>,
    update: Update<A>,
  ): Promise<ReplyTo<A>> {
    const lane = this.#laneOf(request.ask);
    const aside = this.#aside.has(request.ask);
    if (kind === "refine" && !aside) this.#side?.stop();
    try {
      return await lane.send(kind, request, update, aside);
    } catch (error) {
      if (lane === this.#main || !lane.gone || !(error instanceof EngineDied)) throw error;
      return this.#main.send(kind, request, update, aside);
    }
  }

  /** Loads the rates; must be called first. */
  async open(rates: string): Promise<ReplyTo<"open">> {
    const reply = await this.#main.open(rates);
    if (reply.kind === "opened") {
      this.#rates = rates;
      this.#side?.open(rates).catch(() => {});
    }
    return reply;
  }

  ask<A extends Ask>(request: EngineRequest<A>): Promise<ReplyTo<A>> {
    return this.#send("ask", request, () => {});
  }

  /** Calls update with every rough reply; the promise gives the last one. */
  range(request: Omit<EngineRequest<"range">, "ask">, update: Update<"range">): Promise<ReplyTo<"range">> {
    return this.refine({ ask: "range", ...request }, update);
  }

  /** The same for any request whose reply gets better and better. A newer one overtakes it,
   *  whatever it asks; but one that is asked aside does not stop the range. */
  refine<A extends Ask>(request: EngineRequest<A>, update: Update<A>): Promise<ReplyTo<A>> {
    return this.#send("refine", request, update);
  }

  /** Stops what is being refined, because nobody waits for it any more. */
  stop(): void {
    this.#main.stop();
    this.#side?.stop();
  }
}
