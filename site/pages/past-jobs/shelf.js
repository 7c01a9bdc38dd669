// Past jobs that are kept on this device: a shelf of their own beside the cars.

import { LastingShelf } from "../survey/lasting.js";

export const jobsShelf = new LastingShelf("underpaint past jobs 1");
