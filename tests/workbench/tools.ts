import { readFileSync } from "node:fs";

/** Absolute paths to the programs that the workbench tests run with. */
export interface Tools {
  /** The Node that the editor's server needs. */
  readonly node: string;
  /** The script that starts the editor's server. */
  readonly editor: string;
  readonly browser: string;
}

/** What set-up.mjs installed. Throws when it has not run. */
export function findTools(): Tools {
  try {
    return JSON.parse(readFileSync(new URL(".editor/tools.json", import.meta.url), "utf8")) as Tools;
  } catch (cause) {
    throw new Error("The editor is not set up. Run: node tests/workbench/set-up.mjs", { cause });
  }
}
