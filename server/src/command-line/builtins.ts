/**
 * Modules of Node that most runs do without. Loading them takes as long as an eighth of an empty Node, so each is
 * loaded by the first who needs it.
 */
import { createRequire } from "node:module";

// What is asked for is the same from every file.
const require = createRequire(process.execPath);

export const childProcess = (): typeof import("node:child_process") => require("node:child_process");
export const crypto = (): typeof import("node:crypto") => require("node:crypto");
export const os = (): typeof import("node:os") => require("node:os");
export const workerThreads = (): typeof import("node:worker_threads") => require("node:worker_threads");
