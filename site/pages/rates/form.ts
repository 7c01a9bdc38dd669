// One section of the form at a time, with what is wrong, what is usually a slip
// and what is still the sample's shown at its field.

import { el, list } from "../shared/dom.ts";
import { within } from "./draft.ts";
import { labelOf, sections } from "./fields.ts";
import { control } from "./inputs.ts";
import { lists } from "./lists.ts";

/** Members that lists ask, and the section of each. */
const LISTED = {
  materials: "materials",
  consumables: "materials",
  "parts.prices": "parts",
  what_is_done: "done",
  "strip_and_survey.charged": "stage",
  "sent_out.work": "sent",
  "tax.on": "tax",
  terms: "words",
};
const FOCUSABLE = "input, select, textarea, summary";

export class FormView {
  node = el("div", { class: "section-box" });
  #now = sections[0].id;
  #controls = [];
  #apart = el("div", { class: "section-notes" });
  #host;

  /** host: draft, link, outline(), checked() */
  constructor(host) {
    this.#host = host;
  }

  #words() {
    return this.#host.draft.get("words");
  }

  /** What controls and lists are given. */
  #forControls() {
    const { draft, link, outline } = this.#host;
    return {
      draft,
      link,
      outline: outline(),
      currencies: outline().currencies,
      words: () => this.#words(),
      symbol: () => draft.get("currency") ?? "",
      register: (more) => this.#controls.push(...more),
      notes: () => this.notes(),
      redraw: (focus) => this.draw({ keepOpen: true, focus }),
    };
  }

  titleOf(section) {
    return this.#words() === "uk" && section.uk ? section.uk : section.title;
  }

  links() {
    return sections.map((s) =>
      el(
        "li",
        {},
        el(
          "a",
          { href: `#${s.id}`, "data-section": s.id },
          el("span", { class: "step-name" }, this.titleOf(s)),
          el("span", { class: "step-note" }),
        ),
      ),
    );
  }

  fromAddress() {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id) && id !== this.#now) {
      this.#now = id;
      this.draw();
      this.node.querySelector("h2").focus();
    }
  }

  /** focus: the path of the field that had it, or "" for the heading. */
  draw({ keepOpen = false, focus = null } = {}) {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id)) this.#now = id;
    const open = keepOpen ? this.#controls.filter((c) => c.open && c.node.open).map((c) => c.path) : [];
    const section = sections.find((s) => s.id === this.#now);
    this.#controls = [];
    const host = this.#forControls();
    const fields = (section.fields ?? []).map((f) => this.#field(f, host));
    const more = section.list ? lists[section.list](host) : [];
    this.node.replaceChildren(
      el(
        "section",
        { "aria-labelledby": "section-title" },
        el("h2", { id: "section-title", tabindex: "-1" }, this.titleOf(section)),
        section.intro && el("p", {}, section.intro),
        this.#apart,
        el("div", { class: "fields" }, fields),
        more,
      ),
    );
    for (const c of [...this.#controls]) if (open.includes(c.path)) c.open();
    this.notes();
    if (focus !== null) this.#focus(focus);
  }

  #field(field, host) {
    if (field.heading)
      return el(
        "div",
        { class: "field-head" },
        el("h3", {}, field.heading),
        field.intro && el("p", { class: "hint" }, field.intro),
      );
    const made = control(field, host);
    this.#controls.push(made);
    return made.node;
  }

  /** Puts faults, slips and sample marks at their fields, and marks at the sections. */
  notes() {
    const reply = this.#host.checked();
    if (!reply) return;
    // A folded entry is told of all that is in it; else the nearest control alone.
    const nearest = (path) =>
      Math.max(...this.#controls.filter((c) => !c.open && within(path, c.path)).map((c) => c.path.length));
    const at = (all, c) =>
      all.filter((x) => within(x.path, c.path) && (c.open || c.path.length === nearest(x.path)));
    for (const c of [...this.#controls])
      c.notes({
        faults: at(reply.faults, c),
        warnings: at(reply.warnings, c),
        sample: reply.still_sample.some((p) => within(p, c.path)),
      });
    const here = [
      ...reply.faults.map((f) => [f.path, f.text]),
      ...reply.warnings.map((w) => [w.path, w.text]),
    ].filter(
      ([path]) =>
        path && this.sectionOf(path) === this.#now && !this.#controls.some((c) => within(path, c.path)),
    );
    this.#apart.replaceChildren(
      ...(here.length
        ? [el("p", {}, "To look at in this section:"), list(here.map(([, text]) => text))]
        : []),
    );
    this.#marks(reply);
  }

  #marks(reply) {
    for (const s of sections) {
      const n = [...reply.faults, ...reply.warnings].filter(
        (x) => x.path && this.sectionOf(x.path) === s.id,
      ).length;
      const a = document.querySelector(`[data-section="${s.id}"]`);
      if (!a) continue;
      a.querySelector(".step-name").textContent = this.titleOf(s);
      a.querySelector(".step-note").textContent = n ? `● ${n} to look at` : "";
      if (s.id === this.#now) a.setAttribute("aria-current", "page");
      else a.removeAttribute("aria-current");
    }
  }

  /** The section in which a path is asked; the first figures come last, for they
   *  stand elsewhere too. */
  sectionOf(path) {
    const listed = Object.keys(LISTED).find((l) => within(path, l));
    if (listed) return LISTED[listed];
    const found = sections
      .slice(1)
      .find((s) => s.fields?.some((f) => f.path && (within(path, f.path) || within(f.path, path))));
    return (found ?? sections[0]).id;
  }

  /** A path in the words of the form. */
  nameOf(path) {
    if (path === "") return "The file";
    for (const s of sections) {
      const field = s.fields?.find((f) => f.path && within(path, f.path));
      if (field) return labelOf(field, this.#words());
    }
    const section = this.titleOf(sections.find((s) => s.id === this.sectionOf(path)));
    return `${section}, ${entryName(path, this.#host.draft, this.#host.outline(), this.#words())}`;
  }

  /** Goes to the field of a path, in this section if it is asked here; "" is the
   *  heading. */
  goTo(path) {
    if (path !== "" && !this.#controls.some((c) => within(path, c.path))) {
      this.#now = this.sectionOf(path);
      history.replaceState(history.state, "", `#${this.#now}`);
      this.draw();
    }
    this.#focus(path);
  }

  #focus(path) {
    for (const c of this.#controls.filter((c) => c.open && within(path, c.path) && path !== c.path)) c.open();
    const best = this.#controls
      .filter((c) => within(path, c.path))
      .sort((a, b) => a.path.length - b.path.length)
      .at(-1);
    const target =
      best?.node.querySelector("[aria-invalid]") ??
      best?.node.querySelector(FOCUSABLE) ??
      this.node.querySelector("h2");
    target.focus();
    target.scrollIntoView({ block: "center" });
  }
}

/** materials[3].price as the name of the entry; the rest of the path stays, for
 *  it says which member. */
function entryName(path, draft, outline, words) {
  const [, listPath, n, rest] = /^(.*?)\[(\d+)\]\.?(.*)$/.exec(path) ?? [];
  if (n === undefined) return path;
  const one = draft.get(`${listPath}[${n}]`) ?? {};
  const known = (all, id) => {
    const found = all.find((x) => x.id === id);
    return found && (words === "uk" ? found.name_uk : found.name_us);
  };
  const name =
    one.name?.[words === "uk" ? "uk" : "us"] ??
    known(outline.parts, one.part) ??
    known(outline.steps, one.step) ??
    `number ${Number(n) + 1}`;
  return rest ? `${name}, ${rest.replace(/[._[]/g, " ").replace(/\]/g, "")}` : name;
}
