import type { Problem } from "../../findings/finding";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";

export const loadNeverRuns = defineRule<{ component: string }>({
  id: "load-never-runs",
  severity: "warning",
  area: "wires",
  title: "A component draws current, but runs in no condition",
  why: "Its current counts in no wire, device or source, so all of them look better than they are.",
  sources: [],
  say: ({ component }) => ({
    what: `${component} draws current, but no condition lets it run.`,
    todo: `Add ${component} with its mode to the 'loads' of each condition in which it runs.`,
  }),
  *check(project): Iterable<Problem> {
    const { install, kit } = project;
    const { conditions = [] } = install;
    const first = conditions[0];
    if (!first) return; // no conditions at all is a finding of its own
    const loads = conditions.flatMap((condition) => condition.loads ?? []);
    // What is unfinished or misspelt may be the very load that is missing, and is a finding already.
    const isUnclear =
      conditions.some((condition) => !condition.loads) ||
      loads.some(({ key }) => project.names.find(["component"], key.value).length === 0);
    if (isUnclear) return;
    const running = new Set(loads.map(({ key }) => key.value));
    for (const { id, draws } of kit?.components ?? []) {
      if (!id || !draws?.length || running.has(id.value)) continue;
      const placed = install.placement?.find(({ component }) => component?.value === id.value);
      yield {
        rule: "load-never-runs",
        subject: { kind: "component", id: id.value },
        place: placed?.component?.place ?? first.id?.place ?? first.place,
        facts: { component: id.value },
      };
    }
  },
  examples: () => [
    {
      title: "A condition in which nothing runs",
      text: circuitExample({ loads: "{}" }),
      finds: ["RACK draws current, but no condition lets it run"],
    },
    { title: "A load that runs in cruise", text: circuitExample(), finds: [] },
    {
      title: "A misspelt name is told as what it is",
      text: circuitExample({ loads: "{ RAKC: survey }" }),
      finds: [],
    },
  ],
});
