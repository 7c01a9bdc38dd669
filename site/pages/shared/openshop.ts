// How the shop's pages begin: they fetch the rates of the site and open them, or say why they
// cannot. Without rates they show no figure.

import { brokenBand, deadBand, ratesBand } from "./bands.ts";
import { byId, el } from "./dom.ts";
import type { EngineClient } from "./engineclient.ts";
import type { Frame } from "./frame.ts";
import type { OpenedReply } from "./replies.ts";

/** Largest rates file read, in characters; the build refuses a larger one too. */
export const MOST_RATES = 2097152;

/** A page that could not begin still has its heading, for those who find their way by headings. */
export function headed(): void {
  if (!document.querySelector("main h1")) byId("screen").prepend(el("h1", {}, document.title));
}

export interface OpenShopHost {
  frame: Frame;
  engine: EngineClient;
}

/** take goes on with the engine's answer and the text of the rates. */
export async function openShop(
  { frame, engine }: OpenShopHost,
  take: (opened: OpenedReply, rates: string) => unknown,
): Promise<void> {
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
