// The page "Why so wide" in a real browser, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./whytalk.mjs");
await import("./whyways.mjs");
after(closeAll);
