// Where the list stands: its groups, the current part, and which part comes next in which
// direction. Nothing here touches the page.

import { boxState } from "./listparts.ts";
import type { OpenCar } from "./opencar.ts";
import {
  allRows,
  beside,
  firstOf,
  type Group,
  groupOf,
  groupsOf,
  hasItem,
  lastOf,
  type Row,
  step,
} from "./order.ts";

export class Cursor {
  /** Whether the list shows the closed boxes. */
  opening = false;
  groups: Group[] = [];
  /** The current part; blank before the list is shown. */
  at = "";
  #openCar: OpenCar;

  constructor(openCar: OpenCar) {
    this.#openCar = openCar;
  }

  /** The group of the current part. */
  get group(): Group {
    const group = groupOf(this.groups, this.at);
    if (!group) throw new Error("the list has no parts");
    return group;
  }

  /** The rows that are shown at once. */
  get rows(): readonly Row[] {
    return this.opening ? allRows(this.groups, (g) => boxState(this.#openCar, g)) : this.group.rows;
  }

  get #down(): boolean {
    return this.#openCar.settings.down;
  }

  /** Begins a list at a part and at a group, where the list has them. */
  begin(opening: boolean, groupId: string, on: string | null): void {
    this.opening = opening;
    if (on) this.at = on;
    this.groups = groupsOf(this.#openCar.sheet, opening);
    const wanted = this.groups.find((g) => g.id === groupId);
    const known = this.groups.some((g) => hasItem(g, this.at));
    if (known && (!wanted || this.group === wanted)) return;
    this.at = firstOf(wanted ?? this.group, this.#down) ?? "";
  }

  /** The group that has a part, or null. */
  groupWith(on: string): Group | null {
    return this.groups.find((g) => hasItem(g, on)) ?? null;
  }

  /** The part after another one in the whole list, or null. */
  after(on: string): string | null {
    return step(this.groups, on, 1, this.#down);
  }

  /** The part next to the current one; the same one at an edge. */
  beside(rowBy: number, columnBy: number): string {
    return beside(this.rows, this.at, rowBy, columnBy);
  }

  /** The first or the last part of the group. */
  end(which: "first" | "last"): string {
    return (which === "first" ? firstOf : lastOf)(this.group, this.#down) ?? this.at;
  }

  /** Where the group before or after begins; each end of the list leads to the other. */
  inGroup(by: number): string {
    const n = this.groups.length;
    const next = this.groups[(this.groups.indexOf(this.group) + by + n) % n];
    return (next && firstOf(next, this.#down)) ?? this.at;
  }
}
