// Days and times as the page writes them: the engine has no clock.

const two = (n: number): string => String(n).padStart(2, "0");

/** 2026-06-20T14:05, as the car file has it. */
export function moment(clock = new Date()): string {
  return `${clock.getFullYear()}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}T${two(clock.getHours())}:${two(clock.getMinutes())}`;
}

/** 14:05:31, for the line that says when the last press was saved. */
export function clockText(clock = new Date()): string {
  return `${two(clock.getHours())}:${two(clock.getMinutes())}:${two(clock.getSeconds())}`;
}

/** A day in words, as the shop's words write it: June 3, 2026 or 3 June 2026. The page's
 *  language says which (Frame.shop sets it). */
export function dateText(iso: string): string {
  const british = globalThis.document?.documentElement.lang === "en-GB";
  return new Intl.DateTimeFormat(british ? "en-GB" : "en-US", { dateStyle: "long", timeZone: "UTC" }).format(
    new Date(`${iso.slice(0, 10)}T00:00:00Z`),
  );
}

/** A moment of the file in words: only the time when it was today. */
export function momentText(at: string, today = moment()): string {
  const [day, time = ""] = at.split("T");
  if (day === today.slice(0, 10)) return time;
  return `${dateText(day ?? "")}, ${time}`;
}
