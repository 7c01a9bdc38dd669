// How the shop's pages begin: the rates of the site are fetched and opened, or the
// page says what stands in the way. No figure is shown without them.

import { brokenBand, deadBand, ratesBand } from "./bands.ts";
import { el } from "./dom.ts";

/** Largest rates file read, in characters; the build refuses a larger one too. */
export const MOST_RATES = 2097152;

/** A page that could not begin still says what it is, to those who go by headings. */
export function headed() {
  if (!document.querySelector("main h1"))
    document.getElementById("screen").prepend(el("h1", {}, document.title));
}

/** take(opened, text) goes on with the engine's answer and the text of the rates. */
export async function openShop({ frame, engine }, take) {
  try {
    const response = await fetch("../rates.json", { cache: "no-cache" });
    const rates = response.ok ? await response.text() : null;
    if (rates === null || rates.length > MOST_RATES) {
      headed();
      frame.loaded();
      frame.withoutRates();
      frame.put("engine", ratesBand(null));
      return;
    }
    const reply = await engine.open(rates);
    frame.loaded();
    if (reply.kind !== "opened") {
      headed();
      frame.withoutRates();
      frame.put("engine", reply.kind === "broken" ? brokenBand(reply.text) : ratesBand(reply));
      return;
    }
    frame.shop(reply);
    await take(reply, rates);
  } catch {
    headed();
    frame.loaded();
    frame.put(
      "engine",
      deadBand(() => location.reload()),
    );
  }
}
