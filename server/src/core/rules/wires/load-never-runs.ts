import type { Problem } from "../../findings/finding";
import { runOf } from "../../graph/electrical/running";
import type { Project } from "../../project";
import type { Condition } from "../../records/types";
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
    const idle = (kit?.components ?? []).flatMap((component) => {
      if (!component.id || !component.draws?.length) return [];
      return conditions.some((condition) => runOf(component, condition)) ? [] : [component.id];
    });
    if (idle.length === 0 || areUnclear(conditions, project)) return;
    for (const id of idle) {
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

/** What is unfinished or misspelt may be the very load that is missing, and is a finding already. */
function areUnclear(conditions: readonly Condition[], { names }: Project): boolean {
  return conditions.some(
    ({ loads }) => !loads || loads.some(({ key }) => names.find(["component"], key.value).length === 0),
  );
}
