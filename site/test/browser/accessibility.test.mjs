// Open to everyone, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./accessibility.mjs");
after(closeAll);
