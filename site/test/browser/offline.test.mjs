// Without a connection, and while the folder changes, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./offline.mjs");
after(closeAll);
