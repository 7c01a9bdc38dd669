// The vectors for Node and browsers: the same rules as vector.go and expand.go, in
// which they are explained. kept.txt makes sure that the same bytes are sent.

import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
// What is asked of the customer's engine too. It answers more, which takes long and
// is compared in engine/message.
const CUSTOMERS = "open range cover sheet plan check_car".split(" ");
const MOST_ASKED = 500;

export const digest = (text) => createHash("sha256").update(text).digest("hex");

function textOf(file) {
  let text = file.from ? readFileSync(join(here, "files", file.from), "utf8")
    : "json" in file ? JSON.stringify(file.json)
      : file.text.repeat(file.times ?? 1) + (file.after ?? "");
  for (const [from, to] of file.changes ?? []) {
    if (text.split(from).length !== 2) throw new Error(`${from} does not stand in it once`);
    text = text.replace(from, () => to);
  }
  return text;
}

/** What a value of a request stands for, or null. */
function placed(value, texts) {
  const [[kind, name] = [], ...more] = Object.entries(value ?? {});
  if (more.length || typeof value !== "object" || (kind !== "file" && kind !== "quoted")) return null;
  if (!(name in texts)) throw new Error(`no file ${name}`);
  return kind === "file" ? texts[name] : JSON.stringify(texts[name]);
}

function requestOf(id, request, texts) {
  const members = Object.entries(request).map(([name, value]) => `,${JSON.stringify(name)}:${placed(value, texts) ?? JSON.stringify(value)}`);
  return placed(request, texts) ?? `{"id":${id}${members.join("")}}`;
}

/** All vectors, each with the texts that it sends. */
export function vectors() {
  const kept = new Map(readFileSync(join(here, "kept.txt"), "utf8").trim().split("\n").map((line) => line.split("  ").reverse()));
  const all = readdirSync(join(here, "cases")).sort().map((name) => {
    const vector = JSON.parse(readFileSync(join(here, "cases", name), "utf8"));
    const texts = Object.fromEntries(Object.entries(vector.files ?? {}).map(([key, file]) => [key, textOf(file)]));
    const requests = vector.ask.map((ask, n) => requestOf(n + 1, ask.request, texts));
    if (digest(requests.join("\n") + "\n") !== kept.get(vector.name)) throw new Error(`${vector.name}: sends something else than kept.txt says`);
    return { ...vector, requests, customers: vector.ask.every((ask) => CUSTOMERS.includes(ask.request.ask)) };
  });
  if (all.length !== kept.size || all.length === 0) throw new Error(`${all.length} vectors, ${kept.size} kept`);
  return all;
}

/** Every single value of a reply by its path. */
function leaves(value, path = "", out = new Map()) {
  if (value === null || typeof value !== "object") return out.set(path, value);
  for (const [name, one] of Object.entries(value)) leaves(one, Array.isArray(value) ? `${path}[${name}]` : path ? `${path}.${name}` : name, out);
  return out;
}

/** How the text of a reply is not what was expected; empty when it is. */
export function differences(expect, text) {
  if (digest(text) === expect.sha256) return [];
  const is = leaves(JSON.parse(text));
  const out = Object.entries({ kind: expect.kind, ...expect.figures }).filter(([path, was]) => is.get(path) !== was)
    .map(([path, was]) => `${path} ${was} → ${is.get(path)}`);
  return out.length ? out : ["other bytes, the same figures"];
}

/** The last reply to each request. ask: text → text, of a fresh engine. It holds on
 *  to nothing outside itself, so that it can run in a page. */
export function replies(ask, requests, until, most = MOST_ASKED) {
  return requests.map((text, n) => {
    let reply = ask(text);
    for (let k = 0; until[n] && ["rough", "refining"].includes(JSON.parse(reply).state); k++) {
      if (k === most) throw new Error(`request ${n + 1}: still improving`);
      reply = ask(text);
    }
    return reply;
  });
}

/** All that is wrong with the replies to a vector. */
export const wrong = (vector, texts) => vector.ask.flatMap((ask, n) => differences(ask.expect, texts[n]).map((d) => `${vector.name}, request ${n + 1}: ${d}`));
export const until = (vector) => vector.ask.map((ask) => ask.until === true);
