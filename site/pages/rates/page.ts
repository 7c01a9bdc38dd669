// The page "Rates": the draft, one section of the form at a time, what is to be
// looked at, and what the rates do to three sample cars.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { button, el, list } from "../shared/dom.ts";
import { band, mistakeBand } from "../shared/bands.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { Frame } from "../shared/frame.ts";
import { whenDropped } from "../shared/files.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { headed } from "../shared/openshop.ts";
import { Draft } from "./draft.ts";
import { Effect } from "./effect.ts";
import { FormView } from "./form.ts";
import { faultText } from "./inputs.ts";
import { KeepDraft, settleDraft } from "./savepanel.ts";
import { Leaving } from "./leaving.ts";
import { leftovers } from "./leftover.ts";
import { Opening } from "./opening.ts";
import { Publish } from "./publish.ts";

const DEAD =
  "The sums could not be done in this browser, so rates cannot be checked here. What you typed is still in the form.";

const frame = new Frame();
const link = new EngineClient({
  loading: (bytes) => frame.loading(bytes),
  restarted: () =>
    frame.put(
      "restarted",
      band("restarted", ["The sums stopped and were started again. Nothing you entered is lost."]),
    ),
  mistake: (text) => frame.put("mistake", mistakeBand(text)),
});
let checked = null;
let outline = null;
let samples = [];
let asked = 0;

const draft = new Draft(() => {
  keep.keep();
  check();
});
const canonical = () => (checked?.ok ? checked.canonical : null);
const keep = new KeepDraft({
  draft,
  frame,
  canonical,
  goOn: (found) => {
    open(found.rates, { dirty: true });
    keep.goOn(found);
  },
});
const leaving = new Leaving(frame, keep);
const publish = new Publish({
  draft,
  checked: () => checked,
  saved: () => {
    draft.saved();
    lookAt();
  },
});
const effect = new Effect({ link, draft, ok: () => checked?.ok === true, say: (text) => frame.say(text) });
const form = new FormView({ draft, link, outline: () => outline, checked: () => checked });
const opening = new Opening({
  link,
  draft,
  frame,
  keep,
  leaving,
  outline: () => outline,
  open,
  goTo: (path) => form.goTo(path),
});

/** Asks the engine about the draft as it stands; only the newest answer counts. */
async function check() {
  if (!draft.rates || !outline) return;
  const mine = ++asked;
  let reply;
  try {
    reply = await opening.check(draft.text());
  } catch {
    if (mine === asked) dead();
    return;
  }
  if (mine !== asked) return;
  checked = reply.ok ? { ...reply, warnings: [...reply.warnings, ...leftovers(draft, samples)] } : reply;
  frame.put("engine", null);
  form.notes();
  lookAt();
  publish.show();
  effect.later();
  document.body.dataset.checked = String(mine);
}

function dead() {
  headed();
  frame.put(
    "engine",
    band(
      "dead",
      [DEAD],
      [
        ["Try once more", () => (draft.rates ? check() : location.reload())],
        ...(draft.rates ? [["Save a file", () => keep.save()]] : []),
      ],
    ),
  );
}

/** What is wrong and what looks like a slip, with a way to each. */
function lookAt() {
  const all = [
    ...checked.faults.map((f) => [f.path, `${form.nameOf(f.path)}: ${faultText(f)}`]),
    ...checked.warnings.map((w) => [w.path || checked.still_sample[0] || "", w.text]),
  ];
  const undoButton = document.getElementById("undo");
  undoButton.hidden = !draft.lastChange;
  undoButton.textContent = `Undo the last change: ${draft.lastChange}`;
  document.getElementById("draft-line").textContent = checked.ok
    ? `${checked.rates_line}. Check code ${checked.check_code}${checked.check_code === draft.siteCode ? "" : ", not on the site yet"}.`
    : "Something is wrong, so these rates cannot be used yet. The rates on the site stay as they are.";
  const way = (path, text) =>
    path
      ? el(
          "a",
          {
            href: `#${form.sectionOf(path)}`,
            on: {
              click: (event) => {
                event.preventDefault();
                form.goTo(path);
              },
            },
          },
          text,
        )
      : text;
  const head =
    all.length === 0
      ? "Nothing to look at"
      : `${all.length} ${all.length === 1 ? "thing" : "things"} to look at`;
  const box = document.getElementById("look-at");
  if (box.hasChildNodes() && box.querySelector("h2").textContent !== head) frame.say(head);
  box.replaceChildren(
    el("h2", {}, head),
    ...(all.length ? [list(all.map(([path, text]) => way(path, text)))] : []),
  );
}

/** Opens rates as the draft. */
function open(rates, { dirty = false } = {}) {
  for (const kind of ["site", "past", "found", "arrival", "leave", "tabs"]) frame.put(kind, null);
  if (!document.getElementById("look-at")) build();
  draft.begin(rates, { dirty });
  form.draw({ focus: document.body.dataset.checked ? "" : null });
}

function build() {
  document
    .getElementById("screen")
    .replaceChildren(
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
          keep.node,
          opening.section(),
        ),
      ),
    );
  document.getElementById("steps").replaceChildren(el("ul", { class: "steps" }, form.links()));
}

function undo() {
  const name = draft.undo();
  if (name === null) return;
  form.draw({ keepOpen: true, focus: draft.lastChange ? null : "" });
  frame.say(`Taken back: ${name}.`);
}

async function start() {
  outline = await link.ask({ ask: "rates_outline" });
  samples = [outline.sample_us, outline.sample_uk].map((text) => JSON.parse(text));
  frame.loaded();
  await opening.fromSite();
  await settleDraft();
  opening.offerKept();
}

watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (outline) opening.fromFile(file);
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
