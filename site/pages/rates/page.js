// The page "Rates": the draft, one section of the form at a time, what is to be
// looked at, and what the rates do to three sample cars.

import { button, el, list } from "../dom.js";
import { band } from "../bands.js";
import { EngineLink } from "../engine-link.js";
import { Frame } from "../frame.js";
import { whenDropped } from "../files.js";
import { startOffline, watchConnection } from "../offline.js";
import { today } from "../shared.js";
import { Draft } from "./draft.js";
import { Effect } from "./effect.js";
import { sections } from "./fields.js";
import { FormView } from "./form.js";
import { KeepDraft, keptDraft } from "./keep.js";
import { Publish } from "./publish.js";

/** Largest rates file read, in bytes; the build refuses a larger one too. */
const MOST_RATES = 2 << 20;

const frame = new Frame();
const link = new EngineLink({ loading: (bytes) => frame.loading(bytes), restarted: () => frame.put("restarted", band("restarted", ["The sums stopped and were started again. Nothing you entered is lost."])) });
let checked = null;
let outline = null;
let asked = 0;

const draft = new Draft(() => { keep.keep(); check(); });
const canonical = () => (checked?.ok ? checked.canonical : null);
const keep = new KeepDraft({ draft, frame, canonical, goOn: (found) => { open(found.rates, { dirty: true }); keep.goOn(found); } });
const publish = new Publish({ draft, checked: () => checked, saved: () => draft.saved() });
const effect = new Effect({ link, draft, ok: () => checked?.ok === true });
const form = new FormView({ draft, link, outline: () => outline, checked: () => checked });

/** Asks the engine about the draft as it stands; only the newest answer counts. */
async function check() {
  if (!draft.rates || !outline) return;
  const mine = ++asked;
  let reply;
  try { reply = await link.ask({ ask: "check_rates", rates: draft.text(), today: today() }); } catch { return; }
  if (mine !== asked) return;
  checked = reply;
  form.notes();
  lookAt();
  publish.show();
  effect.later();
  document.body.dataset.checked = String(mine);
}

/** What is wrong and what looks like a slip, with a way to each. */
function lookAt() {
  const all = [...checked.faults.map((f) => [f.path, `${form.nameOf(f.path)}: expected ${f.expected}${f.found ? `, found ${f.found}` : ""}`]), ...checked.warnings.map((w) => [w.path, w.text])];
  document.getElementById("undo").hidden = !draft.canUndo;
  document.getElementById("draft-line").textContent = checked.ok ? `${checked.rates_line}. Check code ${checked.check_code}${draft.site && !draft.changed ? "" : ", not on the site yet"}.` : "Something is wrong, so these rates cannot be used yet. The rates on the site stay as they are.";
  const box = document.getElementById("look-at");
  box.replaceChildren(...[el("h2", {}, all.length === 0 ? "Nothing to look at" : `${all.length} ${all.length === 1 ? "thing" : "things"} to look at`),
    all.length > 0 && list(all.map(([path, text]) => (path ? el("a", { href: `#${form.sectionOf(path)}`, on: { click: (event) => { event.preventDefault(); form.goTo(path); } } }, text) : text)))].filter(Boolean));
}

/** Opens rates as the draft. */
function open(rates, { dirty = false } = {}) {
  for (const kind of ["site", "found", "arrival", "leave"]) frame.put(kind, null);
  if (!document.getElementById("look-at")) build();
  draft.begin(rates, { dirty });
  form.draw();
}

function build() {
  document.getElementById("screen").replaceChildren(
    el("h1", {}, "Rates"), el("p", { id: "draft-line" }),
    el("div", { class: "rates-work" },
      el("div", { class: "rates-form" }, el("section", { id: "look-at", class: "look-at" }), el("p", {}, button("Undo the last change", undo, { id: "undo", hidden: true, class: "quiet" })), form.node),
      el("div", { class: "rates-side" }, effect.node, publish.node, keep.node, start("Other rates"))));
  document.getElementById("steps").replaceChildren(el("ul", { class: "steps" }, form.links()));
}

function undo() {
  const name = draft.undo();
  if (name === null) return;
  form.draw();
  frame.say(`Taken back: ${name}.`);
}

/** Where rates can come from. */
function start(title) {
  const file = el("input", { type: "file", id: "rates-file", accept: ".json,application/json", on: { change: () => file.files[0] && fromFile(file.files[0]) } });
  return el("section", { class: "other-rates" }, el("h2", {}, title),
    el("div", { class: "typed" }, el("label", { for: "rates-file" }, "Open a rates file"), file),
    el("div", { class: "add" }, draft.site && button("Back to the site's rates", () => mayLeave(() => open(JSON.parse(draft.site)))),
      button("Begin from the sample in dollars", () => mayLeave(() => fromSample(outline.sample_us))), button("Begin from the sample in pounds", () => mayLeave(() => fromSample(outline.sample_uk)))));
}

function fromSample(text) {
  const rates = JSON.parse(text);
  open({ ...rates, shop: { ...rates.shop, invented: false } }, { dirty: true });
}

/** A draft that is kept nowhere is put aside only when that is said. */
function mayLeave(go) {
  if (keep.on || !draft.changed) { go(); return; }
  frame.put("leave", band("leave", ["The changes in this draft are neither saved nor kept on this device."], [["Put them aside and go on", () => { frame.put("leave", null); go(); }], ["Stay with this draft", () => frame.put("leave", null)]]));
  scrollTo(0, 0);
}

async function fromFile(file) {
  const refuse = (text, more) => { frame.put("arrival", band("arrival", ["This file could not be opened as rates. The draft stays as it was.", text], more)); scrollTo(0, 0); };
  if (file.size > MOST_RATES) { refuse("It is far too large to be a rates file."); return; }
  const text = await file.text();
  const reply = await link.ask({ ask: "check_rates", rates: text, today: today() });
  let rates = null;
  try { rates = JSON.parse(text); } catch { /* The engine has said why. */ }
  if (reply.ok) { mayLeave(() => open(rates)); return; }
  const faults = reply.faults.map((f) => f.text).join(" · ");
  // Rates with faults can be mended here, as long as they are rates at all.
  const whole = rates && typeof rates === "object" && ["shop", "labour", "materials", "parts", "strip_and_survey", "sent_out", "tax", "time"].every((m) => m in rates);
  refuse(faults, whole ? [["Open it and mend it here", () => mayLeave(() => open(rates, { dirty: true }))]] : []);
}

async function fromSite() {
  const response = await fetch("../rates.json", { cache: "no-cache" });
  const text = response.ok ? await response.text() : null;
  const reply = text === null || text.length > MOST_RATES ? { ok: false, faults: [{ text: "The file rates.json is not there, or far too large." }] } : await link.ask({ ask: "check_rates", rates: text, today: today() });
  frame.loaded();
  outline = await link.ask({ ask: "rates_outline" });
  if (!reply.ok) {
    build();
    open(JSON.parse(outline.sample_us), { dirty: true });
    frame.put("site", band("site", ["The rates on the site could not be read, so customers see no figure. Below is the invented sample; open your last good file, or mend this one.", ...reply.faults.map((f) => f.text)]));
    return;
  }
  draft.site = text;
  const opened = await link.open(text);
  if (opened.kind === "opened") frame.shop(opened);
  open(JSON.parse(text));
  if (opened.kind === "opened" && opened.rates.valid_until < today()) frame.put("past", band("past", [opened.rates.past_text.replace(/ Ask.*/, ""), "Customers are told so beside every range. Renew the dates under Shop and dates."]));
}

function offerKept() {
  const found = keptDraft();
  if (!found) return;
  frame.put("found", band("found", [`A draft of ${found.when} is kept on this device.`], [["Go on with it", () => { open(found.rates, { dirty: true }); keep.goOn(found); }], ["Leave it there", () => frame.put("found", null)], ["Erase it", () => { keep.erase(); frame.put("found", null); }]]));
}

watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => { if (outline) fromFile(file); });
addEventListener("hashchange", () => { if (draft.rates) form.fromAddress(); });
fromSite().then(offerKept, () => { frame.loaded(); frame.put("engine", band("dead", ["The sums could not be done in this browser, so rates cannot be checked here."], [["Try once more", () => location.reload()]])); })
  .finally(() => startOffline(() => !draft.changed, (load) => frame.put("newer", band("newer", ["A newer version of this page is ready. Save or keep your draft first."], [["Load it", load]])), "../"));
document.body.dataset.sections = String(sections.length);
