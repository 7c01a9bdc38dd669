// The one car kept on this device, and only after it was asked for.

const KEY = "underpaint kept car 1";

/** null when nothing is kept; "unreadable" when something is and cannot be used. */
export function kept() {
  try {
    const text = localStorage.getItem(KEY);
    if (text === null) return null;
    const found = JSON.parse(text);
    return found && typeof found.car === "object" && typeof found.when === "string" ? found : "unreadable";
  } catch { return "unreadable"; }
}

/** Keeps a car; false when the device refuses (full, or storage switched off). */
export function keep(car, when, stamp) {
  try {
    localStorage.setItem(KEY, JSON.stringify({ car, when, stamp }));
    return true;
  } catch { return false; }
}

/** True when nothing is left. */
export function erase() {
  try { localStorage.removeItem(KEY); return localStorage.getItem(KEY) === null; } catch { return true; }
}

/** Calls back with what another tab has just kept or erased. */
export function whenOtherTabKeeps(tell) {
  addEventListener("storage", (event) => { if (event.key === KEY || event.key === null) tell(kept()); });
}
