import { check, type Judgement } from "./check";
import { loadRecord } from "./records/record";
import { recordKindOf } from "./records/schema";
import type { Example } from "./rules/rule";

/** Checks a rule's example, its records side by side in a folder that is the whole workspace. */
export function runExample({ file = "example.install.yaml", text, others = {} }: Example): Judgement {
  const load = (name: string, content: string) => loadRecord(name, recordKindOf(name) ?? "install", content);
  return check(load(file, text), {
    resolve: (_from, path) => (path.startsWith("../") ? undefined : path),
    load: (name) => {
      const content = Object.hasOwn(others, name) ? others[name] : undefined;
      return content === undefined ? undefined : load(name, content);
    },
  });
}
