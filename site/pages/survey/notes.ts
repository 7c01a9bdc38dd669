// What the file of a car does not say, or says in the words of an earlier version. Each note
// belongs to an answer, and is gone once that answer is changed.

import type { EngineClient } from "../shared/engineclient.ts";
import type { CarNote } from "../shared/replies.ts";

/** The field of the answer that a note is about. path: as the engine writes it. */
export function fieldOf(path: string): string {
  if (path === "covered") return "covered";
  if (path === "earlier_work_year") return "earlier_year";
  return `kept${/\d+/.exec(path)?.[0] ?? 0}`;
}

export class Notes {
  list: readonly CarNote[] = [];
  #engine: EngineClient;
  #changed: () => void;

  /** changed is called when the engine has answered. */
  constructor(engine: EngineClient, changed: () => void) {
    this.#engine = engine;
    this.#changed = changed;
  }

  forget(): void {
    this.list = [];
  }

  /** Asks the engine about a car file. A car can be used without its notes, so nothing is
   *  said when there is no answer. */
  async ask(car: unknown): Promise<void> {
    const reply = await this.#engine.ask({ ask: "check_car", car }).catch(() => null);
    if (reply?.kind !== "car_ok") return;
    this.list = reply.notes;
    this.#changed();
  }

  /** The answer of a field was changed, so what was said about the old one is not true. */
  answered(field: string | undefined): void {
    this.list = this.list.filter((note) => fieldOf(note.path) !== field);
  }
}
