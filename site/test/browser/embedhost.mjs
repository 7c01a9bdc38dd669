// Two plain hosts that know nothing of this project: one hands out the built
// folder, as any web space does, the other a shop's own page with the frame in
// it. Unless said otherwise they stand at 127.0.0.1 and at localhost, which are
// different sites to a browser.

import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join } from "node:path";
import { patience } from "../pace.mjs";
import { newContext, world } from "./browser.mjs";

const TYPES = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
};
const open = [];

function listening(host, answer) {
  const server = createServer(answer);
  open.push(server);
  return new Promise((done) => server.listen(0, host, () => done(`http://${host}:${server.address().port}`)));
}

/** Hands out a folder, with types and no other header; gives its origin. */
export function plainHost(dir, host) {
  return listening(host, (request, response) => {
    const path = new URL(request.url, "http://x").pathname;
    const name = join(dir, path.endsWith("/") ? `${path}index.html` : path);
    if (!name.startsWith(dir) || !existsSync(name) || !TYPES[extname(name)]) {
      response.writeHead(404).end("<!doctype html><title>Not found</title>");
      return;
    }
    response.writeHead(200, { "Content-Type": TYPES[extname(name)] }).end(readFileSync(name));
  });
}

/** A shop's page with some words above the frame; body: what is put into it. */
export function shopHost(body) {
  return listening("localhost", (request, response) => {
    response.writeHead(request.url === "/" ? 200 : 404, { "Content-Type": "text/html" });
    response.end(
      `<!doctype html><html lang="en"><title>A shop</title><body><h1>An invented shop</h1><p style="height: 700px">Words of the shop.</p>${body}<p style="height: 900px">More words.</p></body></html>`,
    );
  });
}

export async function closeHosts() {
  for (const server of open) {
    server.closeAllConnections();
    await new Promise((done) => server.close(done));
  }
}

/** The code that embed.html tells a shop to copy, for a folder at this address. */
export function frameCode(dir, origin) {
  const page = readFileSync(join(dir, "embed.html"), "utf8");
  const code = /<code id="frame-code">([^<]*)<\/code>/.exec(page)[1];
  const plain = code
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#34;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&#x27;", "'")
    .replaceAll("&amp;", "&");
  if (!plain.includes('src="/range/"')) throw new Error("the code names no address to replace");
  return plain.replace('src="/range/"', `src="${origin}/"`);
}

/** Runs fn(page, frame, more) with the shop's page open. sameSite: the folder lies
 *  at the shop's own site; more(address of the folder): what else is on the shop's
 *  page. messages() are those that the shop's page received, in
 *  order. */
export async function embedded({ sameSite = false, more = () => "", ...options }, fn) {
  const { browser, dir } = await world();
  const tool = await plainHost(dir, sameSite ? "localhost" : "127.0.0.1");
  const shop = await shopHost(frameCode(dir, tool) + more(tool));
  const context = await newContext(browser, { viewport: { width: 1280, height: 900 }, ...options });
  const errors = [];
  try {
    const page = await context.newPage();
    page.on("pageerror", (e) => errors.push(String(e)));
    page.on("console", (m) => {
      if (m.type() === "error" && !/favicon/.test(m.location().url)) errors.push(m.text());
    });
    await page.addInitScript(() => {
      globalThis.received = [];
      const own = EventTarget.prototype.addEventListener;
      if (window.parent === window)
        own.call(window, "message", (event) => globalThis.received.push(event.data));
      globalThis.listened = [];
      EventTarget.prototype.addEventListener = function (kind, ...rest) {
        if (this === window || this === undefined) globalThis.listened.push(kind);
        return own.call(this, kind, ...rest);
      };
    });
    await page.goto(`${shop}/`);
    // What lies out of view is not drawn, and waiting for it would wait for ever.
    await page.locator("#cost-range").scrollIntoViewIfNeeded();
    const frame = await (await page.waitForSelector("#cost-range")).contentFrame();
    await frame.waitForFunction(() => document.getElementById("check-code")?.textContent);
    await fn(page, frame, { context, tool, shop, messages: () => page.evaluate(() => globalThis.received) });
    if (errors.length) throw new Error(`errors of the page: ${errors.join("\n")}`);
  } finally {
    await context.close();
  }
}

/** The first five questions for a saloon, to the settled range. */
export async function rangeInFrame(frame) {
  await frame.locator('[data-answer="four_door_saloon"]').click();
  await frame.getByLabel("Year").fill("1967");
  await frame.getByRole("button", { name: "Continue" }).click();
  for (const answer of ["mild", "driven_all_year", "show"])
    await frame.locator(`[data-answer="${answer}"]`).click();
  await frame.waitForSelector("body[data-range=settled], body[data-range=budget_ended]", {
    timeout: patience(240_000),
  });
}
