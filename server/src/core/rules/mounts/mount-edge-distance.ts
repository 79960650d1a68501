import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { fastenerEdgeDistance } from "../../tables/fastener-edge-distance";
import { defineRule } from "../rule";
import { apart, lengthThatKeeps } from "../wires/recorded";
import { mountExample } from "./mount-example";

export const mountEdgeDistance = defineRule<{ component: string; distance: number; least: number }>({
  id: "mount-edge-distance",
  severity: "error",
  area: "mounts",
  title: "A fastener of a mount stands too near to the edge of its sheet",
  why:
    "Between a hole and an edge there has to be enough sheet, or the fastener tears out: two diameters for protruding " +
    "heads, two and a half for countersunk ones (this from memory, so it warns).",
  sources: [fastenerEdgeDistance("protruding").source, fastenerEdgeDistance("countersunk").source],
  say: ({ component, distance, least }) => {
    const [is, asked] = apart(distance, least, "in");
    return {
      what: `A fastener of ${component} stands ${is} from the edge of its sheet; ${asked} is needed.`,
      todo: "Move the fasteners inward, or take thinner ones.",
    };
  },
  *check(project): Iterable<Assessment> {
    for (const { mount, id, strengths } of mountsOf(project).mounts) {
      const held = strengths.edge;
      if (!held || !mount.edgeDistance) continue;
      yield {
        rule: "mount-edge-distance",
        subject: held.value.subject,
        place: mount.edgeDistance.place,
        ...held,
        sense: "at-least",
        holds: holds(held.value.value, "at-least", held.limit.value),
        facts: { component: id, distance: held.value.value, least: held.limit.value },
        related: [],
      };
    }
  },
  *remedies(assessment, project) {
    const result = mountsOf(project).mounts.find(({ id }) => id === assessment.subject.id);
    yield* lengthThatKeeps(
      assessment,
      result?.mount.edgeDistance,
      (length) => `Keep the fasteners of ${assessment.subject.id} ${length} from the edge`,
    );
  },
  examples: () => [
    {
      title: "A 3/16 in bolt at 0.3 in",
      text: mountExample({ keys: ", edge-distance: 0.3 in" }),
      finds: ["RACK stands 0.3 in from the edge of its sheet; 0.375 in is needed"],
    },
    { title: "At half an inch", text: mountExample(), finds: [] },
  ],
});
