// "Why so wide": connects the car, the engine and the pages of the talk. Read talk.ts for
// how the pages turn, and sums.ts for what they ask the engine.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { band, brokenBand, mistakeBand, pastBand, restartedBand } from "../shared/bands.ts";
import type { CarFile } from "../shared/carfile.ts";
import { carriesCar } from "../shared/carurl.ts";
import { button, byId, el } from "../shared/dom.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { messageOf, readCarFile, whenDropped } from "../shared/files.ts";
import { Frame } from "../shared/frame.ts";
import { HistoryState } from "../shared/historystate.ts";
import { today } from "../shared/linkcontent.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { openShop } from "../shared/openshop.ts";
import type { OpenedReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { rangeOf } from "../shared/thiscar/gather.ts";
import { fromLink, linkProblem } from "../shared/thiscar/start.ts";
import { Ending } from "./ending.ts";
import { type Hand, handLine, type Source, sampleCar, storedCar, surveyAddress } from "./hand.ts";
import { type Need, Sums } from "./sums.ts";
import { Suppose } from "./suppose.ts";
import { Talk } from "./talk.ts";
import { Twenty } from "./twenty.ts";
import { TwoWays } from "./twoways.ts";
import { whyPaper } from "./whypaper.ts";
import { Widest } from "./widest.ts";
import { widthPages } from "./widths.ts";

const frame = new Frame();
let opened: OpenedReply | null = null;
let hand: Hand | null = null;
let surveyLink = "../survey/";

/** The open car; the pages of the talk are shown only while there is one. */
function inHand(): Hand {
  if (!hand) throw new Error("no car is open");
  return hand;
}

const engine = new EngineClient(
  {
    loading: (bytes) => frame.loading(bytes),
    restarted: () => frame.put("engine", restartedBand()),
    mistake: (text) => frame.put("mistake", mistakeBand(text)),
  },
  "engine.wasm",
  ["before_after", "worth", "wide"],
);
const sums = new Sums(engine, changed);
const isUK = () => opened?.words === "uk";
const host = {
  engine,
  say: (text: string) => frame.say(text),
  again: (name: Need) => sums.again(name),
  hand: inHand,
  car: () => inHand().car,
  uk: isUK,
  completeness: () => sums.completeness,
  surveyAddress: () => surveyLink,
};
const talk = new Talk(
  [
    new Twenty(host),
    new TwoWays(host),
    new Suppose(host),
    ...widthPages(host),
    new Widest(host),
    new Ending(host),
  ],
  {
    replies: () => sums.replies,
    seen: (page) => {
      if (page.needs) sums.first(page.needs);
      historyState.later();
    },
  },
);
const historyState = new HistoryState(() => (hand ? { car: hand.car, from: hand.from } : null));

/** A reply came: the page that is shown, the line of the car and the paper follow. */
function changed(): void {
  if (!hand || !opened) return;
  const broken = [...sums.replies.values()].find((r) => r.kind === "broken");
  frame.put("broken", broken ? brokenBand(broken.text) : null);
  line.textContent = handLine(hand, rangeOf(sums.replies)?.car_line);
  talk.drawn();
  byId("paper").replaceChildren(whyPaper(opened, isUK(), hand, sums.replies));
}

const input = el("input", {
  type: "file",
  accept: ".json,application/json",
  class: "visually-hidden",
  tabindex: "-1",
  "aria-hidden": "true",
});
input.addEventListener("change", () => {
  const file = input.files?.[0];
  if (file) openFile(file);
  input.value = "";
});
const line = el("p", { class: "hand-line" });
byId("top").append(
  line,
  button("Open a car file", () => input.click(), { class: "quiet", "data-key": "open-file" }),
  input,
);
byId("top").hidden = true;

/** Opens a car from outside. Nothing of it is shown before the engine has checked it. */
async function take(outside: unknown, from: Source): Promise<boolean> {
  if (!opened) return false;
  frame.put("arrival", null);
  const car = outside as CarFile;
  let sheet: ReplyTo<"sheet">;
  try {
    sheet = await engine.ask({ ask: "sheet", car });
  } catch {
    refused(["This car could not be opened: the sums are not ready. Try once more in a moment."]);
    return false;
  }
  if (sheet.kind !== "sheet") {
    notThis(opened, car, from, sheet);
    return false;
  }
  // Another car begins at the first page; a reload stays on its own.
  if (hand) history.pushState(null, "", location.pathname + location.search);
  hand = { car, from, sheet };
  surveyLink = await surveyAddress(hand, opened.rates);
  sums.begin(car);
  if (opened.rates.valid_until < today()) frame.put("past", pastBand(opened.rates));
  changed();
  talk.show({ focus: true, first: true });
  return true;
}

type Way = readonly [text: string, act: () => unknown];

function refused(lines: string[], more: Way[] = []): void {
  const ways: Way[] = hand ? more : [...more, ["Use the sample car (invented)", sample]];
  frame.put("arrival", band("arrival", lines, ways));
  scrollTo(0, 0);
}

/** The engine did not take the car. When it may be one of several bodies, asks which. */
function notThis(
  shop: OpenedReply,
  car: CarFile,
  from: Source,
  reply: Exclude<ReplyTo<"sheet">, { kind: "sheet" }>,
): void {
  const bodies = car?.bodies ?? [];
  if (reply.kind === "refused" && reply.path === "bodies" && bodies.length > 1) {
    const again: Source = from.kind === "link" ? { ...from, fragment: undefined } : from;
    refused(
      ["The customer was not sure of the body. Which shall it be here? The other answers stay."],
      bodies.map(
        (id): Way => [
          shop.bodies.find((b) => b.id === id)?.name ?? id,
          () => take({ ...car, bodies: [id] }, again),
        ],
      ),
    );
  } else refused(["This car could not be opened.", reply.text]);
}

async function openFile(file: File): Promise<void> {
  try {
    await take(await readCarFile(file), { kind: "file" });
  } catch (error) {
    refused([messageOf(error)]);
  }
}

async function sample(): Promise<boolean> {
  try {
    const { car, from } = await sampleCar();
    return await take(car, from);
  } catch {
    refused(["The sample could not be loaded."]);
    return false;
  }
}

/** Opens the car in the address, once, and takes it out of the address. */
async function fromAddress(): Promise<void> {
  const fragment = location.hash;
  history.replaceState(history.state, "", location.pathname + location.search);
  try {
    const { car, from } = await fromLink(fragment);
    await take(car, { ...from, fragment });
  } catch (error) {
    refused([linkProblem(error)]);
  }
}

async function begin(): Promise<void> {
  byId("top").hidden = false;
  if (carriesCar(location.hash)) {
    await fromAddress();
    return;
  }
  const state = historyState.found();
  if (state?.car && (await take(state.car, state.from))) return;
  const stored = await storedCar();
  if (stored === "unreadable")
    frame.put(
      "found",
      band("found", [
        "A survey was kept on this device, but it cannot be read any more. “This car” can save what is there.",
      ]),
    );
  else if (stored) {
    await take(stored.car, stored.from);
    return;
  }
  await sample();
}

async function begun(reply: OpenedReply): Promise<void> {
  opened = reply;
  await begin();
}

watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (opened) openFile(file);
});
addEventListener("hashchange", () => {
  if (!opened) return;
  if (carriesCar(location.hash)) fromAddress();
  else if (hand) talk.show();
});
openShop({ frame, engine }, begun).finally(() =>
  startOffline(
    () => !hand || hand.from.kind === "sample",
    (load) =>
      frame.put("newer", band("newer", ["A newer version of this page is ready."], [["Load it", load]])),
    "../",
  ),
);
