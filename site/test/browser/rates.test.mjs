// The shop's page "Rates" in a real browser, in one process: the form, what goes
// in and out, and how it looks.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./ratesform.mjs");
await import("./ratesfiles.mjs");
await import("./rateslook.mjs");
after(closeAll);
