// The papers of the shop's page "This car" in a real browser, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";

await import("./surveypapers.mjs");
after(closeAll);
