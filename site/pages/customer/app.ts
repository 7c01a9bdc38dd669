// What the screens may use of the page.

import type { CarFile } from "../shared/carfile.ts";
import type { FlowFacts } from "../shared/flow.ts";
import type { Questions } from "../shared/question.ts";
import type { OpenedReply } from "../shared/replies.ts";
import type { ReplyTo } from "../shared/requests.ts";
import type { Said, VisitState } from "./visithistory.ts";

/** What an answer changes. */
export type Changes = Partial<Pick<VisitState, "car" | "said" | "draft">>;

/** Takes an answer: what it changes, its id, and its text as it is called away from its
 *  question. */
export type TakeAnswer = (changes: Changes, id: string, text: string, facts?: FlowFacts) => void;

export interface App {
  /** The shop and its rates; null until the engine has read them. */
  opened: OpenedReply | null;
  words: OpenedReply["words"];
  q: Questions;
  said(): Said;
  /** Changes the present screen without a step for Back. */
  amend(changes: Changes): void;
  sheet(car: CarFile): Promise<ReplyTo<"sheet">>;
  back(): void;
  answer: TakeAnswer;
}

/** The page once the shop is open. */
export type OpenApp = App & { opened: OpenedReply };
export const isOpen = (app: App): app is OpenApp => app.opened !== null;
