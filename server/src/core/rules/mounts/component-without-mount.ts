import type { Problem } from "../../findings/finding";
import { byIdOf } from "../../graph/by-id";
import { defineRule } from "../rule";
import { mountExample } from "./mount-example";

export const componentWithoutMount = defineRule<{ component: string }>({
  id: "component-without-mount",
  severity: "information",
  area: "mounts",
  title: "The record does not say how a component of the kit is fastened",
  why:
    "A component whose mount is not recorded is not checked against any load factor. That is told for those whose " +
    "fasteners the kit gives, and for all with a weight once a record has mounts.",
  sources: [],
  say: ({ component }) => ({
    what: `${component} is placed, but nothing says how it is fastened, so its mount is not checked.`,
    todo: `Add it under 'mounts', with where it stands, its shelf and its fastener.`,
  }),
  *check({ install, kit }): Iterable<Problem> {
    const mounted = new Set(install.mounts?.map(({ component }) => component?.value));
    const components = byIdOf(kit?.components);
    for (const { component } of install.placement ?? []) {
      const found = component && components.get(component.value);
      if (!found || !component || mounted.has(component.value) || !found.weight?.value.si) continue;
      if (!install.mounts && !found.mount) continue;
      yield {
        rule: "component-without-mount",
        subject: { kind: "component", id: component.value },
        place: component.place,
        facts: { component: component.value },
      };
    }
  },
  examples: () => [
    {
      title: "The kit gives fasteners, the record no mount",
      text: mountExample({ mounts: [] }),
      finds: ["^RACK is placed, but nothing says how it is fastened"],
    },
    { title: "A mount", text: mountExample(), finds: [] },
  ],
});
