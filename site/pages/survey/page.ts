// The shop's page "This car": ties the open car, the engine and the views together. Read
// shared/thiscar/record.ts for what is recorded, and list.ts for how.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { ofBuild } from "../shared/address.ts";
import { band, mistakeBand, restartedBand } from "../shared/bands.ts";
import type { CarFile } from "../shared/carfile.ts";
import { carriesCar, encode, MOST_CHARACTERS } from "../shared/carurl.ts";
import { shopStore } from "../shared/durablestorage.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { whenDropped } from "../shared/files.ts";
import { Frame } from "../shared/frame.ts";
import { HistoryState } from "../shared/historystate.ts";
import { type Origin, today, toShare } from "../shared/linkcontent.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { openShop } from "../shared/openshop.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import { questions } from "../shared/questions.ts";
import { OpenedShop } from "../shared/thiscar/context.ts";
import type { Failure } from "../shared/thiscar/gather.ts";
import { type FoundCar, foundBand, fromLink, linkProblem, openFile } from "../shared/thiscar/start.ts";
import { carBands, failedBand, faultsBand, notReadyBand, refusedBand } from "./carbands.ts";
import { Leaving } from "./leaving.ts";
import { Notes } from "./notes.ts";
import { OpenCar, type Settings } from "./opencar.ts";
import { CarSaving } from "./savepanel.ts";
import { Strip } from "./strip.ts";
import { Views } from "./views.ts";

/** What survives a reload of this tab. */
interface VisitState {
  car: CarFile;
  ways: Settings;
  from: Origin | null;
  /** Whether this tab saves the car on the device. */
  kept: boolean;
}

/** How a car is opened. */
interface Arrival {
  settings?: Partial<Settings>;
  /** The entry on this device that it was found in. */
  kept?: FoundCar | null;
  /** It comes from this tab's own history. */
  again?: boolean;
}

const frame = new Frame();
const shop = new OpenedShop();

const engine = new EngineClient(
  {
    loading: (bytes) => frame.loading(bytes),
    restarted: () => frame.put("engine", restartedBand()),
    mistake: (text) => frame.put("mistake", mistakeBand(text)),
  },
  "engine.wasm",
  ["before_after", "worth", "wide", "plan", "compare_ways", "look_again"],
);
const openCar = new OpenCar({
  engine,
  codes: () => ({ rates: shop.opened.rates.check_code, figures: shop.opened.figures_code }),
  save: () => {
    saving.panel.save();
    historyState.later();
  },
  told,
  failed,
});
const notes = new Notes(engine, () => {
  if (openCar.hasCar) putCarBands();
});
const leaving = new Leaving(frame, again);
const saving = new CarSaving({
  openCar,
  frame,
  rates: () => shop.opened.rates,
  reply: () => strip.reply,
  goOn,
  again,
});
const strip = new Strip(openCar, { engine, odds: (on, text) => views.saidOdds(on, text) });
const views = new Views({ openCar, shop, engine, frame, strip, saving, take, sample, failed, answered });
const historyState = new HistoryState<VisitState>(() =>
  openCar.hasCar
    ? { car: openCar.car, ways: openCar.settings, from: openCar.from, kept: saving.panel.on }
    : null,
);

/** Something about the car changed: what is shown of it follows. */
function told(what: "car" | "tally" | "sheet"): void {
  if (what === "tally") {
    frame.put("refused", null);
    frame.put("faults", faultsBand(openCar));
    views.counted();
  } else if (what === "sheet") views.show({ focus: false });
  else if (!views.isList) strip.want(null);
}

function failed(reply: Failure | null): void {
  frame.put("refused", failedBand(reply));
}

/** Opens a car. The engine checks it before anything of it is shown. */
async function take(
  car: unknown,
  from: Origin | null,
  { settings = {}, kept = null, again = false }: Arrival = {},
): Promise<boolean> {
  frame.put("arrival", null);
  const sheet = await engine.ask({ ask: "sheet", car }).catch(() => null);
  if (sheet?.kind !== "sheet") {
    const another = (other: unknown) => take(other, from);
    frame.put("arrival", sheet ? refusedBand(car, sheet, shop.opened, another) : notReadyBand());
    return false;
  }
  saving.panel.stop();
  frame.put("found", null);
  frame.put("tabs", null);
  // The engine made the sheet from it, so it is a car file.
  openCar.take(car as CarFile, sheet, from, settings);
  saving.opened({ again, found: kept });
  historyState.later();
  openCar.count();
  notes.forget();
  putCarBands();
  views.opened(from?.kind === "link" || from?.kind === "file");
  if (from?.kind !== "sample" && from?.kind !== "blank") notes.ask(car);
  return true;
}

function putCarBands(): void {
  const acts = { again, answer: (field: string) => views.answer(field) };
  for (const [kind, node] of Object.entries(carBands(openCar, shop, notes.list, acts))) frame.put(kind, node);
}

/** An answer was changed. */
function answered(field: string | undefined): void {
  notes.answered(field);
  putCarBands();
}

function goOn(found: FoundCar): Promise<boolean> {
  return take(found.car, found.from ?? null, { settings: found.ways, kept: found });
}

async function sample(): Promise<void> {
  const response = await fetch(ofBuild("samples/two-door.json"));
  await take(await response.json(), { kind: "sample" });
}

/** Closes this car. If it is saved, it stays so and is offered again. */
function again(): void {
  if (!saving.panel.on && openCar.hasCar && !leaving.mayLeave(openCar)) return;
  saving.panel.stop();
  openCar.close();
  historyState.forget();
  putCarBands();
  offerFound();
  views.start();
}

function offerFound(): void {
  const erased = () => frame.put("found", null);
  frame.put(
    "found",
    foundBand({ goOn, erased }, (car) => engine.ask({ ask: "tally", car })),
  );
}

async function begin(): Promise<void> {
  if (carriesCar(location.hash)) {
    await fromAddress();
    if (openCar.hasCar) return;
  }
  const state = historyState.found();
  const kept = shopStore.load();
  if (state?.kept && kept && kept !== "unreadable" && (await goOn(kept))) return;
  if (state?.car && (await take(state.car, state.from, { settings: state.ways, again: true }))) return;
  offerFound();
  views.start(false);
}

/** Opens the car in the address, once, and removes it from the address. */
async function fromAddress(): Promise<void> {
  const fragment = location.hash;
  history.replaceState(history.state, "", location.pathname + location.search);
  try {
    const { car, from } = await fromLink(fragment);
    await take(car, from);
  } catch (error) {
    notOpened(linkProblem(error));
  }
}

const notOpened = (text: string) => frame.put("arrival", band("arrival", [text]));

/** The talk about the width takes the car along, saved or not. */
async function toTheTalk(event: MouseEvent): Promise<void> {
  if (!openCar.hasCar || !shop.reply || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  const content = toShare(openCar.car, null, shop.opened.rates, today());
  const fragment = await encode(content).catch(() => "");
  saving.takenAlong = true;
  // When so much is recorded that no link holds it, the talk takes what is saved.
  location.href = `../why/${fragment.length <= MOST_CHARACTERS ? fragment : ""}`;
}

document.querySelector<HTMLElement>('footer a[href="../why/"]')?.addEventListener("click", toTheTalk);
unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (shop.reply) openFile(file, { take, failed: notOpened });
});
addEventListener("hashchange", () => {
  if (!shop.reply) return;
  if (carriesCar(location.hash)) fromAddress();
  else views.show({ focus: true });
});
openShop({ frame, engine }, async (opened) => {
  shop.reply = opened;
  shop.q = questions(opened.words);
  await shopStore.settle();
  await begin();
}).finally(() =>
  startOffline(
    () => !openCar.hasCar && !location.hash,
    (load) =>
      frame.put(
        "newer",
        band(
          "newer",
          ["A newer version of this page is ready. What is recorded stays."],
          [["Load it", load]],
        ),
      ),
    "../",
  ),
);
