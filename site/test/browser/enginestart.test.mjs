// One worker or two, in one process: the site is built and served once.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./enginestart.mjs");
after(closeAll);
