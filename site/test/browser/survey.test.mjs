// The shop's page "This car" in a real browser: recording and keeping, in one
// process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./surveylist.mjs");
await import("./surveykeep.mjs");
after(closeAll);
