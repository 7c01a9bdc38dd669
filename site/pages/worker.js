// The engine's own thread. Requests come with an id; every request is answered
// under that id, whatever happens, or the page is told that the engine died.
//
// In:  {kind:"start", engine}                load the engine of that name
//      {kind:"ask", id, request}             one question, one answer
//      {kind:"refine", id, request}          rough at once, then better and better
//      {kind:"stop"}                         nobody waits for what is being refined
// Out: {kind:"loading", loaded}              bytes of the engine so far
//      {kind:"ready"} or {kind:"dead", text}
//      {kind:"reply", id, last, reply}       last is false while it refines
//      {kind:"overtaken", id}                stopped, or a newer one took its place
"use strict";

// As in trust.js, for this thread: one address may become a script.
self.trustedTypes?.createPolicy("default", { createScriptURL: (name) => (name === "wasm_exec.js" ? name : null) });

let newest = 0;

/** Counts the bytes as they come and gives the engine its right type, so that
 *  a host that serves it under a wrong type does no harm. */
function counted(response) {
  const reader = response.body.getReader();
  let loaded = 0;
  const stream = new ReadableStream({
    async pull(controller) {
      const { done, value } = await reader.read();
      if (done) { controller.close(); return; }
      loaded += value.byteLength;
      postMessage({ kind: "loading", loaded });
      controller.enqueue(value);
    },
  });
  return new Response(stream, { headers: { "Content-Type": "application/wasm" } });
}

async function fetchEngine(name) {
  const response = await fetch(name);
  if (!response.ok) throw new Error("the engine could not be loaded (" + response.status + ")");
  return counted(response);
}

/** Compiles while loading where the browser can, else after loading. */
async function instantiate(name, imports) {
  if (typeof WebAssembly.instantiateStreaming === "function") {
    return WebAssembly.instantiateStreaming(fetchEngine(name), imports);
  }
  const whole = await (await fetchEngine(name)).arrayBuffer();
  return WebAssembly.instantiate(whole, imports);
}

function dead(error) {
  postMessage({ kind: "dead", text: String(error && error.message || error) });
}

async function start(name) {
  importScripts("wasm_exec.js");
  const go = new Go();
  go.env = { GOGC: "50" };
  const { instance } = await instantiate(name, go.importObject);
  go.run(instance).then(() => dead("the engine ended"), dead);
  if (typeof globalThis.underpaintAsk !== "function") throw new Error("the engine did not start");
  postMessage({ kind: "ready" });
}

function ask(request, id) {
  return JSON.parse(globalThis.underpaintAsk(JSON.stringify({ ...request, id })));
}

/** Lets messages that came in meanwhile be read before the next slice. */
function breathe() {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => { channel.port1.close(); resolve(); };
    channel.port2.postMessage(null);
  });
}

const unfinished = (reply) => reply.state === "rough" || reply.state === "refining";

/** Asks again and again until the answer has settled. One at a time: the
 *  newest. A range has efforts of its own; other requests are just repeated. */
async function refine(id, request) {
  newest = id;
  const isRange = request.ask === "range";
  let reply = ask(isRange ? { ...request, effort: "rough" } : request, id);
  let shown = performance.now();
  while (unfinished(reply)) {
    if (!isRange || reply.rows) {
      postMessage({ kind: "reply", id, last: false, reply });
      shown = performance.now();
    }
    await breathe();
    if (newest !== id) { postMessage({ kind: "overtaken", id }); return; }
    // A quiet slice only adds imagined cars; saying the range costs as much again.
    const quiet = performance.now() - shown < 400;
    reply = ask(isRange ? { ...request, effort: "settle", quiet } : request, id);
  }
  postMessage({ kind: "reply", id, last: true, reply });
}

self.onmessage = ({ data }) => {
  if (data.kind === "start") { start(data.engine).catch(dead); return; }
  try {
    if (data.kind === "stop") { newest = 0; return; }
    if (data.kind === "refine") { refine(data.id, data.request).catch(dead); return; }
    postMessage({ kind: "reply", id: data.id, last: true, reply: ask(data.request, data.id) });
  } catch (error) { dead(error); }
};
self.onmessageerror = () => dead("a message could not be read");
