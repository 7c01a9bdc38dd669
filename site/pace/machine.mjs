// A slower processor with a given number of cores, and a page that notes when it
// shows what. All of it belongs to the measuring: nothing of this is in the site.

/** Within a worker the browser's throttling has no effect: the engine waits after
 *  every answer for as long as a slower processor would still have been at it. */
const slowed = (rate) => `{
  let real;
  const slow = (text) => {
    const began = performance.now();
    const reply = real(text);
    const until = performance.now() + ${rate - 1} * (performance.now() - began);
    while (performance.now() < until);
    return reply;
  };
  Object.defineProperty(globalThis, "underpaintAsk", { get: () => real && slow, set: (f) => { real = f; } });
}
`;

/** In the page: the last press on an answer, when a range of each state was painted
 *  after it, the largest paint, and how long each interaction took. */
function notes(cores) {
  Object.defineProperty(navigator, "hardwareConcurrency", { value: cores });
  const pace = { pressed: 0, shown: {}, largest: 0, interactions: {} };
  globalThis.pace = pace;
  addEventListener(
    "click",
    ({ target, timeStamp }) => {
      if (!target.closest("[data-answer]")) return;
      pace.pressed = timeStamp;
      pace.shown = {};
    },
    true,
  );
  new MutationObserver(() => {
    const state = document.body?.dataset.range;
    const { shown } = pace;
    if (state && !(state in shown))
      requestAnimationFrame(() =>
        setTimeout(() => {
          shown[state] ??= performance.now();
        }),
      );
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ["data-range"] });
  new PerformanceObserver((list) => {
    pace.largest = list.getEntries().at(-1).startTime;
  }).observe({ type: "largest-contentful-paint", buffered: true });
  new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries())
      if (interactionId)
        pace.interactions[interactionId] = Math.max(duration, pace.interactions[interactionId] ?? 0);
  }).observe({ type: "event", durationThreshold: 16, buffered: true });
}

/** Runs fn(page) on a fresh visitor's machine. */
export async function onMachine(browser, { rate, cores, phone = false }, fn) {
  const look = phone
    ? { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true }
    : { viewport: { width: 1280, height: 900 } };
  const context = await browser.newContext({ ...look, serviceWorkers: "block" });
  try {
    const page = await context.newPage();
    page.setDefaultTimeout(180000);
    await page.addInitScript(notes, cores);
    if (rate > 1) {
      await page.route("**/worker.js", async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, body: slowed(rate) + (await response.text()) });
      });
      const session = await context.newCDPSession(page);
      await session.send("Emulation.setCPUThrottlingRate", { rate });
    }
    return await fn(page);
  } finally {
    await context.close();
  }
}
