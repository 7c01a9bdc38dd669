// What the pages may do and what may be done to them, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";
import { closeHosts } from "./embedhost.mjs";

await import("./trustedtypes.mjs");
after(async () => {
  await closeHosts();
  await closeAll();
});
