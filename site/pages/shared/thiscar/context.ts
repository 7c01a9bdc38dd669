// What the views of "This car" know: the car that is open, and the shop.

import type { CarFile } from "../carfile.ts";
import type { Origin } from "../linkcontent.ts";
import type { Questions } from "../question.ts";
import { questions } from "../questions.ts";
import type { OpenedReply, SheetReply, TallyReply, WalkLine } from "../replies.ts";

/** A car that is open, and what the engine said about it. */
export interface ThisCar {
  readonly car: CarFile;
  readonly sheet: SheetReply;
  /** The counts; null until the engine has counted. */
  readonly tally: TallyReply | null;
  /** Where the answers came from; null where nobody knows. */
  readonly from: Origin | null;
}

/** The shop: the engine's reply about it, and the questions in its words. */
export interface Shop {
  readonly opened: OpenedReply;
  readonly q: Questions;
}

/** The shop of a page whose rates may not have been read yet. */
export class OpenedShop implements Shop {
  reply: OpenedReply | null = null;
  q: Questions = questions("us");
  /** Throws before the shop's rates are open. */
  get opened(): OpenedReply {
    if (!this.reply) throw new Error("the shop's rates are not open");
    return this.reply;
  }
}

/** A car that is open, with its shop. */
export interface CarContext extends Shop {
  readonly openCar: ThisCar;
}

/** What tells one check from another. */
export const checkKey = (check: { look: string; on: string }): string => `${check.look} ${check.on}`;

/** The checks of a body by their keys. */
export const checksOf = (sheet: SheetReply): Map<string, WalkLine> =>
  new Map(sheet.walk_round.flatMap((s) => s.lines.map((line) => [checkKey(line), line])));
