// The shop's page "This car" in a real browser, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./surveylist.mjs");
await import("./surveyviews.mjs");
await import("./surveykeep.mjs");
await import("./surveylook.mjs");
after(closeAll);
