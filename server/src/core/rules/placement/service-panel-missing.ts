import type { Problem } from "../../findings/finding";
import { byIdOf } from "../../graph/by-id";
import { entryOf } from "../../graph/entries";
import { isServiced } from "../../graph/placement/servicing";
import type { Project } from "../../project";
import { accessParagraph } from "../../tables/cockpit-paragraphs";
import { defineRule, type Remedy } from "../rule";
import { listWords } from "../wording";
import { serviceExample } from "./service-example";

export const servicePanelMissing = defineRule<{ component: string; jobs: readonly string[] }>({
  id: "service-panel-missing",
  severity: "warning",
  area: "placement",
  title: "A component has to be serviced, and nothing says through which panel",
  why:
    "What can't be got at is not serviced, or the installation is taken apart for it. The kit says what is done at its " +
    "components where they are installed; each installation has to say how one gets there.",
  sources: [accessParagraph],
  say: ({ component, jobs }) => ({
    what: `Nothing says through which panel one gets at ${component} to ${listWords(jobs, "and")}.`,
    todo: "Add the panels to its placement: served-through: [...], an empty list where it stands open.",
  }),
  *check({ kit, install }): Iterable<Problem> {
    const byId = byIdOf(kit?.components);
    for (const placement of install.placement ?? []) {
      const id = placement.component?.value;
      // A key without its value is told by itself.
      if (id === undefined || entryOf(placement, "served-through")) continue;
      const component = byId.get(id);
      if (!component || !isServiced({ placement, component, id })) continue;
      yield {
        rule: "service-panel-missing",
        subject: { kind: "component", id },
        place: placement.component!.place,
        facts: {
          component: id,
          jobs: component.servicing!.flatMap(({ what }) => what?.value ?? []),
        },
      };
    }
  },
  corrections: ({ facts: { component } }, project) => panelsFor(component, project),
  examples: () => [
    {
      title: "A filter behind nobody knows which panel",
      text: serviceExample({ placement: "" }),
      finds: ["^Nothing says through which panel one gets at RACK to change the filter"],
    },
    { title: "Through the door of the bay", text: serviceExample(), finds: [] },
    { title: "In the open", text: serviceExample({ placement: ", served-through: []" }), finds: [] },
  ],
});

/** Each panel that says how far hands reach in by it, the one that the component is brought in by first. */
function* panelsFor(component: string, project: Project | undefined): Iterable<Remedy> {
  const placement = project?.install.placement?.find((one) => one.component?.value === component);
  if (!project || !placement) return;
  const isOwn = (id: string) => id === placement.through?.value;
  const ids = (project.airframe?.panels ?? [])
    .flatMap(({ id, access }) => (id && access?.at && access.reach ? [id.value] : []))
    .sort((a, b) => Number(isOwn(b)) - Number(isOwn(a)));
  for (const id of ids) {
    yield {
      title: `Service ${component} through ${id}`,
      changes: [{ place: placement.place, key: "served-through", value: [id] }],
      series: id,
    };
  }
}
