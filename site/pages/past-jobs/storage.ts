// Past jobs that are kept on this device: a shelf of their own beside the cars.

import { DurableStore } from "../shared/durablestorage.ts";

export const jobsShelf = new DurableStore("underpaint past jobs 1");
