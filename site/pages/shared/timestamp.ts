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

/** A moment of the file in words: only the time when it was today. */
export function momentText(at: string, today = moment()): string {
  const [day, time = ""] = at.split("T");
  if (day === today.slice(0, 10)) return time;
  const text = new Intl.DateTimeFormat("en-GB", {
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  }).format(new Date(`${day}T00:00:00Z`));
  return `${text}, ${time}`;
}
