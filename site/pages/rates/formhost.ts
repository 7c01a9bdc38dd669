// What the form gives its controls and lists, and what it knows of each control.

import type { EngineClient } from "../shared/engineclient.ts";
import type { Words } from "../shared/ratesfile.ts";
import type { CarNote, RatesOutlineReply, TextFault } from "../shared/replies.ts";
import type { Draft } from "./draft.ts";

export interface FormHost {
  draft: Draft;
  client: EngineClient;
  outline: RatesOutlineReply;
  words(): Words;
  /** The currency, shown beside amounts. */
  symbol(): string;
  /** Tells the form about controls, so that notes and focus reach them. */
  register(controls: readonly Control[]): void;
  /** Shows the notes of the last check again. */
  notes(): void;
  /** Draws the section again. focus: the path of the field that gets the focus, "" for
   *  the heading. */
  redraw(focus: string): void;
}

/** What the check says of one control. sample: the value is still the sample's. */
export interface Notes {
  faults: readonly TextFault[];
  warnings: readonly CarNote[];
  sample: boolean;
}

export interface FieldControl {
  path: string;
  node: HTMLElement;
  open?: undefined;
  notes(notes: Notes): void;
}

/** An entry of a list, folded until somebody opens it. */
export interface FoldedEntry {
  path: string;
  node: HTMLDetailsElement;
  open(): void;
  notes(notes: Notes): void;
}

export type Control = FieldControl | FoldedEntry;

/** What a maker of a control is given. F: the kind of field. */
export interface Making<F> {
  field: F;
  host: FormHost;
  id: string;
  /** The ids of what describes the control. */
  described: string;
  hint: HTMLElement | undefined;
  label: string;
  /** Takes a new value into the draft. */
  put(value: unknown): void;
}

/** A control without its notes. inputs: the boxes that a fault can mark. */
export interface Made {
  inputs: readonly HTMLElement[];
  node: HTMLElement;
}
