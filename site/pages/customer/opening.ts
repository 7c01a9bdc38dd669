// How the customer's page begins: it fetches the rates and opens them, or says what is wrong.
// Without rates it shows no figure.

import { brokenBand, deadBand, ratesBand } from "../shared/bands.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Frame } from "../shared/frame.ts";
import { MOST_RATES } from "../shared/openshop.ts";
import type { OpenedReply } from "../shared/replies.ts";

/** What the page shows when the engine stopped on a mistake of ours. */
export const engineBroke = ({ text }: { text: string }): HTMLElement =>
  brokenBand(text, "If it happens again, please tell the shop.");

/** The rates as text, or what is wrong with the file. */
async function ratesText(): Promise<{ text: string } | { problem: string }> {
  try {
    const response = await fetch("rates.json", { cache: "no-cache" });
    if (!response.ok) return { problem: `rates.json: the host answered ${response.status}.` };
    const text = await response.text();
    return text.length <= MOST_RATES
      ? { text }
      : { problem: `rates.json: expected at most ${MOST_RATES} characters, found ${text.length}.` };
  } catch {
    return { problem: "rates.json: the host did not answer." };
  }
}

export interface OpeningHost {
  frame: Frame;
  engine: EngineClient;
}

/** opened goes on with the engine's reply. */
export async function openRates(
  { frame, engine }: OpeningHost,
  opened: (reply: OpenedReply) => Promise<void>,
): Promise<void> {
  const without = (why: HTMLElement): void => {
    frame.loaded();
    frame.withoutRates();
    frame.waiting(false);
    frame.put("engine", why);
  };
  const rates = await ratesText();
  if ("problem" in rates) {
    without(ratesBand({ text: rates.problem }));
    return;
  }
  try {
    const reply = await engine.open(rates.text);
    if (reply.kind !== "opened") {
      without(reply.kind === "broken" ? engineBroke(reply) : ratesBand(reply));
      return;
    }
    frame.loaded();
    await opened(reply);
  } catch {
    frame.loaded();
    frame.waiting(false);
    frame.put(
      "engine",
      deadBand(() => location.reload()),
    );
  }
}
