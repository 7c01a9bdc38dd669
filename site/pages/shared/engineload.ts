// Loads a page's engine once and compiles it while it comes. Every worker of the
// page starts from what is compiled here, so that a second one costs no second
// compiling, and one that is started again none either.

import { ofBuild } from "./address.ts";

/** A host that sends nothing for this long is taken for gone. */
const SILENCE_MS = 60000;
const KIND = "application/wasm";

/** The sum of the engine's bytes, as the build wrote it into the page. */
const sumOf = (): string => document.querySelector<HTMLElement>("meta[name=build]")?.dataset.engine ?? "";

/** An engine that is compiled, and what a worker needs to compile it by itself. */
export interface CompiledEngine {
  module: WebAssembly.Module;
  name: string;
  sum: string;
}

/** Gives {module, name, sum}. heard(bytes) is told how many have come so far.
 *
 *  The bytes are held against their sum as they come. Fetch's own "integrity" would
 *  hold all of them back until the last is there, and with them the compiling and
 *  the bar; it stands in only where a page may not work out sums (without https). */
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

/** Compiles while loading where the browser can, under the right type whatever the
 *  host says. An answer of the right type goes in as it is: only then can a browser
 *  keep the compiled form for the next visit. */
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
