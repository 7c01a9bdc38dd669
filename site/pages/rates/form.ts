// One section of the form at a time. Each field shows what is wrong with it, what looks
// like a slip, and whether its value is still the sample's.

import { el, list } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Words } from "../shared/ratesfile.ts";
import type { RatesCheckedReply, RatesOutlineReply } from "../shared/replies.ts";
import { asText } from "./boxes.ts";
import { type Draft, within } from "./draft.ts";
import { entryName } from "./entries.ts";
import { type Field, type Heading, labelOf, type Section } from "./fields.ts";
import type { Control, FormHost } from "./formhost.ts";
import { control } from "./inputs.ts";
import { lists } from "./lists.ts";
import { sections } from "./sections.ts";

export interface FormViewHost {
  draft: Draft;
  client: EngineClient;
  outline(): RatesOutlineReply;
  /** The last reply to the check. */
  checked(): RatesCheckedReply | null;
}

/** Members that lists ask, and the section of each. */
const LISTED: Record<string, string> = {
  materials: "materials",
  consumables: "materials",
  "parts.prices": "parts",
  what_is_done: "done",
  doubt: "trust",
  "strip_and_survey.charged": "stage",
  "sent_out.work": "sent",
  another_body: "another",
  "tax.on": "tax",
  terms: "words",
};
const FOCUSABLE = "input, select, textarea, summary";

export class FormView {
  node = el("div", { class: "section-box" });
  #now = sections[0].id;
  #controls: Control[] = [];
  #apart = el("div", { class: "section-notes" });
  #host: FormViewHost;

  constructor(host: FormViewHost) {
    this.#host = host;
  }

  #words(): Words {
    return this.#host.draft.get("words") === "uk" ? "uk" : "us";
  }

  #forControls(): FormHost {
    const { draft, client, outline } = this.#host;
    return {
      draft,
      client,
      outline: outline(),
      words: () => this.#words(),
      symbol: () => asText(draft.get("currency")),
      register: (more) => this.#controls.push(...more),
      notes: () => this.notes(),
      redraw: (focus) => this.draw({ keepOpen: true, focus }),
    };
  }

  titleOf(section: Section): string {
    return this.#words() === "uk" && section.uk ? section.uk : section.title;
  }

  /** The way to each section. */
  links(): HTMLLIElement[] {
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

  /** Goes to the section that the address names. */
  fromAddress(): void {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id) && id !== this.#now) {
      this.#now = id;
      this.draw();
      this.node.querySelector("h2")?.focus();
    }
  }

  /** focus: the path of the field that gets the focus, "" for the heading, null for none.
   *  keepOpen: entries that are open stay open. */
  draw({ keepOpen = false, focus = null }: { keepOpen?: boolean; focus?: string | null } = {}): void {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id)) this.#now = id;
    const open = keepOpen ? this.#controls.filter((c) => c.open && c.node.open).map((c) => c.path) : [];
    const section = sections.find((s) => s.id === this.#now) ?? sections[0];
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
    for (const c of [...this.#controls]) if (open.includes(c.path)) c.open?.();
    this.notes();
    if (focus !== null) this.#focus(focus);
  }

  #field(field: Field | Heading, host: FormHost): HTMLElement {
    if ("heading" in field)
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
  notes(): void {
    const reply = this.#host.checked();
    if (!reply) return;
    // A folded entry gets the notes of all that is in it; of the other controls only the
    // nearest one gets a note.
    const nearest = (path: string) =>
      Math.max(...this.#controls.filter((c) => !c.open && within(path, c.path)).map((c) => c.path.length));
    const at = <N extends { path: string }>(all: readonly N[], c: Control) =>
      all.filter((x) => within(x.path, c.path) && (c.open || c.path.length === nearest(x.path)));
    for (const c of [...this.#controls])
      c.notes({
        faults: at(reply.faults, c),
        warnings: at(reply.warnings, c),
        sample: reply.still_sample.some((p) => within(p, c.path)),
      });
    const here = [...reply.faults, ...reply.warnings].filter(
      ({ path }) =>
        path && this.sectionOf(path) === this.#now && !this.#controls.some((c) => within(path, c.path)),
    );
    this.#apart.replaceChildren(
      ...(here.length
        ? [el("p", {}, "To look at in this section:"), list(here.map(({ text }) => text))]
        : []),
    );
    this.#marks(reply);
  }

  #marks(reply: RatesCheckedReply): void {
    for (const s of sections) {
      const n = [...reply.faults, ...reply.warnings].filter(
        (x) => x.path && this.sectionOf(x.path) === s.id,
      ).length;
      const a = document.querySelector(`[data-section="${s.id}"]`);
      if (!a) continue;
      const name = a.querySelector(".step-name");
      const note = a.querySelector(".step-note");
      if (name) name.textContent = this.titleOf(s);
      if (note) note.textContent = n ? `● ${n} to look at` : "";
      if (s.id === this.#now) a.setAttribute("aria-current", "page");
      else a.removeAttribute("aria-current");
    }
  }

  /** The section that asks for a path. The section of the first figures is the last resort,
   *  for other sections ask for the same figures. */
  sectionOf(path: string): string {
    const listed = Object.entries(LISTED).find(([member]) => within(path, member));
    if (listed) return listed[1];
    const found = sections
      .slice(1)
      .find((s) => fieldsOf(s).some((f) => within(path, f.path) || within(f.path, path)));
    return (found ?? sections[0]).id;
  }

  /** A path in the words of the form. */
  nameOf(path: string): string {
    if (path === "") return "The file";
    const id = this.sectionOf(path);
    const field = sections.flatMap(fieldsOf).find((f) => within(path, f.path));
    if (field) return labelOf(field, this.#words());
    const section = this.titleOf(sections.find((s) => s.id === id) ?? sections[0]);
    return `${section}, ${entryName(path, this.#host.draft, this.#host.outline(), this.#words())}`;
  }

  /** Goes to the field of a path, in this section if it asks for it; "" is the heading. */
  goTo(path: string): void {
    if (path !== "" && !this.#controls.some((c) => within(path, c.path))) {
      this.#now = this.sectionOf(path);
      history.replaceState(history.state, "", `#${this.#now}`);
      this.draw();
    }
    this.#focus(path);
  }

  #focus(path: string): void {
    for (const c of this.#controls.filter((c) => within(path, c.path) && path !== c.path)) c.open?.();
    const best = this.#controls
      .filter((c) => within(path, c.path))
      .sort((a, b) => a.path.length - b.path.length)
      .at(-1);
    const target =
      best?.node.querySelector<HTMLElement>("[aria-invalid]") ??
      best?.node.querySelector<HTMLElement>(FOCUSABLE) ??
      this.node.querySelector("h2");
    target?.focus();
    target?.scrollIntoView({ block: "center" });
  }
}

const fieldsOf = (section: Section): Field[] => (section.fields ?? []).filter((field) => "path" in field);
