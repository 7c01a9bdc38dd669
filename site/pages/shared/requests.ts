// The requests to the engine and the replies to each, as engine/message has them in Go.

import type { CarFile } from "./carfile.ts";
import type * as R from "./replies.ts";

/** Who reads the reply. */
type Audience = { for: "customer" | "shop" };
type AboutCar = { car: CarFile };
type AboutPart = AboutCar & { on: string };

/** The range before the customer's last answer, and what that answer is called. */
export interface RangeBefore {
  low_minor: number;
  high_minor: number;
  answer: string;
}

/** What each request carries, and what its reply is. */
interface Exchanges {
  open: [{ rates: string }, R.OpenedReply];
  range: [
    AboutCar & {
      effort?: "rough" | "settle";
      quiet?: boolean;
      axis_at_least?: number;
      before?: RangeBefore;
    },
    R.RangeReply | R.RangeGoesOnReply,
  ];
  cover: [{ sum: string }, R.CoverReply];
  fits: [{ sum: string }, R.FitsReply];
  sheet: [{ car: unknown }, R.SheetReply];
  worth: [AboutCar & Audience, R.WorthReply];
  wide: [AboutCar, R.WideReply];
  plan: [AboutCar, R.PlanReply];
  decide: [AboutCar, R.DecideReply];
  check_car: [{ car: unknown }, R.CarOKReply];
  tally: [AboutCar, R.TallyReply];
  look_again: [AboutCar, R.LookAgainReply];
  odds: [AboutPart, R.OddsReply];
  before_after: [AboutCar & { axis_at_least?: number }, R.BeforeAfterReply];
  to_do: [AboutCar, R.ToDoReply];
  compare_ways: [AboutPart, R.CompareWaysReply];
  dangers: [AboutCar, R.DangersReply];
  twenty: [AboutCar, R.TwentyReply];
  two_ways: [AboutCar, R.TwoWaysReply];
  suppose: [AboutPart & { condition: "sound" | "rusted_through" }, R.SupposeReply];
  check_rates: [{ rates: string; today: string }, R.RatesCheckedReply];
  rates_outline: [unknown, R.RatesOutlineReply];
  effect: [{ old: string | null; new: string; cars: unknown }, R.EffectReply];
  read_prices: [{ text: string; decimal?: string; words?: string; currency?: unknown }, R.PricesReadReply];
  write_prices: [{ rates: string; separator: string }, R.PricesWrittenReply];
  open_jobs: [{ jobs: string }, R.JobsCheckedReply];
  score: [{ rates: string; today: string }, R.ScoresReply | R.ScoresGoOnReply];
  read_jobs: [{ text: string; decimal?: string; currency?: string }, R.JobsReadReply];
  write_jobs: [{ separator: string }, R.JobsWrittenReply];
  adopt: [{ rates: string; use: unknown; record?: unknown; today: string }, R.AdoptedReply];
}

export type Ask = keyof Exchanges;

/** A request; A narrows it to one kind, or to several. */
export type EngineRequest<A extends Ask = Ask> = { [K in A]: { ask: K } & Exchanges[K][0] }[A];

/** What may come back: the reply, a refusal of what was asked, or a mistake of ours. */
export type ReplyTo<A extends Ask> = Exchanges[A][1] | R.RefusedReply | R.BrokenReply;

/** What was asked cannot be answered, or the engine stopped; text says why. */
export const isRefusal = (reply: { kind: string }): reply is R.RefusedReply | R.BrokenReply =>
  reply.kind === "refused" || reply.kind === "broken";

/** Called with every reply that is not the last. */
export type Update<A extends Ask> = (reply: ReplyTo<A>) => void;
