import { linesOf } from "../../graph/derivations";
import { derive, tabled } from "../../graph/value";
import type { LinePass } from "../../records/types";
import type { Source } from "../../source";
import { chafingPractice, flammableFluids, fuelLineSource } from "../../tables/line-installation-limits";
import { covered } from "../../tables/lookup";
import { type InstallationLimit, wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { apart, holdAgainst } from "../wires/recorded";
import { lineExample } from "./line-example";

const { fluidLineSeparation, fluidLineSeparationClamped, controlCableSeparation, movableControlClearance } =
  wireInstallationLimits;

type Passed = NonNullable<LinePass["by"]>["value"];

export const lineTooNear = defineRule<{
  line: string;
  by: Passed;
  distance: number;
  least: number;
  touches: boolean;
}>({
  id: "line-too-near",
  severity: "error",
  area: "lines",
  title: "A hose or tube passes too near to wiring, a control or structure",
  why:
    "A wire that arcs burns a hole in the line beside it, and what burns in the line feeds the fire. A line that touches " +
    "a control jams it, and one that touches structure is sawn through. Of lines that carry nothing flammable only " +
    "contact is judged, by common practice; the distances to controls are from memory. Both only warn.",
  sources: [fluidLineSeparation.source, fuelLineSource, controlCableSeparation.source, chafingPractice],
  say: ({ line, by, distance, least, touches }) => {
    if (touches) {
      return {
        what: `Line ${line} touches ${names[by]}.`,
        todo: "Move it clear, or clamp it so that it can't touch.",
      };
    }
    const [is, asked] = apart(distance, least, "in");
    return {
      what: `Line ${line} passes ${names[by]} at ${is}; ${asked} must be kept.`,
      todo:
        by === "wire"
          ? "Move the wire away, above the line; where that is impracticable, 2 in will do with close clamps."
          : "Move the line away, over the whole travel of the control.",
    };
  },
  *check(project) {
    for (const { line, id } of linesOf(project).runs) {
      const passed = line.passes ?? [];
      for (const pass of passed) {
        const rule = line.fluid && limitOf(pass, line.fluid.value);
        if (!rule || !pass.by || !pass.distance) continue;
        const subject = { kind: "line", id } as const;
        const limit = derive({
          subject,
          quantity: "least-line-separation",
          unit: "in",
          formula: "limit",
          operands: {
            limit: tabled("limit", covered(rule.least, rule.source), "in", [
              pass.by.place,
              pass.clamped?.place,
              line.fluid?.place,
            ]),
          },
          compute: (numbers) => numbers.limit,
          sources: [rule.source],
        });
        const held =
          limit &&
          holdAgainst(
            {
              subject,
              quantity: "line-separation",
              name: `distance to ${names[pass.by.value]}`,
              written: pass.distance,
            },
            "in",
            "least",
            limit,
          );
        if (!held) continue;
        const touches = pass.distance.value.si === 0;
        yield {
          ...held,
          // What only must not touch has no distance to be a share of.
          ...(rule.least === 0 && { scale: { of: undefined }, holds: !touches }),
          rule: "line-too-near",
          facts: {
            line: id,
            by: pass.by.value,
            distance: held.value.value,
            least: held.limit.value,
            touches,
          },
        };
      }
    }
  },
  examples: () => [
    {
      title: "A wire 3 in from a fuel line",
      text: lineExample({
        line: "kind: tube, fluid: fuel, dash: 6, material: aluminium, passes: [{ by: wire, distance: 3 in }]",
      }),
      finds: ["L1 passes a wire at 3 in; 6 in must be kept"],
    },
    {
      title: "A refrigerant hose that touches structure",
      text: lineExample({
        line: "kind: hose, fluid: r-134a, dash: 6, passes: [{ by: structure, distance: 0 in }]",
      }),
      finds: ["L1 touches structure"],
    },
    {
      title: "A control cable 2 in away",
      text: lineExample({
        line: "kind: hose, fluid: water, dash: 6, passes: [{ by: control-cable, distance: 2 in }]",
      }),
      finds: ["a control cable at 2 in; 3 in must be kept"],
    },
    {
      title: "Far enough, clamped, guarded, or with nothing that burns",
      text: lineExample({
        line: "kind: tube, fluid: fuel, dash: 6, material: steel, passes: [{ by: wire, distance: 2 in, clamped: true }, { by: control-cable, distance: 1 in, guarded: true }, { by: structure, distance: 0.5 in }]",
        sections: [
          "  - { id: L2, kind: hose, fluid: r-134a, dash: 6, passes: [{ by: wire, distance: 1 in }] }",
        ],
      }),
      finds: [],
    },
  ],
});

const names: Readonly<Record<Passed, string>> = {
  wire: "a wire",
  "control-cable": "a control cable",
  "movable-control": "a movable control",
  structure: "structure",
  exhaust: "the exhaust",
};

/** Least distance in in, and whose it is; none for what is clamped clear or guarded, or has a rule of its own. */
function limitOf(
  { by, clamped, guarded }: LinePass,
  fluid: string,
): { least: number; source: Source } | undefined {
  if (!by || by.value === "exhaust") return undefined;
  const ofWires = ({ value, source }: InstallationLimit) => ({ least: value, source });
  if (by.value === "movable-control") return ofWires(movableControlClearance);
  if (by.value === "wire" && flammableFluids.has(fluid)) {
    return ofWires(clamped?.value ? fluidLineSeparationClamped : fluidLineSeparation);
  }
  if (guarded?.value || clamped?.value) return undefined;
  if (by.value === "control-cable") return ofWires(controlCableSeparation);
  return { least: 0, source: fluid === "fuel" ? fuelLineSource : chafingPractice };
}
