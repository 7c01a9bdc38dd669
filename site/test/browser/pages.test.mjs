// All tests in a real browser, in one process: the site is built and served once.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./flow.mjs");
await import("./keeping.mjs");
await import("./states.mjs");
await import("./mistakes.mjs");
await import("./looks.mjs");
await import("./acts.mjs");
await import("./anotherbody.mjs");
after(closeAll);
