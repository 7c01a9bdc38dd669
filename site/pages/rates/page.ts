// The page "Rates": the draft, one section of the form at a time, the list of things to look
// at, and what the rates do to three sample cars.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { type BandButton, band, mistakeBand } from "../shared/bands.ts";
import { button, byId, el, list } from "../shared/dom.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { whenDropped } from "../shared/files.ts";
import { Frame } from "../shared/frame.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { headed } from "../shared/openshop.ts";
import type { DraftRates } from "../shared/ratesfile.ts";
import type { RatesCheckedReply, RatesOutlineReply } from "../shared/replies.ts";
import { Draft } from "./draft.ts";
import { Effect } from "./effect.ts";
import { FormView } from "./form.ts";
import { faultText } from "./inputs.ts";
import { Leaving } from "./leaving.ts";
import { Opening } from "./opening.ts";
import { Publish } from "./publish.ts";
import { draftPanel, draftStore } from "./savepanel.ts";

const DEAD =
  "The sums could not be done in this browser, so rates cannot be checked here. What you typed is still in the form.";

const frame = new Frame();
const client = new EngineClient({
  loading: (bytes) => frame.loading(bytes),
  restarted: () =>
    frame.put(
      "restarted",
      band("restarted", ["The sums stopped and were started again. Nothing you entered is lost."]),
    ),
  mistake: (text) => frame.put("mistake", mistakeBand(text)),
});
let checked: RatesCheckedReply | null = null;
let received: RatesOutlineReply | null = null;
let asked = 0;

/** What the form chooses from. Nothing is drawn before start() has received it. */
function outline(): RatesOutlineReply {
  if (!received) throw new Error("the outline has not arrived yet");
  return received;
}

const draft = new Draft(() => {
  panel.save();
  check();
});
const canonical = () => (checked?.ok ? checked.canonical : null);
const panel = draftPanel({
  draft,
  frame,
  canonical,
  goOn: (found) => {
    open(found.car, { dirty: true });
    panel.goOn(found);
  },
});
const leaving = new Leaving(frame, () => !panel.on && draft.changed);
const publish = new Publish({
  checked: () => checked,
  saved: () => {
    draft.saved();
    if (checked) lookAt(checked);
  },
});
const effect = new Effect({ client, draft, ok: () => checked?.ok === true, say: (text) => frame.say(text) });
const form = new FormView({ draft, client, outline, checked: () => checked });
const opening = new Opening({
  client,
  draft,
  frame,
  panel,
  leaving,
  outline,
  open,
  goTo: (path) => form.goTo(path),
});

/** Asks the engine about the draft; only the newest reply counts. */
async function check(): Promise<void> {
  if (!draft.rates || !received) return;
  const mine = ++asked;
  let reply: RatesCheckedReply;
  try {
    reply = await opening.check(draft.text());
  } catch {
    if (mine === asked) dead();
    return;
  }
  if (mine !== asked) return;
  checked = reply;
  frame.put("engine", null);
  form.notes();
  lookAt(checked);
  publish.show();
  effect.later();
  document.body.dataset.checked = String(mine);
}

function dead(): void {
  headed();
  const save: BandButton = ["Save a file", () => panel.saveFile()];
  frame.put(
    "engine",
    band(
      "dead",
      [DEAD],
      [["Try once more", () => (draft.rates ? check() : location.reload())], ...(draft.rates ? [save] : [])],
    ),
  );
}

/** Lists what is wrong and what looks like a slip, with a way to each. */
function lookAt(reply: RatesCheckedReply): void {
  const all = [
    ...reply.faults.map((f) => ({ path: f.path, text: `${form.nameOf(f.path)}: ${faultText(f)}` })),
    ...reply.warnings.map((w) => ({ path: w.path || reply.still_sample[0] || "", text: w.text })),
  ];
  const undoButton = byId("undo");
  undoButton.hidden = !draft.lastChange;
  undoButton.textContent = `Undo the last change: ${draft.lastChange}`;
  byId("draft-line").textContent = reply.ok
    ? `${reply.rates_line}. Check code ${reply.check_code}${reply.check_code === draft.siteCode ? "" : ", not on the site yet"}.`
    : "Something is wrong, so these rates cannot be used yet. The rates on the site stay as they are.";
  const way = ({ path, text }: { path: string; text: string }) => {
    if (!path) return text;
    const click = (event: Event) => {
      event.preventDefault();
      form.goTo(path);
    };
    return el("a", { href: `#${form.sectionOf(path)}`, on: { click } }, text);
  };
  const head =
    all.length === 0
      ? "Nothing to look at"
      : `${all.length} ${all.length === 1 ? "thing" : "things"} to look at`;
  const box = byId("look-at");
  const before = box.querySelector("h2");
  if (before && before.textContent !== head) frame.say(head);
  box.replaceChildren(el("h2", {}, head), ...(all.length ? [list(all.map(way))] : []));
}

/** Opens rates as the draft. */
function open(rates: DraftRates, { dirty = false } = {}): void {
  for (const kind of ["site", "past", "found", "arrival", "leave", "tabs"]) frame.put(kind, null);
  if (!document.getElementById("look-at")) build();
  draft.begin(rates, { dirty });
  form.draw({ focus: document.body.dataset.checked ? "" : null });
}

function build(): void {
  byId("screen").replaceChildren(
    el("h1", {}, "Rates"),
    el("p", { id: "draft-line" }),
    el(
      "div",
      { class: "rates-work" },
      el(
        "div",
        { class: "rates-form" },
        el("section", { id: "look-at", class: "look-at" }),
        el("p", {}, button("", undo, { id: "undo", hidden: true, class: "quiet" })),
        form.node,
      ),
      el(
        "div",
        { class: "rates-side" },
        effect.line,
        effect.node,
        publish.node,
        panel.node,
        opening.section(),
      ),
    ),
  );
  byId("steps").replaceChildren(el("ul", { class: "steps" }, form.links()));
}

function undo(): void {
  const name = draft.undo();
  if (name === null) return;
  form.draw({ keepOpen: true, focus: draft.lastChange ? null : "" });
  frame.say(`Taken back: ${name}.`);
}

async function start(): Promise<void> {
  const reply = await client.ask({ ask: "rates_outline" });
  if (reply.kind !== "rates_outline") throw new Error(reply.text);
  received = reply;
  frame.loaded();
  await opening.fromSite();
  await draftStore.settle();
  opening.offerSaved();
}

watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (received) opening.fromFile(file);
});
addEventListener("hashchange", () => {
  if (draft.rates) form.fromAddress();
});
start()
  .catch(() => {
    frame.loaded();
    dead();
  })
  .finally(() =>
    startOffline(
      () => !draft.changed && checked?.check_code === draft.siteCode,
      (load) =>
        frame.put(
          "newer",
          band(
            "newer",
            ["A newer version of this page is ready. Save or keep your draft first."],
            [["Load it", load]],
          ),
        ),
      "../",
    ),
  );
