// The car file as the pages have it. A test compares these types with car.schema.json. What
// comes from a link or a file counts as a car file only after the engine has read it.

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

/** A car in a file that is complete has bodies, made, life and standard too. */
export interface CarFile {
  format: "underpaint car 1";
  asked_in: number;
  bodies?: Body[];
  made?: Made;
  life?: Life[];
  earlier_work?: string;
  earlier_work_year?: number;
  covered?: "yes" | "no" | "not_sure";
  all_there?: "all_there" | "some_parts_off" | "in_pieces" | "not_sure";
  hit?: Hit;
  standard?: "driver" | "show" | "concours" | "not_sure";
  scope?: "whole_body" | "outside_only" | "metalwork_only";
  /** Whether another body would do. Only the second lets the range count one. */
  another_body?: "this_one_only" | "another_is_all_right" | "not_sure";
  options?: string[];
  looks?: Look[];
  answers_checked?: string;
  stages?: Stage[];
  survey?: PartRecord[];
  opened?: Opened[];
  whole_car?: string[];
  survey_car?: SurveyCar;
  /** Hours worked in the strip and survey. */
  strip_hours?: Partial<Record<Trade, number>>;
  ways?: Choice[];
  /** What finished stages came to, in major units of the rates' currency. */
  came_to?: Partial<Record<PaidStage, string | number>>;
}

export type PaidStage = "strip_and_survey" | "structure" | "outer_metal" | "paint" | "assembly";
export type Trade = "metal" | "prep" | "body" | "paint" | "fit";

/** When it was made: one of the three. */
export interface Made {
  year?: number;
  decade?: number;
  not_sure?: true;
}

/** A place where the car lived. The first is where it spent most of its life. */
export interface Life {
  place?: string;
  shore?: string;
  kept?: string;
  road_years?: string;
  years?: number;
}

/** Whether it has been hit hard, and where. */
export interface Hit {
  answer: "not_that_i_know" | "lightly" | "hard" | "not_sure";
  where?: HitZone[];
}

export type HitZone = "front" | "rear" | "left" | "right" | "roof";
export type Manner = "none" | "well" | "roughly" | "crooked";

/** Old accidents as the survey found them. */
export interface SurveyCar {
  zones?: Partial<Record<HitZone, Manner>>;
  square?: "square" | "out" | "not_measured";
}

/** A check before any metal is bare, and its result. */
export interface Look {
  look: string;
  on: string;
  result: CheckResult;
  by: Teller;
}

/** A stage, with the day it began and the codes of the rates and of the program's own
 *  figures that it was priced with. */
export interface Stage {
  stage: "walk_round" | RecordStage;
  on: string;
  rates?: string;
  figures?: string;
}

/** How the panel that was bought for a part fits. */
export type PanelFit = "fits" | "needs_work" | "wrong";

/** What was recorded of one part at one stage. */
export interface PartRecord {
  on: string;
  stage: RecordStage;
  condition?: Condition;
  finding?: string;
  dent?: boolean;
  also?: string[];
  lead_failed?: number;
  panel_fit?: PanelFit;
  could_not_see?: boolean;
  sure?: boolean;
  note?: string;
  photo?: string;
  at?: string;
  was?: Was[];
}

/** What a record said before it was corrected. */
export interface Was {
  condition?: Condition;
  at?: string;
}

/** A closed box that was opened up. */
export interface Opened {
  box: string;
  at?: string;
}

/** The way that was chosen for one part. */
export interface Choice {
  on: string;
  way: Way;
  by: Teller;
}
