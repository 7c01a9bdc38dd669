// How "This car" looks and reads: automated accessibility checks, widths,
// targets, paper. And the one look that the customer's page offers.

import assert from "node:assert/strict";
import test from "node:test";
import { patience } from "../pace.mjs";
import { axeSource, firstRange, sentence, settled, visit } from "./browser.mjs";
import { cell, counted, goTo, largest, openCar, openFile, stand, twoDoor } from "./surveycar.mjs";

const VIEWS = ["answers", "walk", "survey", "opening", "todo", "stages", "paper"];
const half = {
  ...twoDoor,
  stages: [{ stage: "survey", on: "2026-06-20" }],
  looks: [{ look: "bubbles", on: "outer_sill.left", result: "yes", by: "customer" }],
  survey: [
    {
      on: "outer_sill.left",
      stage: "survey",
      condition: "rusted_through",
      finding: "patch_over_rust",
      note: "soft along the seam",
      photo: "12",
      at: "2026-06-20T14:05",
      was: [{ condition: "light_pitting", at: "2026-06-20T14:02" }],
    },
    { on: "hood.whole", stage: "survey", condition: "sound", lead_failed: 9 },
    { on: "inner_sill.right", stage: "survey", could_not_see: true },
    { on: "tail_panel.whole", stage: "survey", condition: "gone" },
  ],
};

/** axe-core, with the rules for WCAG 2.2 A and AA and its best practice. */
async function axe(page, where) {
  if (!(await page.evaluate(() => Boolean(globalThis.axe)))) await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { region: { enabled: false } },
    }),
  );
  assert.deepEqual(
    found.violations.map(
      (v) =>
        `${where}: ${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.target)
          .join(" ; ")}`,
    ),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

/** Every view with something in it; look(name) on each. */
async function everyView(page, origin, look) {
  await page.goto(`${origin}/survey/`);
  await page.waitForSelector("[data-key=sample]");
  await page.getByRole("button", { name: "Begin with this car" }).click();
  await look("start with an error");
  await openFile(page, origin, half);
  for (const view of VIEWS) {
    await page.evaluate((v) => {
      location.hash = v;
    }, view);
    await page.waitForSelector(`body[data-view=${view}]`);
    if (view === "todo") {
      await page
        .locator(".card")
        .first()
        .waitFor({ timeout: patience(3000) })
        .catch(() => {});
    }
    if (view === "stages")
      await page.waitForSelector(".before-after[data-state]", { timeout: patience(240_000) });
    if (view === "survey") {
      await goTo(page, "sill", "outer_sill.left");
      await page.locator(".car-drawing .opened-out").first().waitFor();
      await page.locator("main details").evaluateAll((all) =>
        all.forEach((d) => {
          d.open = true;
        }),
      );
    }
    await look(view);
  }
  await page.evaluate(() => {
    location.hash = "survey/lid";
  });
  await cell(page, "hood.whole").click();
  await page.getByRole("button", { name: "Make a link" }).click();
  await page.getByLabel("The link").waitFor();
  await look("a fault in hand, a link made");
  await stand(page);
  await page.keyboard.press("?");
  await page.waitForSelector("dialog[open]");
  await look("keys");
}

for (const scheme of ["light", "dark"]) {
  test(`This car: no accessibility fault that a program can find, in every view, ${scheme}`, () =>
    visit({ colorScheme: scheme }, (page, { origin }) => everyView(page, origin, (name) => axe(page, name))));
}

for (const [width, height] of [
  [320, 640],
  [360, 740],
]) {
  test(`This car: nothing to scroll sideways and no small target at ${width} pixels`, () =>
    visit({ viewport: { width, height } }, (page, { origin }) =>
      everyView(page, origin, async (name) => {
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        assert.ok(over <= 0, `${name}: ${over} pixels too wide`);
        const small = await page
          .locator(
            "main button:visible, main summary:visible, main select:visible, main input:visible:not([type=file]), main nav a:visible, main td[data-on]:visible",
          )
          .evaluateAll((all) =>
            all
              .map((n) => [n.textContent || n.tagName, n.getBoundingClientRect()])
              .filter(([, r]) => r.width > 0 && (r.height < 48 || r.width < 44))
              .map(([t, r]) => `${t} ${r.width}x${r.height}`),
          );
        assert.deepEqual(small, [], `${name}: targets`);
        const ids = await page.evaluate(() => [...document.querySelectorAll("[id]")].map((n) => n.id));
        assert.deepEqual(
          ids.filter((id, i) => ids.indexOf(id) !== i),
          [],
          `${name}: an id twice`,
        );
      }),
    ));
}

test("at 400 % (a window of 320 by 225) the words do not lie over the list", () =>
  visit({ viewport: { width: 320, height: 225 } }, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await stand(page);
    await page.keyboard.press("ArrowDown");
    const [box, hand] = [
      await page.locator(".grid .in-hand").boundingBox(),
      await page.locator(".survey-hand").boundingBox(),
    ];
    assert.ok(box.y >= 0 && box.y + box.height <= 225, "the part in hand is in view");
    assert.ok(hand.y >= box.y + box.height, "the words follow the list");
  }));

test("forced colours: recorded, in hand and faulty still differ", () =>
  visit({ forcedColors: "active" }, async (page, { origin }) => {
    await openFile(page, origin, half);
    await counted(page, "survey", "Survey 4 of 91");
    await goTo(page, "lid", "hood.whole");
    const border = (on) =>
      cell(page, on).evaluate(
        (n) => `${getComputedStyle(n).borderTopStyle} ${getComputedStyle(n).borderTopWidth}`,
      );
    const seen = [await border("hood.whole"), await border("hood_edge.whole")];
    await cell(page, "hood_edge.whole").click();
    seen.push(await border("hood_edge.whole"));
    assert.equal(new Set(seen).size, 3, seen.join(", "));
  }));

test("the list itself on paper: what is recorded and where the whole sheet is, and nothing to press or fill in", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, half);
    const before = page.locator(".survey .on-paper");
    assert.ok(!(await before.isVisible()));
    await page.emulateMedia({ media: "print" });
    assert.match(await before.innerText(), /All of it is on the survey sheet, under Papers/);
    assert.equal(await page.locator("textarea:visible, input:visible, .survey-hand:visible").count(), 0);
    assert.ok(await page.locator(".grid").isVisible());
  }));

for (const format of ["A4", "Letter"]) {
  test(`the survey on paper, ${format}: every part once, rows whole, black ink, few sheets`, () =>
    visit({}, async (page, { origin }) => {
      await openFile(page, origin, {
        ...half,
        bodies: largest.bodies,
        survey: half.survey.filter((r) => r.on !== "hood.whole"),
      });
      await counted(page, "survey", "Survey 3 of 101");
      await page.evaluate(() => {
        location.hash = "paper";
      });
      await page.locator(".survey-sheet .opened-out").first().waitFor();
      await page.emulateMedia({ media: "print" });
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      const pages = pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g).length;
      console.log(`# survey sheet of the largest body on ${format}: ${pages} pages`);
      assert.ok(pages >= 2 && pages <= 6, `${pages} pages`);
      assert.equal(
        (await page.locator(".sheet-table .ring").count()) +
          (await page.locator(".sheet-table td strong").count()),
        101,
        "every part stands there once",
      );
      const text = await page.locator("main").innerText();
      for (const must of [
        "LEFT",
        "RIGHT",
        "Rusted through",
        "soft along the seam",
        "Photograph 12",
        "Not ringed and not written means not known",
        "Rates check code",
        "Could not see",
      ])
        assert.ok(text.includes(must), must);
      assert.equal(await page.locator("button:visible, input:visible, nav:visible").count(), 0);
      assert.doesNotMatch(text, /sign here|signature|signed by|[$£]\d/i);
      assert.equal(
        await page
          .locator(".sheet-table tr")
          .first()
          .evaluate((n) => getComputedStyle(n).breakInside),
        "avoid",
      );
      const inks = await page
        .locator("main *:visible")
        .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).color))]);
      assert.deepEqual(inks, ["rgb(0, 0, 0)"]);
    }));
}

test("the customer's page: one look that helps, its answer redraws the range, and it can be taken back", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.waitForSelector(".one-look [data-result]", { timeout: patience(30_000) });
    const offer = page.locator(".one-look");
    assert.equal(await offer.locator("h2").count(), 1, "one at a time");
    assert.match(
      await offer.innerText(),
      /[Nn]ever put any part of yourself under a car (that stands )?on a jack/,
    );
    assert.deepEqual(await offer.locator("[data-result]").allTextContents(), [
      "Yes",
      "No",
      "Could not look",
      "Yes, but on which side I do not know",
    ]);
    const asked = await offer.locator(".look-ask").textContent();
    const before = await sentence(page);
    await offer.getByRole("button", { name: "Yes", exact: true }).click();
    await settled(page);
    assert.match(await page.locator(".moved").textContent(), /^Your “yes” \([^?]+\) changed the range from/);
    const looks = await page.evaluate(() => history.state.car.looks);
    assert.equal(looks.length, 1);
    assert.deepEqual([looks[0].result, looks[0].by], ["yes", "customer"]);
    await page.waitForSelector(".looks-made li");
    assert.ok(
      (await page.locator(".looks-made").innerText()).includes(asked.replace(/\?$/, "").split(":")[0]),
    );
    await page.waitForSelector(".one-look [data-result]", { timeout: patience(30_000) });
    assert.notEqual(await page.locator(".look-ask").textContent(), asked, "the next look is another one");
    await page.getByRole("button", { name: /^Take back/ }).click();
    await settled(page);
    assert.equal(await sentence(page), before);
  }));

test("the customer's page says what strip and survey does to the width, on average", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.waitForSelector(".one-look[data-worth=settled]", {
      timeout: patience(300_000),
      state: "attached",
    });
    assert.match(await page.locator(".stage-worth").textContent(), /for a car like this is on average/);
    await page.evaluate(axeSource);
    await axe(page, "range with a look");
  }));
