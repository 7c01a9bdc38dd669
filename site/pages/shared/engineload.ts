// Loads a page's engine once and compiles it while it loads. Every worker of the page starts
// from the engine that is compiled here, so a second worker needs no second compilation, and
// neither does a worker that is started again.

import { ofBuild } from "./address.ts";

/** A host that sends nothing for this long counts as gone. */
const SILENCE_MS = 60000;
const KIND = "application/wasm";

/** The sum of the engine's bytes, as the build wrote it into the page. */
const sumOf = (): string => document.querySelector<HTMLElement>("meta[name=build]")?.dataset.engine ?? "";

/** A compiled engine, and what a worker needs to compile it itself. */
export interface CompiledEngine {
  module: WebAssembly.Module;
  name: string;
  sum: string;
}

/** Loads and compiles an engine. Calls heard with the number of bytes that have come so far.
 *
 *  The sum of the bytes is checked here. Fetch's own "integrity" would hold back all bytes
 *  until the last one is there, and with them the compilation and the progress bar. It is used
 *  only where a page cannot calculate a sum itself (without https). */
export async function loadEngine(name: string, heard: (bytes: number) => void): Promise<CompiledEngine> {
  if (typeof WebAssembly !== "object") throw new Error("this browser has no WebAssembly");
  const sum = sumOf();
  const stall = new AbortController();
  const watch = stalled(stall);
  try {
    const here = globalThis.crypto?.subtle;
    const response = await fetch(ofBuild(name), {
      signal: stall.signal,
      ...(here ? {} : { integrity: sum }),
    });
    if (!response.ok) throw new Error(`the engine could not be loaded (${response.status})`);
    const copy = response.clone();
    const [module, bytes] = await Promise.all([
      compiled(response),
      gathered(copy, (n) => {
        watch.again();
        heard(n);
      }),
    ]);
    if (here && (await sha256(bytes)) !== sum)
      throw new Error("the engine that came is not the one of this page");
    return { module, name, sum };
  } finally {
    watch.end();
  }
}

function stalled(stall: AbortController) {
  let timer = 0;
  const again = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => stall.abort(new Error("the host stopped answering")), SILENCE_MS);
  };
  again();
  return { again, end: () => clearTimeout(timer) };
}

/** Compiles while loading where the browser can, under the right type whatever type the host
 *  says. A response of the right type goes in as it is, because only then can a browser keep
 *  the compiled form for the next visit. */
async function compiled(response: Response): Promise<WebAssembly.Module> {
  if (typeof WebAssembly.compileStreaming !== "function")
    return WebAssembly.compile(await response.arrayBuffer());
  const right = response.headers.get("Content-Type") === KIND;
  return WebAssembly.compileStreaming(
    right ? response : new Response(response.body, { headers: { "Content-Type": KIND } }),
  );
}

async function gathered(response: Response, heard: (bytes: number) => void): Promise<ArrayBuffer> {
  const reader = response.body?.getReader();
  if (!reader) return new ArrayBuffer(0);
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let loaded = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return new Blob(parts).arrayBuffer();
    parts.push(value);
    loaded += value.byteLength;
    heard(loaded);
  }
}

async function sha256(bytes: ArrayBuffer): Promise<string> {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return `sha256-${btoa(String.fromCharCode(...sum))}`;
}
