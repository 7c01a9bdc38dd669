// The engine's own thread. Requests come with an id; every request is answered
// under that id, whatever happens, or the page is told that the engine died.
//
// In:  {kind:"start", module}                the engine, compiled by the page
//      {kind:"start", name, sum}             the same where no module comes through
//      {kind:"ask", id, request, aside}      one question, one answer
//      {kind:"refine", id, request, aside}   rough at once, then better and better
//      {kind:"stop"}                         nobody waits for what is being refined
// Out: {kind:"ready"} or {kind:"dead", text}
//      {kind:"reply", id, last, reply}       last is false while it refines
//      {kind:"overtaken", id}                stopped, or a newer one took its place
// As in trust.js, for this thread: one address may become a script.
self.trustedTypes?.createPolicy("default", {
  createScriptURL: (name) => (name === "wasm_exec.js" ? name : null),
});

/** What is being refined: the range or the like, and one thing beside it. */
const newest = { main: 0, aside: 0 };

function dead(error) {
  postMessage({
    kind: "dead",
    text: [String((error && error.message) || error), written].filter(Boolean).join("\n").trim(),
  });
}

// At once, while the page is still loading the engine.
importScripts("wasm_exec.js");

/** The last that the program wrote: an end that Go cannot recover from, such as memory
 *  that is used up, is told nowhere else. The loader shows it on the console. */
let written = "";
const MOST_WRITTEN = 8000;
const { writeSync } = globalThis.fs;
globalThis.fs.writeSync = (file, bytes) => {
  written = (written + new TextDecoder().decode(bytes)).slice(-MOST_WRITTEN);
  return writeSync(file, bytes);
};

/** The bytes as they are: whatever type the host gives them does no harm. */
async function loaded(name, sum) {
  const response = await fetch(name, { integrity: sum });
  if (!response.ok) throw new Error("the engine could not be loaded (" + response.status + ")");
  return WebAssembly.compile(await response.arrayBuffer());
}

async function start({ module, name, sum }) {
  const go = new Go();
  // Phones end a page that takes much memory. The limit makes Go tidy up sooner, not
  // stop: without it a whole survey with door gaps, everything worked out, takes 112 MB,
  // with it 64.
  go.env = { GOGC: "50", GOMEMLIMIT: "40MiB" };
  const instance = await WebAssembly.instantiate(module ?? (await loaded(name, sum)), go.importObject);
  go.run(instance).then(() => dead("the engine ended"), dead);
  if (typeof globalThis.underpaintAsk !== "function") throw new Error("the engine did not start");
  postMessage({ kind: "ready" });
}

const textOf = (request, id) => globalThis.underpaintAsk(JSON.stringify({ ...request, id }));
const ask = (request, id) => JSON.parse(textOf(request, id));

/** Lets messages that came in meanwhile be read before the next slice. */
function breathe() {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      resolve();
    };
    channel.port2.postMessage(null);
  });
}

/** A quarter of the silence after which engine-lane.js gives a worker up. */
const LONGEST_SILENCE_MS = 5000;

let lastAside = Promise.resolve();

/** Answers what was asked aside, in turn: each once nothing is being refined that
 *  somebody looks at, and what came in meanwhile has been read. */
function inTurn(answer) {
  lastAside = lastAside
    .then(async () => {
      do await breathe();
      while (newest.main !== 0);
      answer();
    })
    .catch(dead);
}

const unfinished = (reply) => reply.state === "rough" || reply.state === "refining";

/** Asks again and again until the answer has settled. One at a time, the newest;
 *  beside it one that was asked aside, which waits for its turn. A range has efforts
 *  of its own; other requests are just repeated. */
async function refine(id, request, aside) {
  const slot = aside ? "aside" : "main";
  newest[slot] = id;
  if (!aside) newest.aside = 0;
  const isRange = request.ask === "range";
  let effort = { effort: "rough" };
  let shown = 0;
  let posted = 0;
  let said = "";
  for (;;) {
    while (aside && newest.main !== 0 && newest.aside === id) await breathe();
    if (newest[slot] !== id) {
      postMessage({ kind: "overtaken", id });
      return;
    }
    const text = textOf(isRange ? { ...request, ...effort } : request, id);
    const reply = JSON.parse(text);
    if (!unfinished(reply)) {
      newest[slot] = 0;
      postMessage({ kind: "reply", id, last: true, reply });
      return;
    }
    if (!isRange || reply.rows) {
      shown = performance.now();
      // What says nothing new would only have the page drawn again; but a worker that
      // says nothing for long is taken for dead.
      if (text !== said || shown - posted > LONGEST_SILENCE_MS) {
        postMessage({ kind: "reply", id, last: false, reply });
        posted = shown;
      }
      said = text;
    }
    await breathe();
    // A quiet slice only adds imagined cars; saying the range costs as much again.
    effort = { effort: "settle", quiet: performance.now() - shown < 400 };
  }
}

self.onmessage = ({ data }) => {
  if (data.kind === "start") {
    start(data).catch(dead);
    return;
  }
  try {
    if (data.kind === "stop") {
      newest.main = newest.aside = 0;
      return;
    }
    if (data.kind === "refine") {
      refine(data.id, data.request, data.aside).catch(dead);
      return;
    }
    const answer = () =>
      postMessage({ kind: "reply", id: data.id, last: true, reply: ask(data.request, data.id) });
    if (data.aside) inTurn(answer);
    else answer();
  } catch (error) {
    dead(error);
  }
};
self.onmessageerror = () => dead("a message could not be read");
