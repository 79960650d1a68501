import { wiringOf } from "../../graph/derivations";
import { wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { apart, holdAgainst, lengthThatKeeps, wireOf } from "./recorded";

const { source, bound } = wireInstallationLimits.bendRadius;

export const wireBendTooTight = defineRule<{ wire: string; radius: number; least: number }>({
  id: "wire-bend-too-tight",
  severity: "error",
  area: "wires",
  title: "A wire is bent more tightly than its diameter allows",
  why:
    "A tight bend stretches the insulation on its outside and works the strands. The least radius is ten times the " +
    "outside diameter, in a bundle that of its largest wire. At a terminal strip, with a support at each end of the " +
    "bend, three times is said to do (from memory): leave such bends out of the recorded radius.",
  sources: [source, wireInstallationLimits.bendRadiusAtTerminals.source],
  say: ({ wire, radius, least }) => {
    const [is, asked] = apart(radius, least, "in");
    return {
      what: `Wire ${wire} is bent to a radius of ${is}; its outside diameter asks for ${asked}.`,
      todo: "Route it with a wider bend.",
    };
  },
  *check(project) {
    for (const { wire, id, leastBendRadius } of wiringOf(project).runs) {
      const recorded = {
        subject: { kind: "wire", id },
        quantity: "bend-radius",
        name: "bend radius",
        written: wire.bendRadius,
      } as const;
      const held = leastBendRadius && holdAgainst(recorded, "in", bound, leastBendRadius);
      if (!held) continue;
      yield {
        ...held,
        rule: "wire-bend-too-tight",
        facts: { wire: id, radius: held.value.value, least: held.limit.value },
        related: wire.outsideDiameter
          ? [{ place: wire.outsideDiameter.place, words: "outside diameter of the wire" }]
          : [],
      };
    }
  },
  *remedies(assessment, project) {
    const recorded = wireOf(assessment, project)?.bendRadius;
    yield* lengthThatKeeps(
      assessment,
      recorded,
      (length) => `Bend wire ${assessment.subject.id} to no less than ${length}`,
    );
  },
  examples: () => [
    {
      title: "One inch round with a wire of 0.135 in",
      text: circuitExample({ keys: "outside-diameter: 0.135 in, bend-radius: 1 in" }),
      finds: ["P1 is bent to a radius of 1 in; its outside diameter asks for 1.35 in"],
    },
    {
      title: "In a bundle the largest wire decides",
      text: circuitExample({
        bundle: "{ id: B1, wires: 2, loading: 60 % }",
        wires: [
          "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 12 ft, rating: 150 degC, bundle: B1, outside-diameter: 3.5 mm, bend-radius: 40 mm }",
          "{ id: P2N, from: RACK, to: GND-AFT, gauge: 8 AWG, length: 2 ft, rating: 150 degC, bundle: B1, outside-diameter: 5 mm }",
        ],
      }),
      finds: ["P1 is bent to a radius of 1.575 in; its outside diameter asks for 1.969 in"],
    },
    {
      title: "Ten times the diameter",
      text: circuitExample({ keys: "outside-diameter: 0.135 in, bend-radius: 1.35 in" }),
      finds: [],
    },
    {
      title: "Without a diameter there is nothing to hold the radius against",
      text: circuitExample({ keys: "bend-radius: 0.25 in" }),
      finds: [],
    },
  ],
});
