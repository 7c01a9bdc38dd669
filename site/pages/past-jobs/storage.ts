// Past jobs that are kept on this device: a shelf of their own beside the cars.

import { LastingShelf } from "../shared/durablestorage.ts";

export const jobsShelf = new LastingShelf("underpaint past jobs 1");
