import { type Assessment, holds } from "../../findings/finding";
import { mountsOf } from "../../graph/derivations";
import { derive, tabled } from "../../graph/value";
import { formatNumber } from "../../quantities";
import { interactionLimit } from "../../tables/fastener-strengths";
import { defineRule } from "../rule";
import { type LoadFacts, largerFasteners, loadWords, placeOf } from "./held";
import { mountExample } from "./mount-example";

export const fastenerOverInteraction = defineRule<LoadFacts>({
  id: "fastener-over-interaction",
  severity: "warning",
  area: "mounts",
  title: "A bolt of a mount is sheared and pulled at once beyond what both allow",
  why:
    "A bolt that is sheared close to its strength can't be pulled close to its strength as well. The cube of the one " +
    "share and the square of the other must not exceed 1 together; this is from memory, so it warns.",
  sources: [interactionLimit.source],
  say: ({ component, direction, value, limit }) => ({
    what:
      `Loaded ${loadWords(direction)}, shear and tension of a bolt of ${component} together come to ` +
      `${formatNumber(value)} of the ${formatNumber(limit)} allowed.`,
    todo: "Take larger or more fasteners, or place them farther apart.",
  }),
  *check(project): Iterable<Assessment> {
    for (const mount of mountsOf(project).mounts) {
      for (const { interaction, direction } of mount.cases) {
        const limit =
          interaction &&
          derive({
            subject: interaction.subject,
            quantity: "interaction-limit",
            unit: "1",
            formula: "k",
            operands: { k: tabled("Rs^3 + Rt^2 allowed", interactionLimit, "1", []) },
            compute: ({ k }) => k,
            sources: [interactionLimit.source],
          });
        if (!limit) continue;
        yield {
          rule: "fastener-over-interaction",
          subject: interaction.subject,
          place: placeOf(mount),
          value: interaction,
          limit,
          sense: "at-most",
          holds: holds(interaction.value, "at-most", limit.value),
          facts: { component: mount.id, direction, value: interaction.value, limit: limit.value },
          related: [],
        };
      }
    }
  },
  remedies: largerFasteners,
  examples: () => [
    {
      title: "Each within its own strength, both together too much",
      text: mountExample({
        fastener: "{ kind: other, diameter: 0.138 in, shear: 80 lbf, tension: 90 lbf, data: Screw sheet }",
      }),
      finds: ["^Loaded forward, shear and tension of a bolt of RACK together come to 1.6"],
    },
    { title: "15 lb on four AN3 bolts", text: mountExample(), finds: [] },
  ],
});
