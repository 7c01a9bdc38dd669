// The engine's own thread. Every request has an id and is answered under that id, or the page
// is told that the engine died. shared/workermessages.ts lists the messages.

import type { Ask, ReplyTo } from "../shared/requests.ts";
import type {} from "../shared/trustedtypesapi.ts";
import type { FromWorker, RequestMessage, StartMessage, ToWorker } from "../shared/workermessages.ts";

declare const self: DedicatedWorkerGlobalScope;

/** What wasm_exec.js, which comes with the Go compiler, defines. */
declare class Go {
  env: Record<string, string>;
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

declare global {
  /** The part of a file system that wasm_exec.js makes for the program's output. */
  var fs: { writeSync(file: number, bytes: Uint8Array): number };
  /** Defined by the program once it runs: a request and its reply as JSON. */
  var underpaintAsk: ((request: string) => string) | undefined;
}

// As shared/trustedtypes.ts does for the page: one address may become a script here.
globalThis.trustedTypes?.createPolicy("default", {
  createScriptURL: (name) => (name === "wasm_exec.js" ? name : null),
});

const tell = (message: FromWorker): void => self.postMessage(message);

/** The request that is being refined, and the one aside; 0 for none. */
const newest = { main: 0, aside: 0 };

function dead(error: unknown): void {
  const text = String((error instanceof Error && error.message) || error);
  tell({ kind: "dead", text: [text, written].filter(Boolean).join("\n").trim() });
}

// At once, while the page is still loading the engine.
importScripts("wasm_exec.js");

/** The last output of the program. It is the only sign of an end that Go cannot recover from,
 *  such as memory that is used up. The loader shows it on the console. */
let written = "";
const MOST_WRITTEN = 8000;
const { writeSync } = globalThis.fs;
globalThis.fs.writeSync = (file, bytes) => {
  written = (written + new TextDecoder().decode(bytes)).slice(-MOST_WRITTEN);
  return writeSync(file, bytes);
};

/** Compiles the engine from its bytes, whatever type the host says they have. */
async function loaded(name: string, sum: string): Promise<WebAssembly.Module> {
  const response = await fetch(name, { integrity: sum });
  if (!response.ok) throw new Error(`the engine could not be loaded (${response.status})`);
  return WebAssembly.compile(await response.arrayBuffer());
}

async function start(message: StartMessage): Promise<void> {
  const go = new Go();
  // Phones end a page that takes much memory. The limit makes Go collect garbage sooner; it
  // does not stop the program. Without it a whole survey with door gaps, everything worked out,
  // takes 112 MB, with it 64.
  go.env = { GOGC: "50", GOMEMLIMIT: "40MiB" };
  const module = "module" in message ? message.module : await loaded(message.name, message.sum);
  const instance = await WebAssembly.instantiate(module, go.importObject);
  go.run(instance).then(() => dead("the engine ended"), dead);
  if (typeof globalThis.underpaintAsk !== "function") throw new Error("the engine did not start");
  tell({ kind: "ready" });
}

type Reply = ReplyTo<Ask>;

function textOf(request: object, id: number): string {
  if (!globalThis.underpaintAsk) throw new Error("the engine has not started");
  return globalThis.underpaintAsk(JSON.stringify({ ...request, id }));
}

/** Lets the worker read messages that came in meanwhile before the next slice of work. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      resolve();
    };
    channel.port2.postMessage(null);
  });
}

/** A quarter of the silence after which shared/enginelane.ts takes a worker for dead. */
const LONGEST_SILENCE_MS = 5000;

let lastAside = Promise.resolve();

/** Answers requests that were asked aside in turn: each one once nothing is being refined that
 *  somebody looks at, and the messages that came in meanwhile have been read. */
function inTurn(answer: () => void): void {
  lastAside = lastAside
    .then(async () => {
      do await breathe();
      while (newest.main !== 0);
      answer();
    })
    .catch(dead);
}

const unfinished = (reply: Reply): boolean =>
  "state" in reply && (reply.state === "rough" || reply.state === "refining");

/** How long quiet slices may follow one that was shown. */
const QUIET_MS = 400;

/** Asks again and again until the reply has settled. Only the newest request is refined, and
 *  beside it one that was asked aside, which waits for its turn. A range takes an effort; other
 *  requests are just repeated. */
async function refine({ id, request, aside }: RequestMessage): Promise<void> {
  const slot = aside ? "aside" : "main";
  newest[slot] = id;
  if (!aside) newest.aside = 0;
  const isRange = request.ask === "range";
  let effort: { effort: "rough" | "settle"; quiet?: boolean } = { effort: "rough" };
  let shown = 0;
  let posted = 0;
  let said = "";
  for (;;) {
    while (aside && newest.main !== 0 && newest.aside === id) await breathe();
    if (newest[slot] !== id) {
      tell({ kind: "overtaken", id });
      return;
    }
    const text = textOf(isRange ? { ...request, ...effort } : request, id);
    const reply: Reply = JSON.parse(text);
    if (!unfinished(reply)) {
      newest[slot] = 0;
      tell({ kind: "reply", id, last: true, reply });
      return;
    }
    if (!isRange || "rows" in reply) {
      shown = performance.now();
      // The page would draw the same again for an unchanged reply. But a worker that says
      // nothing for long counts as dead.
      if (text !== said || shown - posted > LONGEST_SILENCE_MS) {
        tell({ kind: "reply", id, last: false, reply });
        posted = shown;
      }
      said = text;
    }
    await breathe();
    // A quiet slice only adds simulated cars; writing out the range costs as much again.
    effort = { effort: "settle", quiet: performance.now() - shown < QUIET_MS };
  }
}

function ask({ id, request, aside }: RequestMessage): void {
  const answer = (): void => tell({ kind: "reply", id, last: true, reply: JSON.parse(textOf(request, id)) });
  if (aside) inTurn(answer);
  else answer();
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  try {
    if (data.kind === "start") start(data).catch(dead);
    else if (data.kind === "stop") newest.main = newest.aside = 0;
    else if (data.kind === "refine") refine(data).catch(dead);
    else ask(data);
  } catch (error) {
    dead(error);
  }
};
self.onmessageerror = () => dead("a message could not be read");
