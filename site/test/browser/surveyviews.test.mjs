// The shop's page "This car" in a real browser: the other views, how it looks
// and reads, who sees which caution, and the one look on the customer's page, in one
// process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./surveyviews.mjs");
await import("./surveylook.mjs");
await import("./dangers.mjs");
after(closeAll);
