// The shop's page "Past jobs": ties the open file, the engine and the sections together. Read
// ledger.ts for how a change counts, and scoring.ts for how the jobs are scored.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { ofBuild } from "../shared/address.ts";
import { band, mistakeBand, pastBand, restartedBand } from "../shared/bands.ts";
import { el } from "../shared/dom.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { whenDropped } from "../shared/files.ts";
import { Frame } from "../shared/frame.ts";
import { HistoryState } from "../shared/historystate.ts";
import { today } from "../shared/linkcontent.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { openShop } from "../shared/openshop.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import type { OpenedReply } from "../shared/replies.ts";
import { Arrivals } from "./arrivals.ts";
import type { FileFault } from "./faults.ts";
import { blankFile, Ledger } from "./ledger.ts";
import { askToLeave, offerSaved } from "./pagebands.ts";
import { jobsPanel, type SavedJobs } from "./savepanel.ts";
import { Scoring } from "./scoring.ts";
import { startView } from "./start.ts";
import { jobsStore, type WaitingCar, waitingIn } from "./storage.ts";
import { type Shop, View } from "./view.ts";

/** What this tab remembers of the page. */
interface PageState {
  jobs: unknown;
  waiting: unknown;
  /** The jobs were also saved on this device. */
  kept: boolean;
}

const frame = new Frame();
let opened: Shop | null = null;

/** The shop. Nothing asks for it before begun() has received it. */
function shop(): Shop {
  if (!opened) throw new Error("the shop has not been opened yet");
  return opened;
}

const client = new EngineClient({
  loading: (bytes) => frame.loading(bytes),
  restarted: () => {
    frame.put("engine", restartedBand());
    ledger.again().catch(() => {});
  },
  mistake: (text) => frame.put("mistake", mistakeBand(text)),
});
const ledger = new Ledger({ client, told });
const scoring = new Scoring({
  client,
  ledger,
  rates: () => shop().ratesText,
  scored: (reply) => {
    view.scored(reply);
    frame.say(reply.headline.join(" "));
  },
  failed: (text) => frame.put("refused", band("refused", ["The jobs could not be worked out.", text])),
  say: (text) => frame.say(text),
});
const panel = jobsPanel({ client, ledger, frame, goOn, another });
const view = new View({
  client,
  ledger,
  shop,
  frame,
  scoring,
  panel,
  carFiles: (files) => arrivals.cars(files),
  mergeFile: (file) => arrivals.merge(file),
});
const arrivals = new Arrivals({ client, ledger, frame, view, open });
const historyState = new HistoryState<PageState>(() =>
  ledger.file ? { jobs: ledger.file, waiting: ledger.waiting, kept: panel.on } : null,
);

/** A change counts now: it is saved before anything else happens. */
function told(what: "file" | "waiting"): void {
  panel.save();
  historyState.later();
  if (what === "waiting") {
    view.drawWaiting();
    return;
  }
  frame.put("refused", null);
  view.draw();
  scoring.start();
}

interface Opening {
  /** Where the text comes from, in words. */
  from: string;
  /** The same text is in a file already. */
  saved?: boolean;
  waiting?: WaitingCar[];
  /** What is saved on this device, where the text is from there. */
  found?: SavedJobs;
}

/** Opens a text; the jobs that are open stay until it is known to be good. */
async function open(text: string, { from, saved = false, waiting = [], found }: Opening): Promise<boolean> {
  frame.put("arrival", null);
  // Nothing is written to the device until it is known that this is what is saved there.
  const saveAgain = panel.pause();
  let faults: FileFault[];
  try {
    faults = await ledger.open(text, { saved, waiting });
  } catch {
    saveAgain();
    arrivals.refused([el("p", {}, "The sums did not answer. Try once more in a moment.")]);
    return false;
  }
  if (faults.length) {
    saveAgain();
    arrivals.notOpened(faults, from, text);
    return false;
  }
  panel.stop();
  if (found) panel.goOn(found);
  frame.put("found", null);
  frame.put("tabs", null);
  frame.put(
    "sample",
    ledger.current.invented
      ? band(
          "sample",
          ["These jobs are invented: a sample. No such car was ever in a workshop."],
          [["Put the sample away", another]],
        )
      : null,
  );
  historyState.later();
  view.opened();
  return true;
}

function begin(): Promise<boolean> {
  return open(JSON.stringify(blankFile(shop().opened.currency)), { from: "A new file", saved: true });
}

async function sample(): Promise<void> {
  try {
    const response = await fetch(ofBuild("samples/past-jobs.json"));
    await open(await response.text(), { from: "The sample", saved: true });
  } catch {
    arrivals.refused([el("p", {}, "The sample could not be loaded.")]);
  }
}

function goOn(found: SavedJobs): Promise<boolean> {
  return open(JSON.stringify(found.car), {
    from: "What is kept on this device",
    waiting: waitingIn(found.waiting),
    found,
  });
}

/** Whether the band of another() is shown. */
let asked = false;

/** Leaves these jobs for others. Changes that are saved nowhere are lost only if somebody says
 *  so in the band. */
function another(): void {
  if (asked || panel.on || !ledger.unsaved) {
    leave();
    return;
  }
  asked = true;
  askToLeave(frame, {
    lose: another,
    save: () => {
      panel.saveFile();
      leave();
    },
    stay: () => {
      asked = false;
      frame.put("leave", null);
    },
  });
}

function leave(): void {
  asked = false;
  for (const kind of ["leave", "sample", "arrival", "refused", "tabs"]) frame.put(kind, null);
  scoring.stopQuietly();
  ledger.close();
  panel.stop();
  historyState.forget();
  start(true);
}

/** moved: the reader comes from jobs that were open. */
function start(moved: boolean): void {
  offerSaved(frame, goOn);
  const { currency } = shop().opened;
  view.start(startView({ currency, openFile: (file) => arrivals.openFile(file), begin, sample }), moved);
}

async function resume(): Promise<void> {
  const state = historyState.found();
  const saved = jobsStore.load();
  if (state?.kept && saved && saved !== "unreadable" && (await goOn(saved))) return;
  if (
    state?.jobs &&
    (await open(JSON.stringify(state.jobs), {
      from: "What was open in this tab",
      waiting: waitingIn(state.waiting),
    }))
  )
    return;
  start(false);
}

async function begun(reply: OpenedReply, ratesText: string): Promise<void> {
  opened = { opened: reply, ratesText };
  if (reply.rates.valid_until < today()) frame.put("past", pastBand(reply.rates));
  await jobsStore.settle();
  await resume();
}

unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (opened) arrivals.dropped(file);
});
openShop({ frame, engine: client }, begun).finally(() =>
  startOffline(
    () => !ledger.file,
    (load) =>
      frame.put(
        "newer",
        band(
          "newer",
          ["A newer version of this page is ready. Save a file first if the jobs are kept nowhere."],
          [["Load it", load]],
        ),
      ),
    "../",
  ),
);
