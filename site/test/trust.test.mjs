// What the pages may do and what may be done to them, in one process.

import { after } from "node:test";
import { closeHosts } from "./embedhost.mjs";
import { closeAll } from "./browser.mjs";

await import("./trust.mjs");
after(async () => {
  await closeHosts();
  await closeAll();
});
