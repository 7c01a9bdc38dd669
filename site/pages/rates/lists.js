// The parts of the form that are lists: materials, work sent out, steps of the
// strip and survey, part prices, and what is done by condition.

import { button, el } from "../dom.js";
import { control } from "./inputs.js";
import { pricesIn, pricesOut } from "./prices.js";

const STANDARDS = [["driver", "driver"], ["show", "show"], ["concours", "concours"]];
const SCOPES = [["whole_body", "whole body"], ["outside_only", "outside only"], ["metalwork_only", "metalwork only"]];
const HAD = [["", "as in the starting figures"], ["made_today", "whole panel made today"], ["section_only", "repair section only"], ["found", "must be found"], ["by_hand", "none made: by hand"], ["specialist", "specialist"]];
const AREAS = [["reached", "every face that the gun reaches"], ["outer", "outer skins"], ["inside_and_under", "inside and underneath"], ["none", "reckoned by the car"]];
const HOWS = { film: { film: { coats: 2, dry_um: 50, volume_solids: 0.35, transfer: 0.6 } }, per_m2: { per_m2: { quantity: 0.2 } }, per_car: { per_car: { quantity: 1 } } };

export const named = (host, thing) => (host.words() === "uk" ? thing.name_uk : thing.name_us);

/** A folded entry of a list: its controls are made when it is opened. */
function entry(host, title, path, fields, remove) {
  const box = el("details", { class: "entry", "data-path": path, on: { toggle: () => { if (box.open && !filled) fill(); } } }, el("summary", {}, title));
  let filled = false;
  const fill = () => {
    filled = true;
    const controls = fields().map((f) => control(f, host));
    host.register(controls);
    box.append(el("div", { class: "fields" }, controls.map((c) => c.node)), ...(remove ? [button("Remove", remove, { class: "quiet" })] : []));
    host.notes();
  };
  host.register([{ path, node: box, notes(faults, isSample) { box.dataset.faults = faults.length ? "yes" : ""; box.dataset.sample = isSample ? "yes" : ""; if (faults.length && !filled) { box.open = true; } } }]);
  return box;
}

function nameField(path) { return { path: `${path}.name.us`, also: `${path}.name.uk`, label: "Name", kind: "text" }; }

function materials(host) {
  const all = host.draft.get("materials");
  const redraw = host.redraw;
  const one = (m, i) => {
    const path = `materials[${i}]`;
    const how = Object.keys(m.how ?? {})[0];
    const quantity = how === "film"
      ? [["coats", "Coats", ""], ["dry_um", "Dry film of one coat", "µm"], ["volume_solids", "Solids by volume, ready to spray", "0 to 1"], ["transfer", "Share of what leaves the gun that stays on the car", "0 to 1"]].map(([id, label, unit]) => ({ path: `${path}.how.film.${id}`, label, unit, kind: "number" }))
      : [{ path: `${path}.how.${how}.quantity`, label: how === "per_m2" ? "Quantity for a square metre" : "Quantity for a car", unit: m.unit, kind: "number" }];
    return entry(host, `${named(host, { name_us: m.name?.us, name_uk: m.name?.uk }) ?? m.id}`, path, () => [nameField(path),
      { path: `${path}.price`, label: "Price", kind: "money", unit: `a ${m.unit}` },
      { path: `${path}.unit`, label: "Unit", kind: "choice", options: [["litre", "litre"], ["kilogram", "kilogram"], ["each", "each"]] },
      ...quantity,
      { path: `${path}.area`, label: "What it covers", kind: "choice", options: AREAS },
      { path: `${path}.stage`, label: "Used", kind: "choice", options: [["strip", "in the strip and survey"], ["after", "after the survey"]] },
      { path: `${path}.standards`, label: "At which standards", kind: "ticks", options: STANDARDS }], () => { host.draft.remove("materials", i, "removed a material"); redraw(); });
  };
  const add = (how) => {
    const id = `own_${all.length + 1}`;
    host.draft.insert("materials", { id, name: { us: "New material", uk: "New material" }, unit: "litre", price: "0", how: HOWS[how], area: how === "per_car" ? "none" : "reached", stage: "after", standards: ["driver", "show", "concours"], source: "the shop's own figure" }, "added a material");
    redraw();
  };
  const wire = { path: "consumables.money_per_metal_hour", label: "Wire, gas and discs for an hour of metalwork", kind: "three", unit: host.symbol(), optional: true, empty: null, hint: "All three empty: in the rate" };
  const controls = [control(wire, host)];
  host.register(controls);
  return [...all.map(one), el("div", { class: "add" }, el("p", {}, "Add a material reckoned by"), button("a film of paint", () => add("film")), button("the square metre", () => add("per_m2")), button("the car", () => add("per_car"))), controls[0].node];
}

function sent(host) {
  const one = (w, i) => {
    const path = `sent_out.work[${i}]`;
    return entry(host, named(host, { name_us: w.name?.us, name_uk: w.name?.uk }) ?? w.id, path, () => [nameField(path),
      { path: `${path}.price`, label: "Price", kind: "three", unit: host.symbol() },
      { path: `${path}.stage`, label: "When", kind: "choice", options: [["strip", "in the strip and survey"], ["after", "after the survey"]] },
      { path: `${path}.standards`, label: "At which standards", kind: "ticks", options: STANDARDS },
      { path: `${path}.scopes`, label: "For how much of the car", kind: "ticks", options: SCOPES }], () => { host.draft.remove("sent_out.work", i, "removed work sent out"); host.redraw(); });
  };
  const all = host.draft.get("sent_out.work");
  const add = () => {
    host.draft.insert("sent_out.work", { id: `own_${all.length + 1}`, name: { us: "New work sent out", uk: "New work sent out" }, price: [100, 150, 250], stage: "after", standards: ["driver", "show", "concours"], scopes: ["whole_body", "outside_only", "metalwork_only"], source: "the shop's own figure" }, "added work sent out");
    host.redraw();
  };
  return [...all.map(one), button("Add work sent out", add)];
}

function steps(host) {
  const words = Object.fromEntries(host.outline.steps.map((s) => [s.id, named(host, s)]));
  return [el("h3", {}, "How each step is charged"), ...host.draft.get("strip_and_survey.charged").map((s, i) => {
    const path = `strip_and_survey.charged[${i}]`;
    return entry(host, `${words[s.step] ?? s.step}: ${{ fixed: "fixed", each: "each", by_the_hour: "by the hour", at_cost: "at cost" }[s.how] ?? s.how}`, path, () => [
      { path: `${path}.how`, label: "Charged", kind: "choice", options: [["fixed", "fixed"], ["each", "at a price each"], ["by_the_hour", "by the hour"], ["at_cost", "at cost"]] },
      { path: `${path}.no_more_than`, label: "No more than, on a two-door of one shell", kind: "number", unit: "hours", optional: true, hint: "Only for a step by the hour; empty: no limit" }]);
  })];
}

function parts(host) {
  const byId = Object.fromEntries(host.outline.parts.map((p) => [p.id, p]));
  const wayNames = Object.fromEntries(host.outline.ways.map((w) => [w.id, named(host, w)]));
  const bodyNames = Object.fromEntries(host.outline.bodies.map((b) => [b.id, named(host, b)]));
  const one = (p, i) => {
    const path = `parts.prices[${i}]`;
    const title = `${byId[p.part] ? named(host, byId[p.part]) : p.part}: ${wayNames[p.way] ?? p.way}${p.body ? `, ${bodyNames[p.body] ?? p.body}` : ""}`;
    return entry(host, title, path, () => [
      { path: `${path}.price`, label: "Price", kind: "three", unit: host.symbol(), optional: true, empty: null, hint: "All three empty: the starting price" },
      { path: `${path}.had`, label: "How it is had", kind: "choice", options: HAD }], () => { host.draft.remove("parts.prices", i, "removed a part price"); host.redraw(); });
  };
  return [el("h3", {}, "Parts with a price of your own"), ...host.draft.get("parts.prices").map(one), addPart(host, byId, wayNames), pricesIn(host), pricesOut(host)];
}

function addPart(host, byId, wayNames) {
  const part = el("select", { id: "add-part" }, host.outline.parts.map((p) => el("option", { value: p.id }, named(host, p))));
  const way = el("select", { id: "add-way" });
  const ways = () => way.replaceChildren(...byId[part.value].ways.filter((w) => w !== "leave" && w !== "treat").map((w) => el("option", { value: w }, wayNames[w])));
  part.addEventListener("change", ways);
  ways();
  const add = () => {
    host.draft.insert("parts.prices", { part: part.value, way: way.value, price: byId[part.value].start[way.value] ?? [100, 150, 250], had: null, source: "the shop's own figure" }, "added a part price");
    host.redraw();
  };
  return el("fieldset", { class: "add" }, el("legend", {}, "Add a part"), el("div", { class: "typed" }, el("label", { for: "add-part" }, "Part"), part), el("div", { class: "typed" }, el("label", { for: "add-way" }, "What to do"), way), button("Add it", add));
}

const KINDS = { outer: "Outer panels", hidden: "Hidden parts", structural: "Parts that carry the load", structural_near_mounting: "Parts that carry the load, near a mounting" };

/** The chance of each way, by condition: the starting table, or the shop's own. */
function done(host) {
  const own = host.draft.get("what_is_done");
  if (!own) {
    return [el("p", {}, "The starting figures say in how many jobs of 100 each way is taken, for each condition and standard. Most shops leave them."),
      button("Set our own, beginning from the starting figures", () => { host.draft.set("what_is_done", structuredClone(host.outline.what_is_done), "own table of what is done"); host.redraw(); })];
  }
  const tables = STANDARDS.flatMap(([standard]) => Object.entries(KINDS).map(([kind, name]) => entry(host, `${standard} standard: ${name.toLowerCase()}`, `what_is_done.${standard}.${kind}`,
    () => host.outline.conditions.map((c) => ({ path: `what_is_done.${standard}.${kind}.${c.id}`, label: named(host, c), kind: "row" })))));
  return [el("p", {}, "Chances from 0 to 1 in the order ", host.outline.ways.map((w) => named(host, w).toLowerCase()).join(", "), "; each row adds to 1."), ...tables,
    button("Go back to the starting figures", () => { host.draft.set("what_is_done", null, "back to the starting table"); host.redraw(); })];
}

export const lists = { materials, sent, steps, parts, done };
