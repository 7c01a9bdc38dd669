// Nothing that was kept is lost, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./persistence.mjs");
after(closeAll);
