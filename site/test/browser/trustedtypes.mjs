// What the pages may do and what may be done to them: the policy, on every page
// and in every thread; frames; and that what is loaded is what the build made.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import test from "node:test";
import { patience } from "../pace.mjs";
import { firstRange, newContext, pagesOf, takenIn, visit, world } from "./browser.mjs";
import { closeHosts, plainHost, shopHost } from "./embedhost.mjs";

const SHOPS = ["past-jobs/", "rates/", "survey/", "why/"];
const hasScripts = (name) => name === "" || name.endsWith("/");
/** The page of figures has a script and no sums. */
const hasSums = (name) => hasScripts(name) && name !== "figures/";
const ready = (page, name) =>
  hasSums(name)
    ? page.waitForFunction(
        () => document.getElementById("check-code")?.textContent && document.querySelector("h1"),
        null,
        { timeout: patience(240_000) },
      )
    : null;
const listing = (dir) =>
  new Map(
    JSON.parse(/files: (\[.*?\])\}/.exec(readFileSync(join(dir, "sw.js"), "utf8"))[1]).map((f) => [
      f.path,
      f.integrity,
    ]),
  );
const sum = (bytes) => `sha256-${createHash("sha256").update(bytes).digest("base64")}`;

const HEADERS = {
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
};

test("every page with all it loads, the worker for offline use too: the headers, the bytes that the build made, and no other host", () =>
  visit({ worker: "allow" }, async (page, { origin, dir, context }) => {
    const known = listing(dir);
    const answers = [];
    // The browser lets go of what an answer held once another page is there.
    context.on("response", (r) => answers.push({ answer: r, body: r.body().catch(() => null) }));
    const names = pagesOf(dir);
    assert.equal(names.length, 12, `${names}`);
    for (const name of names) {
      await page.goto(`${origin}/${name}`);
      await ready(page, name);
      await Promise.all(answers.map((a) => a.body));
    }
    await page.goto(`${origin}/survey/`);
    await takenIn(page);
    const summed = new Set();
    const from = { page: 0, worker: 0 };
    for (const { answer, body } of answers) {
      const path = new URL(answer.url()).pathname.slice(1).replace(/(^|\/)$/, "$1index.html");
      from[answer.request().serviceWorker() ? "worker" : "page"]++;
      const headers = answer.headers();
      for (const [name, value] of Object.entries(HEADERS))
        assert.equal(headers[name], value, `${path}: ${name}`);
      assert.match(
        headers["content-security-policy"],
        path === "index.html" ? /; frame-ancestors 'self'$/ : /; frame-ancestors 'none'$/,
        path,
      );
      if (!known.has(path) || summed.has(path) || answer.status() !== 200) continue;
      const bytes = await body;
      if (bytes === null) continue; // held by another thread; that it was compared once is asked for below
      assert.equal(sum(bytes), known.get(path), `${path} is not what the build made`);
      summed.add(path);
    }
    assert.ok(from.worker > 20, `the worker for offline use was watched too: ${from.worker} answers`);
    for (const name of names)
      assert.ok(summed.has(name.replace(/(^|\/)$/, "$1index.html")), `${name} was compared`);
    for (const name of [
      "worker.js",
      "wasm_exec.js",
      "customer.wasm",
      "engine.wasm",
      "customer.css",
      "customer.js",
    ])
      assert.ok(
        [...summed].some((p) => p.endsWith(`/${name}`)),
        `${name} was compared`,
      );
  }));

/** Tries everything that makes markup or code of a text; gives what was not refused. */
async function tried() {
  // A test's own words may use eval while they are being run; later ones may not.
  await new Promise((later) => setTimeout(later));
  const attempts = {
    innerHTML: () => {
      document.createElement("p").innerHTML = "<b>x</b>";
    },
    outerHTML: () => {
      const p = document.createElement("p");
      document.body.append(p);
      p.outerHTML = "<b>x</b>";
    },
    insertAdjacentHTML: () => document.body.insertAdjacentHTML("beforeend", "<b>x</b>"),
    "document.write": () => document.write("<b>x</b>"),
    srcdoc: () => {
      document.createElement("iframe").srcdoc = "<b>x</b>";
    },
    DOMParser: () => new DOMParser().parseFromString("<b>x</b>", "text/html"),
    eval: () => (0, eval)("1"),
    "new Function": () => new Function("return 1")(),
    "a timer with a text": () => setTimeout("globalThis.ran = true"),
    "script.src": () => {
      document.createElement("script").src = "page.js";
    },
    "script.text": () => {
      document.createElement("script").text = "globalThis.ran = true";
    },
    "an attribute with code": () => document.body.setAttribute("onclick", "globalThis.ran = true"),
    "another worker": () => new Worker("page.js"),
    "another policy": () => trustedTypes.createPolicy("own", { createHTML: (x) => x }),
    "the policy once more": () => {
      trustedTypes.createPolicy("default", { createHTML: (x) => x });
      document.createElement("p").innerHTML = "<b>x</b>";
    },
  };
  return Object.entries(attempts)
    .filter(([, attempt]) => {
      try {
        attempt();
        return true;
      } catch {
        return false;
      }
    })
    .map(([name]) => name);
}

const REFUSED = { allow: /Content Security Policy|Trusted|trusted|Refused|violates/ };

test("on every page, with headers of the server and without any: no text becomes markup or code", () =>
  visit(REFUSED, async (page, { origin, dir, seen }) => {
    const plain = await plainHost(dir, "localhost");
    for (const [base, names] of [
      [origin, pagesOf(dir)],
      [plain, ["", ...SHOPS]],
    ]) {
      for (const name of names) {
        await page.goto(`${base}/${name}`);
        // A plain page makes no policy, so there one could be made once; it has no script.
        const more = hasScripts(name) ? [] : ["the policy once more"];
        if (hasSums(name)) await page.waitForFunction(() => !document.getElementById("no-start"));
        const passed = await page.evaluate(tried);
        assert.deepEqual(
          passed.filter((p) => !more.includes(p)),
          [],
          `${base}/${name}`,
        );
        const styled = await page.evaluate(() => {
          const p = document.createElement("p");
          p.setAttribute("style", "color: red");
          document.body.append(p);
          return p.style.color;
        });
        assert.equal(styled, "", `${name}: an attribute with style`);
      }
    }
    assert.deepEqual(
      seen.elsewhere.splice(0).filter((u) => !u.startsWith(plain)),
      [],
    );
  }));

test("WebAssembly needs its own word in the policy, has it, and gets no eval with it", () =>
  visit(REFUSED, async (page, { origin }) => {
    const compiles = () =>
      page.evaluate(async () => {
        await new Promise((later) => setTimeout(later));
        const can = (act) => {
          try {
            act();
            return true;
          } catch (error) {
            return error.name;
          }
        };
        return [
          can(() => new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0))),
          can(() => (0, eval)("1")),
        ];
      });
    await page.goto(`${origin}/about.html`);
    assert.deepEqual(await compiles(), [true, "EvalError"]);
    const without = (text) => text.replace(" 'wasm-unsafe-eval'", "");
    await page.route("**/about.html", async (route) => {
      const response = await route.fetch();
      const headers = response.headers();
      await route.fulfill({
        response,
        headers: { ...headers, "content-security-policy": without(headers["content-security-policy"]) },
        body: without(await response.text()),
      });
    });
    await page.goto(`${origin}/about.html`);
    assert.deepEqual(await compiles(), ["CompileError", "EvalError"]);
  }));

test("the thread of the sums and the worker for offline use reach no other host and run no text", () =>
  visit({ worker: "allow", ...REFUSED }, async (page, { origin, dir, context, seen }) => {
    await firstRange(page, origin);
    await takenIn(page);
    // A host that would answer anybody, so that only the policy can refuse.
    const elsewhere = `${await plainHost(dir, "localhost")}/build.json`;
    assert.equal((await context.request.get(elsewhere)).status(), 200);
    try {
      const attempts = async (address) => {
        await new Promise((later) => setTimeout(later));
        const refused = async (act) => {
          try {
            await act();
            return false;
          } catch {
            return true;
          }
        };
        const found = {
          fetch: await refused(() => fetch(address, { mode: "no-cors" })),
          eval: await refused(() => (0, eval)("1")),
          timer: await refused(() => setTimeout("1")),
        };
        if (globalThis.importScripts) found.scripts = await refused(() => importScripts("page.js"));
        return found;
      };
      assert.deepEqual(await page.workers()[0].evaluate(attempts, elsewhere), {
        fetch: true,
        eval: true,
        timer: true,
        scripts: true,
      });
      assert.deepEqual(await context.serviceWorkers()[0].evaluate(attempts, elsewhere), {
        fetch: true,
        eval: true,
        timer: true,
        scripts: true,
      });
      assert.deepEqual(
        seen.elsewhere.splice(0).filter((u) => u !== elsewhere),
        [],
        "no other than those tried here, which were refused",
      );
    } finally {
      await closeHosts();
    }
  }));

test("in a frame only the customer's page works; the shop's pages give a sentence and a way out, and start nothing", () =>
  visit(REFUSED, async (_page, { origin, dir, seen }) => {
    const { browser } = await world();
    const plain = await plainHost(dir, "127.0.0.1");
    const frames = (base, names) =>
      names
        .map((name) => `<iframe src="${base}/${name}" title="x" width="600" height="400"></iframe>`)
        .join("");
    const context = await newContext(browser, { serviceWorkers: "block" });
    try {
      const open = await context.newPage();
      await open.goto(`${await shopHost(frames(plain, SHOPS))}/`);
      for (const name of SHOPS) {
        const frame = await (await open.waitForSelector(`iframe[src$="/${name}"]`)).contentFrame();
        await frame.locator("#not-in-a-frame a").waitFor();
        assert.match(
          await frame.locator("main").innerText(),
          /for the shop and does not work inside another page\. Open it by itself/,
        );
        assert.equal(await frame.locator("main button, main input, #no-start").count(), 0, name);
        const [other] = await Promise.all([
          context.waitForEvent("page"),
          frame.locator("#not-in-a-frame a").click(),
        ]);
        await other.waitForFunction(() => document.getElementById("check-code")?.textContent);
        assert.equal(other.url(), `${plain}/${name}`);
        await other.close();
      }
      assert.deepEqual(open.workers(), [], "no sums are started in a frame");
      const names = pagesOf(dir);
      await open.goto(`${await shopHost(frames(origin, names))}/`);
      await open.waitForFunction((n) => document.querySelectorAll("iframe").length === n, names.length);
      await open.waitForLoadState("load");
      for (const frame of open.frames().slice(1))
        assert.match(frame.url(), /^chrome-error:/, "the server forbids it");
    } finally {
      await context.close();
      await closeHosts();
    }
    seen.elsewhere.length = 0; // this visitor stood at the shop's page
  }));
