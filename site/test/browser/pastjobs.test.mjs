// The shop's page "Past jobs" in a real browser, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./pastjobsenter.mjs");
await import("./pastjobslearn.mjs");
await import("./pastjobslook.mjs");
after(closeAll);
