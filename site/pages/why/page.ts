// "Why so wide": ties the car in hand, the engine and the pages of the talk
// together. Read talk.js for the pages and sums.js for what they stand on.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { button, el } from "../shared/dom.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { Frame } from "../shared/frame.ts";
import { band, brokenBand, mistakeBand, pastBand, restartedBand } from "../shared/bands.ts";
import { today } from "../shared/linkcontent.ts";
import { carriesCar } from "../shared/carurl.ts";
import { readCarFile, whenDropped } from "../shared/files.ts";
import { openShop } from "../shared/openshop.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { HistoryState } from "../shared/historystate.ts";
import { fromLink, linkProblem } from "../shared/thiscar/start.ts";
import { fit } from "../shared/thiscar/fit.ts";
import { entered, handLine, keptCar, sampleCar, surveyAddress } from "./hand.ts";
import { Sums } from "./sums.ts";
import { Talk } from "./talk.ts";
import { Twenty } from "./twenty.ts";
import { TwoWays } from "./twoways.ts";
import { Suppose } from "./suppose.ts";
import { widthPages } from "./widths.ts";
import { Widest } from "./widest.ts";
import { Ending } from "./ending.ts";
import { whyPaper } from "./whypaper.ts";

const byId = (id) => document.getElementById(id);
const frame = new Frame();
let opened = null;
let hand = null;
let surveyLink = "../survey/";

const link = new EngineClient(
  {
    loading: (bytes) => frame.loading(bytes),
    restarted: () => frame.put("engine", restartedBand()),
    mistake: (text) => frame.put("mistake", mistakeBand(text)),
  },
  "engine.wasm",
  ["before_after", "worth", "wide"],
);
const sums = new Sums(link, changed);
const host = {
  link,
  say: (text) => frame.say(text),
  again: (name) => sums.again(name),
  hand: () => hand,
  uk: () => opened.words === "uk",
  state: () => sums.state,
  address: () => surveyLink,
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
      memory.later();
    },
  },
);
const memory = new HistoryState(() => (hand ? { car: hand.car, from: hand.from } : null));

/** An answer came: the page in hand, the line of the car and the paper follow. */
function changed() {
  if (!hand) return;
  const broken = [...sums.replies.values()].find((r) => r.kind === "broken");
  frame.put("broken", broken ? brokenBand(broken.text) : null);
  carLine();
  talk.drawn();
  paper();
}

function paper() {
  byId("paper").replaceChildren(
    whyPaper({ opened, uk: host.uk() }, { ...hand, from: entered(hand.from) }, sums.replies),
  );
}

const input = el("input", {
  type: "file",
  accept: ".json,application/json",
  class: "visually-hidden",
  tabindex: "-1",
  "aria-hidden": "true",
  on: {
    change: () => {
      if (input.files[0]) openFile(input.files[0]);
      input.value = "";
    },
  },
});
const line = el("p", { class: "hand-line" });
byId("top").append(
  line,
  button("Open a car file", () => input.click(), { class: "quiet", "data-key": "open-file" }),
  input,
);
byId("top").hidden = true;

function carLine() {
  line.textContent = handLine(hand, sums.replies.get("range")?.car_line);
}

/** Opens a car: the engine looks at it before anything of it is shown. */
async function take(car, from) {
  frame.put("arrival", null);
  let sheet;
  try {
    sheet = await link.ask({ ask: "sheet", car });
  } catch {
    refused(["This car could not be opened: the sums are not ready. Try once more in a moment."]);
    return false;
  }
  if (sheet.kind !== "sheet") {
    notThis(car, from, sheet);
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

function refused(lines, more = []) {
  frame.put(
    "arrival",
    band("arrival", lines, [...more, ...(hand ? [] : [["Use the sample car (invented)", sample]])]),
  );
  scrollTo(0, 0);
}

/** A car that the engine does not take; several bodies are asked about. */
function notThis(car, from, reply) {
  if (reply.path === "bodies" && car?.bodies?.length > 1) {
    refused(
      ["The customer was not sure of the body. Which shall it be here? The other answers stay."],
      car.bodies.map((id) => [
        opened.bodies.find((b) => b.id === id)?.name ?? id,
        () => take({ ...car, bodies: [id] }, { ...from, fragment: undefined }),
      ]),
    );
  } else refused(["This car could not be opened.", reply.text]);
}

async function openFile(file) {
  try {
    await take(await readCarFile(file), { kind: "file" });
  } catch (error) {
    refused([error.message]);
  }
}

async function sample() {
  try {
    const { car, from } = await sampleCar();
    return await take(car, from);
  } catch {
    refused(["The sample could not be loaded."]);
    return false;
  }
}

/** Opens the car in the address, once, and takes it out of the address. */
async function fromAddress() {
  const fragment = location.hash;
  history.replaceState(history.state, "", location.pathname + location.search);
  try {
    const { car, from } = await fromLink(fragment);
    await take(car, { ...from, fragment });
  } catch (error) {
    refused([linkProblem(error)]);
  }
}

async function begin() {
  byId("top").hidden = false;
  if (carriesCar(location.hash)) {
    await fromAddress();
    return;
  }
  const state = memory.found();
  if (state?.car && (await take(state.car, state.from))) return;
  const kept = await keptCar();
  if (kept === "unreadable")
    frame.put(
      "found",
      band("found", [
        "A survey was kept on this device, but it cannot be read any more. “This car” can save what is there.",
      ]),
    );
  else if (kept) {
    await take(kept.car, kept.from);
    return;
  }
  await sample();
}

async function begun(reply) {
  opened = reply;
  await begin();
}

addEventListener("beforeprint", () => {
  const sheet = byId("paper").firstElementChild;
  if (sheet) fit(sheet);
});
watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (opened) openFile(file);
});
addEventListener("hashchange", () => {
  if (!opened) return;
  if (carriesCar(location.hash)) fromAddress();
  else if (hand) talk.show();
});
openShop({ frame, engine: link }, begun).finally(() =>
  startOffline(
    () => !hand || hand.from.kind === "sample",
    (load) =>
      frame.put("newer", band("newer", ["A newer version of this page is ready."], [["Load it", load]])),
    "../",
  ),
);
