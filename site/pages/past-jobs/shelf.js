// Past jobs that are kept on this device: a shelf of their own beside the cars.

import { Shelf } from "../store.js";

export const jobsShelf = new Shelf("underpaint past jobs 1");
