// The car file, as the pages hold it: see car.schema.json, which a test holds these
// types against. What comes from a link or a file is only taken for one after the
// engine has read it.

export type Body =
  | "two_door_unitary"
  | "four_door_saloon"
  | "hardtop_on_frame"
  | "convertible_unitary"
  | "open_two_seater"
  | "pickup";
export type Condition = "sound" | "light_pitting" | "heavy_pitting" | "pinholes" | "rusted_through" | "gone";
export type Way = "leave" | "treat" | "patch" | "section" | "full" | "fabricate";
export type Teller = "customer" | "shop";
export type RecordStage = "survey" | "opening_up";
export type CheckResult = "yes" | "no" | "could_not";

export interface CarFile {
  format: "underpaint car 1";
  asked_in: number;
  bodies?: Body[];
  made?: Made;
  life?: Life[];
  earlier_work?: string;
  earlier_work_year?: number;
  covered?: "yes" | "no" | "not_sure";
  standard?: "driver" | "show" | "concours" | "not_sure";
  scope?: "whole_body" | "outside_only" | "metalwork_only";
  options?: string[];
  looks?: Look[];
  answers_checked?: string;
  stages?: Stage[];
  survey?: PartRecord[];
  opened?: Opened[];
  whole_car?: string[];
  strip_hours?: Partial<Record<Trade, number>>;
  ways?: Choice[];
  came_to?: Record<string, string | number>;
}

export type Trade = "metal" | "prep" | "body" | "paint" | "fit";

/** One of the three. */
export interface Made {
  year?: number;
  decade?: number;
  not_sure?: true;
}

/** A place where the car lived, the last one first. */
export interface Life {
  place?: string;
  shore?: string;
  kept?: string;
  road_years?: string;
  years?: number;
}

/** A check from outside, and what it gave. */
export interface Look {
  look: string;
  on: string;
  result: CheckResult;
  by: Teller;
}

export interface Stage {
  stage: "walk_round" | RecordStage;
  on: string;
  rates?: string;
}

/** What was seen of one part at one stage. */
export interface PartRecord {
  on: string;
  stage: RecordStage;
  condition?: Condition;
  finding?: string;
  dent?: boolean;
  also?: string[];
  lead_failed?: number;
  could_not_see?: boolean;
  sure?: boolean;
  note?: string;
  photo?: string;
  at?: string;
  was?: { condition?: Condition; at?: string }[];
}

export interface Opened {
  box: string;
  at?: string;
}

export interface Choice {
  on: string;
  way: Way;
  by: Teller;
}
