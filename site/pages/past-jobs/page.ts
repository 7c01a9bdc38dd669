// The shop's page "Past jobs": ties the file in hand, the engine and the sections
// together. Read ledger.js for how a change counts and scoring.js for the sums.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { el } from "../shared/dom.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { Frame } from "../shared/frame.ts";
import { band, mistakeBand, pastBand, restartedBand } from "../shared/bands.ts";
import { today } from "../shared/linkcontent.ts";
import { whenDropped } from "../shared/files.ts";
import { openShop } from "../shared/openshop.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import { HistoryState } from "../shared/historystate.ts";
import { momentText } from "../shared/timestamp.ts";
import { saveFile } from "../shared/files.ts";
import { Ledger, blankFile } from "./ledger.ts";
import { Scoring } from "./scoring.ts";
import { Keeping } from "./savepanel.ts";
import { View } from "./view.ts";
import { startView } from "./start.ts";
import { jobsShelf } from "./storage.ts";
import { readJobsText } from "./jobfile.ts";
import { notTaken } from "./faults.ts";
import { carsOf, merge } from "./bringfiles.ts";
import { ofBuild } from "../shared/address.ts";

const frame = new Frame();
const shop = { opened: null, ratesText: "" };

const link = new EngineClient({
  loading: (bytes) => frame.loading(bytes),
  restarted: () => {
    frame.put("engine", restartedBand());
    ledger.again().catch(() => {});
  },
  mistake: (text) => frame.put("mistake", mistakeBand(text)),
});
const ledger = new Ledger({ link, told });
const scoring = new Scoring({
  link,
  ledger,
  rates: () => shop.ratesText,
  scored: (reply) => {
    view.scored(reply);
    frame.say(reply.headline.join(" "));
  },
  failed: (text) => frame.put("refused", band("refused", ["The jobs could not be worked out.", text])),
  say: (text) => frame.say(text),
});
const keeping = new Keeping({ link, ledger, frame, goOn, another });
const view = new View({ link, ledger, shop, frame, scoring, keeping, carFiles, mergeFile });
const memory = new HistoryState(() =>
  ledger.file ? { jobs: ledger.file, waiting: ledger.waiting, kept: keeping.on } : null,
);

/** Something of the file counts now: it is kept before anything else happens. */
function told(what) {
  keeping.keep();
  memory.later();
  if (what === "waiting") {
    view.drawWaiting();
    return;
  }
  frame.put("refused", null);
  view.draw();
  scoring.start();
}

/** Opens the text of a file; what was in hand stays until it is whole. */
async function open(text, { from, saved = false, waiting = [], found = null }) {
  frame.put("arrival", null);
  // The shelf is not written until it is known that this is what lies there.
  const wasOn = keeping.on;
  keeping.on = false;
  let faults;
  try {
    faults = await ledger.open(text, { saved, waiting });
  } catch {
    keeping.on = wasOn;
    refused([el("p", {}, "The sums did not answer. Try once more in a moment.")]);
    return false;
  }
  if (faults.length) {
    keeping.on = wasOn;
    refused([
      el("p", {}, el("strong", {}, `${from} could not be opened.`)),
      ...notTaken(faults, parsed(text), ledger.file ? "The jobs in hand stay as they were." : ""),
    ]);
    return false;
  }
  keeping.stop();
  if (found) keeping.goOn(found);
  frame.put("found", null);
  frame.put("tabs", null);
  frame.put(
    "sample",
    ledger.file.invented
      ? band(
          "sample",
          ["These jobs are invented: a sample. No such car was ever in a workshop."],
          [["Put the sample away", another]],
        )
      : null,
  );
  memory.later();
  view.opened();
  return true;
}

const parsed = (text) => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};
function refused(nodes) {
  frame.put("arrival", band("arrival", nodes));
  scrollTo(0, 0);
  frame.say(nodes.map((n) => n.textContent).join(" "));
}

async function openFile(file) {
  try {
    return await open(await readJobsText(file), { from: file.name, saved: true });
  } catch (error) {
    refused([el("p", {}, error.message)]);
    return false;
  }
}

function begin() {
  return open(JSON.stringify(blankFile(shop.opened.currency)), { from: "A new file", saved: true });
}

async function sample() {
  try {
    await open(await (await fetch(ofBuild("samples/past-jobs.json"))).text(), {
      from: "The sample",
      saved: true,
    });
  } catch {
    refused([el("p", {}, "The sample could not be loaded.")]);
  }
}

function goOn(found) {
  return open(JSON.stringify(found.car), {
    from: "What is kept on this device",
    waiting: found.waiting ?? [],
    found,
  });
}

async function carFiles(files) {
  const { good, refused: bad } = await carsOf(files, link);
  if (bad.length)
    refused([
      el(
        "p",
        {},
        el(
          "strong",
          {},
          bad.length === 1 ? "One file was not taken." : `${bad.length} files were not taken.`,
        ),
      ),
      el(
        "ul",
        {},
        bad.map((b) => el("li", {}, `${b.place}: ${b.text}`)),
      ),
    ]);
  else frame.put("arrival", null);
  if (good.length === 0) return;
  ledger.setWaiting([...ledger.waiting, ...good]);
  view.complete(good[0]);
}

async function mergeFile(file) {
  frame.put("arrival", null);
  try {
    const { faults, file: tried, text } = await merge(file, ledger);
    if (faults)
      refused([
        el("p", {}, `From ${file.name}:`),
        ...notTaken(faults, tried, "The jobs in hand stay as they were."),
      ]);
    else view.done(text);
  } catch (error) {
    refused([el("p", {}, error.message)]);
  }
}

/** A file dropped anywhere: what it is decides what becomes of it. */
async function arrive(file) {
  if (!shop.opened) return;
  if (!ledger.file) {
    await openFile(file);
    return;
  }
  if (!/\.json$/i.test(file.name)) {
    view.bring().table(file);
    return;
  }
  const format = parsed(await file.text().catch(() => ""))?.format;
  if (typeof format === "string" && format.startsWith("underpaint car ")) await carFiles([file]);
  else await mergeFile(file);
}

/** Puts these jobs down; what is kept nowhere is let go only when that is said twice. */
let asked = false;
function another() {
  if (!asked && !keeping.on && ledger.unsaved) {
    asked = true;
    frame.put(
      "leave",
      band(
        "leave",
        ["The last changes are kept nowhere. Opening other jobs loses them."],
        [
          ["Lose them", another],
          [
            "Save a file first",
            () => {
              keeping.save();
              leave();
            },
          ],
          [
            "Stay with these",
            () => {
              asked = false;
              frame.put("leave", null);
            },
          ],
        ],
      ),
    );
    scrollTo(0, 0);
    document.querySelector('[data-band="leave"] button').focus();
    return;
  }
  leave();
}

function leave() {
  asked = false;
  for (const kind of ["leave", "sample", "arrival", "refused", "tabs"]) frame.put(kind, null);
  scoring.stopQuietly();
  ledger.close();
  keeping.stop();
  memory.forget();
  start(true);
}

function start(moved) {
  offerFound();
  view.start(startView({ currency: shop.opened.currency, openFile, begin, sample }), moved);
}

function offerFound() {
  const found = jobsShelf.load();
  const erase = [
    "Erase",
    () => {
      jobsShelf.erase();
      frame.put("found", null);
    },
  ];
  if (!found) {
    frame.put("found", null);
    return;
  }
  if (found === "unreadable") {
    frame.put(
      "found",
      band(
        "found",
        ["Past jobs were kept on this device, but they cannot be read any more."],
        [["Save what is there as a file", () => saveFile("past-jobs.json", jobsShelf.text() ?? "")], erase],
      ),
    );
    return;
  }
  const n = found.car.jobs?.length ?? 0;
  frame.put(
    "found",
    band(
      "found",
      [
        `Past jobs are kept on this device, from ${momentText(found.when)}: ${n === 1 ? "1 job" : `${n} jobs`}.`,
      ],
      [
        ["Go on", () => goOn(found)],
        ["Save a file", () => saveFile("past-jobs.json", JSON.stringify(found.car))],
        erase,
      ],
    ),
  );
}

async function resume() {
  const state = memory.found();
  const kept = jobsShelf.load();
  if (state?.kept && kept && kept !== "unreadable" && (await goOn(kept))) return;
  if (
    state?.jobs &&
    (await open(JSON.stringify(state.jobs), {
      from: "What was open in this tab",
      waiting: state.waiting ?? [],
    }))
  )
    return;
  start(false);
}

async function begun(reply, rates) {
  Object.assign(shop, { opened: reply, ratesText: rates });
  if (reply.rates.valid_until < today()) frame.put("past", pastBand(reply.rates));
  await jobsShelf.settle();
  await resume();
}

unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
whenDropped(document.body, arrive);
openShop({ frame, engine: link }, begun).finally(() =>
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
