// What a link carries beside the car: when it was made and what it showed then,
// so that a reader at other rates sees both. All of it is foreign text: short,
// shown as text only, and said to be unchecked.

const LINK_FORMAT = "underpaint link 1";
/** A day that there is: of any other no words can be made. */
const isDate = (t) => typeof t === "string" && /^\d{4}-\d{2}-\d{2}$/.test(t) && !Number.isNaN(Date.parse(t));
const isShort = (t) => typeof t === "string" && t.length > 0 && t.length <= 60;
const isMoney = (t) => typeof t === "string" && /^\D{0,5}\d[\d.,\u00a0\u202f ]{0,14}\D{0,5}$/.test(t);

export function today(clock = new Date()) {
  const two = (n) => String(n).padStart(2, "0");
  return `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}`;
}

/** A date in words, day first, as the engine writes it for the rates. */
export function dateText(iso) {
  return new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" }).format(
    new Date(`${iso.slice(0, 10)}T00:00:00Z`),
  );
}

/** What goes into a link. reply: the settled range, or null. */
export function toShare(car, reply, rates, iso) {
  const told =
    reply && reply.rows.length === 1
      ? { low: reply.rows[0].low_text, high: reply.rows[0].high_text }
      : undefined;
  return { format: LINK_FORMAT, entered: iso, rates_of: rates.date, check_code: rates.check_code, told, car };
}

/** Takes apart what came out of a link; throws when it is not ours. */
export function fromShared(object) {
  if (object === null || typeof object !== "object" || object.format !== LINK_FORMAT)
    throw new Error("not a car");
  const { entered, rates_of: ratesOf, check_code: code, told, car } = object;
  return {
    car,
    from: {
      kind: "link",
      entered: isDate(entered) ? entered : null,
      ratesOf: isDate(ratesOf) ? ratesOf : null,
      code: isShort(code) ? code : null,
      told: isMoney(told?.low) && isMoney(told?.high) ? { low: told.low, high: told.high } : null,
    },
  };
}
