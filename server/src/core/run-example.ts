import { check, type Judgement } from "./check";
import { loadRecord } from "./records/record";
import { recordKindOf } from "./records/schema";
import type { Example } from "./rules/rule";

/** The day on which examples are checked, so that they find the same on every day. */
const exampleDay = "2026-06-01";

/** Checks a rule's example, its records side by side in a folder that is the whole workspace. */
export function runExample({ file = "example.install.yaml", text, others = {} }: Example): Judgement {
  const load = (name: string, content: string) => loadRecord(name, recordKindOf(name) ?? "install", content);
  const source = {
    resolve: (_from: string, path: string) => (/^(?:\.\.)?\//.test(path) ? undefined : path),
    load: (name: string) => {
      const content = Object.hasOwn(others, name) ? others[name] : undefined;
      return content === undefined ? undefined : load(name, content);
    },
  };
  return check(load(file, text), source, { today: exampleDay });
}
