// What a page and its engine's worker send each other. shared/enginelane.ts is the page's
// side, workers/engine.ts the worker's.

import type { Ask, ReplyTo } from "./requests.ts";

/** How a request is answered: once, or better and better. */
export type AnswerKind = "ask" | "refine";

/** The engine, compiled by the page, or its name and its sum where no module comes through. */
export type StartMessage =
  | { kind: "start"; module: WebAssembly.Module }
  | { kind: "start"; name: string; sum: string };

/** A request, which the worker gives to the engine as it is. aside: it waits while the page
 *  waits for a range. */
export interface RequestMessage {
  kind: AnswerKind;
  id: number;
  request: { ask: Ask };
  aside: boolean;
}

/** "stop": nobody waits any more for what is being refined. */
export type ToWorker = StartMessage | RequestMessage | { kind: "stop" };

export type FromWorker =
  /** The engine has started. */
  | { kind: "ready" }
  /** The engine cannot go on. */
  | { kind: "dead"; text: string }
  /** last is false for the rough replies of a request that is being refined. */
  | { kind: "reply"; id: number; last: boolean; reply: ReplyTo<Ask> }
  /** The request was stopped, or a newer one took its place. */
  | { kind: "overtaken"; id: number };
