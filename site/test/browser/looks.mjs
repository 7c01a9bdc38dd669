// How it looks and reads: widths, contrast, dark and forced colours, paper, and
// the automated accessibility checks on every state.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { patience } from "../pace.mjs";
import { axeSource, firstRange, press, settled, visit } from "./browser.mjs";

const css = readFileSync(new URL("../../pages/styles/tokens.css", import.meta.url), "utf8");

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex) {
  const [r, g, b] = [1, 3, 5]
    .map((i) => parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a, b) {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}
const colours = (block) =>
  Object.fromEntries([...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]));
const light = colours(css.slice(css.indexOf(":root"), css.indexOf("@media")));
const dark = {
  ...light,
  ...colours(css.slice(css.indexOf("prefers-color-scheme: dark"), css.indexOf("@media print"))),
};

test("contrast, computed: text 4.5 to 1, lines and dots 3 to 1 (WCAG 2.2, 1.4.3 and 1.4.11)", () => {
  // Two pairs with known answers, from the definition: black on white is 21,
  // a colour on itself is 1.
  assert.equal(contrast("#000000", "#ffffff"), 21);
  assert.equal(contrast("#777777", "#777777"), 1);
  for (const [name, c] of [
    ["light", light],
    ["dark", dark],
  ]) {
    for (const ground of ["paper", "sheet"]) {
      for (const text of ["ink", "grey", "oxide"])
        assert.ok(
          contrast(c[text], c[ground]) >= 4.5,
          `${name}: ${text} on ${ground} is ${contrast(c[text], c[ground]).toFixed(2)}`,
        );
      for (const line of ["steel", "pale"])
        assert.ok(
          contrast(c[line], c[ground]) >= 3,
          `${name}: ${line} on ${ground} is ${contrast(c[line], c[ground]).toFixed(2)}`,
        );
    }
    for (const [text, ground] of [
      ["on-pressed", "pressed"],
      ["on-oxide", "oxide"],
      ["on-primer", "primer"],
      ["on-primer-grey", "primer"],
      ["ink", "sheet"],
    ])
      assert.ok(
        contrast(c[text], c[ground]) >= 4.5,
        `${name}: ${text} on ${ground} is ${contrast(c[text], c[ground]).toFixed(2)}`,
      );
  }
});

async function axe(page, where) {
  await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { region: { enabled: false } },
    }),
  );
  assert.deepEqual(
    found.violations.map((v) => `${where}: ${v.id}: ${v.nodes.map((n) => n.target).join(" ; ")}`),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

/** Shows every screen once and calls look(name) on each. */
async function everyScreen(page, origin, look) {
  await page.goto(`${origin}/`);
  await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
  await look("body");
  await press(page, "none");
  await look("not covered");
  await page.goBack();
  await page.waitForSelector('[data-answer="two_door"]');
  await press(page, "two_door");
  await look("frame");
  await press(page, "shell");
  await page.getByLabel("Year").fill("12");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("year with an error");
  await page.getByLabel("Year").fill("1967");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("place");
  await press(page, "pick");
  await look("list of places");
  await page.goBack();
  await page.waitForSelector('[data-answer="salt"]');
  await press(page, "salt");
  await look("kept");
  await press(page, "driven_all_year");
  await look("standard");
  await press(page, "show");
  await settled(page);
  await page.locator(".opened-out").first().waitFor();
  await page.locator("details").evaluateAll((all) =>
    all.forEach((d) => {
      d.open = true;
    }),
  );
  await look("range with everything unfolded");
  await page.getByRole("button", { name: "Make a link" }).click();
  await page.getByLabel("The link").waitFor();
  await look("link made");
  await page.getByRole("button", { name: "Answer another question" }).click();
  await settled(page);
  await look("covered");
  await press(page, "yes");
  await settled(page);
  await look("road");
  await press(page, "not_sure");
  await press(page, "yes");
  await look("elsewhere");
  await press(page, "dry");
  await press(page, "not_sure");
  await look("years elsewhere");
  await page.getByLabel("Years").fill("9");
  await page.getByRole("button", { name: "Continue" }).click();
  await press(page, "no");
  await press(page, "stripped_and_restored");
  await page.getByLabel("Year").fill("1920");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("year of earlier work with an error");
  await page.getByLabel("Year").fill("1998");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("photographs or bills");
  await press(page, "yes");
  await page.locator(".other-parts > summary").click();
  await page.locator(".other-parts details").first().waitFor();
  await page.locator(".other-parts details").evaluateAll((all) =>
    all.forEach((d) => {
      d.open = true;
    }),
  );
  await page.locator(".mark").first().click();
  await look("parts on photographs");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("hit hard");
  await press(page, "hard");
  await look("where it was hit");
  await press(page, "front");
  await page.locator('[data-mark="both"]').first().click();
  await settled(page);
  await look("seen");
  await page.getByRole("button", { name: "Continue" }).click();
  await look("holes");
  await press(page, "not_sure");
  await look("whether it is all there");
  await press(page, "not_sure");
  await look("scope");
}

for (const scheme of ["light", "dark"]) {
  test(`no accessibility fault that a program can find, on every screen, ${scheme}`, () =>
    visit({ colorScheme: scheme }, (page, { origin }) =>
      everyScreen(page, origin, (name) => axe(page, name)),
    ));
}

test("nor where several ranges stand side by side, and no id is there twice", () =>
  visit({}, async (_page, { origin, context }) => {
    for (const options of [{ standard: "not_sure" }, { frame: "not_sure" }]) {
      const other = await context.newPage();
      await firstRange(other, origin, options);
      await other.locator(".opened-out").first().waitFor();
      await axe(other, JSON.stringify(options));
      const ids = await other.evaluate(() => [...document.querySelectorAll("[id]")].map((n) => n.id));
      assert.deepEqual(
        ids.filter((id, i) => ids.indexOf(id) !== i),
        [],
      );
      await other.close();
    }
  }));

test("nor on the plain pages", () =>
  visit({}, async (page, { origin }) => {
    for (const name of ["about", "privacy", "words", "accessibility", "embed"]) {
      await page.goto(`${origin}/${name}.html`);
      await axe(page, name);
    }
  }));

for (const width of [320, 360]) {
  test(`nothing to scroll sideways and no small target at ${width} pixels`, () =>
    visit({ viewport: { width, height: 640 } }, (page, { origin }) =>
      everyScreen(page, origin, async (name) => {
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        assert.ok(over <= 0, `${name}: ${over} pixels too wide`);
        const small = await page
          .locator("main button:visible, main summary:visible, main input:visible:not([type=file])")
          .evaluateAll((all) =>
            all
              .map((n) => [n.textContent || n.tagName, n.getBoundingClientRect()])
              .filter(([, r]) => r.width > 0 && (r.height < 48 || r.width < 44))
              .map(([t, r]) => `${t} ${r.width}x${r.height}`),
          );
        assert.deepEqual(small, [], `${name}: targets`);
      }),
    ));
}

test("with wide text spacing nothing is cut off (WCAG 2.2, 1.4.12)", () =>
  visit({ viewport: { width: 360, height: 640 } }, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(
        "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }",
      );
      document.adoptedStyleSheets = [sheet];
    });
    assert.ok(
      await page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth),
    );
  }));

test("forced colours: hollow and full dots, pressed marks and shapes still differ", () =>
  visit({ forcedColors: "active" }, async (page, { origin }) => {
    await firstRange(page, origin);
    const fill = (s) =>
      page
        .locator(s)
        .first()
        .evaluate((n) => getComputedStyle(n).fill);
    assert.equal(await fill(".dot.outside"), "none");
    assert.notEqual(await fill(".dot.inside"), "none");
    const ink = await page.evaluate(() => getComputedStyle(document.body).color);
    assert.equal(await fill(".dot.inside"), ink);
  }));

test("the focus can be seen on every kind of thing that takes it", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    for (let i = 0; i < 25; i++) {
      await page.keyboard.press("Tab");
      const outline = await page.evaluate(() => {
        const s = getComputedStyle(document.activeElement);
        return [document.activeElement.tagName, s.outlineStyle, parseFloat(s.outlineWidth)];
      });
      if (outline[0] === "BODY") break;
      assert.ok(outline[1] !== "none" && outline[2] >= 2, outline.join(" "));
    }
  }));

test("the range is spoken once it has settled, not while it refines", () =>
  visit({}, async (page, { origin }) => {
    await page.addInitScript(() => {
      globalThis.spoken = [];
      addEventListener("DOMContentLoaded", () =>
        new MutationObserver(() => {
          const text = document.getElementById("status").textContent;
          if (text) globalThis.spoken.push([text, document.body.dataset.range]);
        }).observe(document.getElementById("status"), { childList: true }),
      );
    });
    await firstRange(page, origin);
    await page.waitForFunction(() => globalThis.spoken.length > 0);
    const spoken = await page.evaluate(() => globalThis.spoken);
    assert.equal(spoken.length, 1);
    assert.match(spoken[0][0], /would cost less than/);
    assert.match(spoken[0][1], /settled|budget_ended/);
  }));

for (const format of ["A4", "Letter"]) {
  test(`on paper: at most three sheets of ${format}, with what must not be missing`, () =>
    visit({}, async (page, { origin }) => {
      await firstRange(page, origin);
      await page.waitForSelector(".paper-link", { state: "attached" });
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      const pages = pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g).length;
      assert.ok(pages >= 1 && pages <= 3, `${pages} pages`);
      await page.keyboard.press("Tab");
      const ring = () =>
        page.evaluate(() => {
          document.getElementById("range-title").focus();
          return getComputedStyle(document.activeElement).outlineStyle;
        });
      assert.equal(await ring(), "solid", "what is in hand is shown on the screen");
      await page.emulateMedia({ media: "print" });
      assert.equal(await ring(), "none", "and not on paper");
      const text = await page.locator("main").innerText();
      for (const must of [
        "not an estimate, not a quotation and not a ceiling",
        "1 would cost more than",
        "Rates check code",
        "simulated cars",
        "seed",
        "#v1.",
        "Strip and survey",
        "Not in the range",
        "What it rests on",
      ])
        assert.ok(text.includes(must), must);
      assert.equal(await page.locator("button:visible, input:visible").count(), 0);
      assert.doesNotMatch(text, /sign here|signature|signed by/i);
    }));
}

test("a range that is still rough says so across the paper", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    await page.workers()[0].evaluate(() => {
      const real = globalThis.underpaintAsk;
      globalThis.underpaintAsk = (text) => {
        const reply = JSON.parse(real(text));
        if (reply.kind === "range") reply.state = "refining";
        return JSON.stringify(reply);
      };
    });
    await press(page, "four_door_saloon");
    await page.getByLabel("Year").fill("1967");
    await page.getByRole("button", { name: "Continue" }).click();
    for (const a of ["mild", "driven_all_year", "show"]) await press(page, a);
    await page.waitForSelector(".dots");
    assert.match(await page.locator(".rough-note").first().textContent(), /still being worked out/);
    await page.emulateMedia({ media: "print" });
    assert.ok(await page.locator(".paper-rough").isVisible());
  }));

test("what makes it wide: worked out when asked for, adds up, and says how one would find out", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.getByText("What makes it wide, and what could make it worse").click();
    await page.waitForSelector(".fold-wide[data-state=settled]", { timeout: patience(300_000) });
    const percents = (await page.locator(".wide-shares strong").allTextContents()).map((t) =>
      Number(/^(\d+)%/.exec(t)[1]),
    );
    const rest = Number(/: (\d+)%/.exec(await page.locator(".wide-rest").textContent())[1]);
    const sum = percents.reduce((a, b) => a + b, rest);
    assert.ok(Math.abs(sum - 100) <= percents.length, `${percents} and ${rest} add to ${sum}`);
    assert.deepEqual(
      percents,
      [...percents].sort((a, b) => b - a),
      "the largest first",
    );
    const worse = await page.locator(".wide-worse > li").allTextContents();
    assert.equal(worse.length, 5);
    for (const text of worse) assert.match(text, /most expensive fifth.*\$.*(survey|opened)/s);
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 1280);
  }));

test("a sum: how many cars it would cover, and what would fit within it", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.getByLabel(/A sum you have in mind/).fill("$110,000");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.getByRole("button", { name: "What would fit within it?" }).click();
    await page.locator(".cover-more li").first().waitFor();
    const lines = await page.locator(".cover-more li").allTextContents();
    assert.equal(lines.length, 9);
    assert.match(lines.join("\n"), /Driver standard, whole body: enough in .*cars? out of/);
    assert.match(
      await page.locator(".set-aside").textContent(),
      /Keep \$[\d,]+ in reserve on top of the middle amount/,
    );
  }));

test("reaching the shop: the person's own mail, with the link in it; the page sends nothing", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.evaluate(() => {
      window.gone = [];
      navigation?.addEventListener?.("navigate", (e) => {
        window.gone.push(e.destination.url);
        e.preventDefault();
      });
    });
    await page.getByRole("button", { name: "Ask the shop about strip and survey" }).click();
    await page.waitForFunction(() => window.gone.length > 0);
    const [address] = await page.evaluate(() => window.gone);
    assert.match(address, /^mailto:shop@example\.com\?subject=Strip%20and%20survey/);
    assert.match(decodeURIComponent(address), new RegExp(`${origin}/#`));
  }));

test("the job in stages with what it costs to stop, and what other wishes would change", () =>
  visit({ viewport: { width: 320, height: 800 } }, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.getByText("The job in stages, and the price to stop at each").click();
    await page.waitForSelector(".fold-plan[data-state=settled]", { timeout: patience(240_000) });
    const stages = await page.locator(".plan-stages > li").allTextContents();
    assert.equal(stages.length, 5);
    for (const text of stages.slice(0, 4))
      assert.match(text, /\$.*hours.*weeks.*by the end of this stage: \$.*If you stop here, .*\$2,300/s);
    await page.getByText("What another standard or less work would change").click();
    await page.waitForSelector(".fold-decide[data-state=settled]", { timeout: patience(240_000) });
    const options = await page.locator(".decide-options > li").allTextContents();
    assert.ok(options.length >= 6);
    for (const text of options) assert.match(text, /\$.*(saves money in|no difference)/s);
    await page.evaluate(axeSource);
    assert.deepEqual(
      (await page.evaluate(() => axe.run(document.querySelector(".asked-folds")))).violations.map(
        (v) => v.id,
      ),
      [],
    );
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 320);
  }));

test("the code to scan on paper leads back to the same answers, read by another library", () =>
  visit({ viewport: { width: 800, height: 1000 } }, async (page, { origin }) => {
    const { default: jsQR } = await import("jsqr");
    await firstRange(page, origin);
    await page.waitForSelector(".scan-code", { state: "attached" });
    const link = (await page.locator(".paper-link").textContent()).replace(
      "To open these answers again: ",
      "",
    );
    // Drawn at four pixels a module, as dots of a printer would be.
    const pixels = await page.evaluate(async () => {
      const node = document.querySelector(".scan-code").cloneNode(true);
      const side = Number(node.getAttribute("viewBox").split(" ")[2]) * 4;
      for (const name of ["width", "height"]) node.setAttribute(name, String(side));
      const canvas = Object.assign(document.createElement("canvas"), { width: side, height: side });
      const context = canvas.getContext("2d");
      context.fillStyle = "#fff";
      context.fillRect(0, 0, side, side);
      context.scale(4, 4);
      context.fillStyle = "#000";
      context.fill(new Path2D(node.querySelector("path").getAttribute("d")));
      return { side, data: [...context.getImageData(0, 0, side, side).data] };
    });
    const read = jsQR(Uint8ClampedArray.from(pixels.data), pixels.side, pixels.side);
    assert.equal(read?.data, link);
    assert.ok(link.startsWith(`${origin}/#`));
    const size = await page.locator(".scan-code").getAttribute("width");
    assert.equal(parseFloat(size), pixels.side / 4 / 2, "half a millimetre a module");
  }));

test("the library for codes is the pinned one, byte for byte", () => {
  assert.equal(
    readFileSync(new URL("../../pages/vendor/qrcode.js", import.meta.url), "utf8"),
    readFileSync(new URL("../../node_modules/qrcode-generator/dist/qrcode.mjs", import.meta.url), "utf8"),
  );
});
