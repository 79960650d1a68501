import type { Pass } from "../../records/types";
import { type InstallationLimit, wireInstallationLimits } from "../../tables/wire-installation-limits";
import { defineRule } from "../rule";
import { circuitExample } from "./circuit-example";
import { apart, holdRecorded, ofEachWire } from "./recorded";

const {
  fluidLineSeparation,
  fluidLineSeparationClamped,
  fluidLineCloseSupport,
  controlCableSeparation,
  movableControlClearance,
  penetrationClearance,
} = wireInstallationLimits;

type Passed = NonNullable<Pass["by"]>["value"];

export const wireTooNear = defineRule<{
  wire: string;
  by: Passed;
  distance: number;
  least: number;
  isClamped: boolean;
}>({
  id: "wire-too-near",
  severity: "error",
  area: "wires",
  title: "A wire passes too near to a line, a control or structure",
  why:
    "A wire that touches a line burns a hole in it when it arcs; one that touches a cable is sawn through or jams it; " +
    "one that touches an edge chafes. What is near must be kept away by distance, by support or by a guard. The " +
    "distances to control cables and movable controls are from memory and only warn.",
  sources: [
    fluidLineSeparation.source,
    fluidLineCloseSupport.source,
    controlCableSeparation.source,
    penetrationClearance.source,
  ],
  say: ({ wire, by, distance, least, isClamped }) => {
    const [is, asked] = apart(distance, least, "in");
    const how = isClamped ? " even when clamped" : "";
    return {
      what: `Wire ${wire} passes ${names[by]} at ${is}; ${asked} must be kept${how}.`,
      todo: isFluidLine(by) ? fluidLineTodo(isClamped) : todos[by],
    };
  },
  check: ofEachWire(function* (wire, subject) {
    for (const pass of wire.passes ?? []) {
      const limit = limitOf(pass);
      if (!pass.by || !limit) continue;
      const held = holdRecorded(
        {
          subject,
          quantity: "separation",
          name: `distance to ${names[pass.by.value]}`,
          written: pass.distance,
        },
        limit,
        "least-separation",
        [pass.by.place, pass.clamped?.place],
      );
      if (!held) continue;
      yield {
        ...held,
        rule: "wire-too-near",
        facts: {
          wire: subject.id,
          by: pass.by.value,
          distance: held.value.value,
          least: held.limit.value,
          isClamped: pass.clamped?.value === true,
        },
      };
    }
  }),
  examples: () => [
    {
      title: "Four inches from a fuel line",
      text: circuitExample({ keys: "passes: [{ by: fuel-line, distance: 4 in }]" }),
      finds: ["P1 passes a fuel line at 4 in; 6 in must be kept"],
    },
    {
      title: "Clamped, but still too near to an oxygen line",
      text: circuitExample({ keys: "passes: [{ by: oxygen-line, distance: 1.5 in, clamped: true }]" }),
      finds: ["P1 passes an oxygen line at 1.5 in; 2 in must be kept even when clamped"],
    },
    {
      title: "Control cable, movable control and structure, all bare",
      text: circuitExample({
        keys: "passes: [{ by: control-cable, distance: 2 in }, { by: movable-control, distance: 0.25 in }, { by: structure, distance: 0 in }]",
      }),
      finds: [
        "a control cable at 2 in; 3 in",
        "a movable control at 0.25 in; 0.5 in",
        "structure at 0 in; 0.375 in",
      ],
    },
    {
      title: "Far enough, clamped, or guarded",
      text: circuitExample({
        keys: "passes: [{ by: hydraulic-line, distance: 6 in }, { by: fuel-line, distance: 2 in, clamped: true }, { by: control-cable, distance: 1 in, guarded: true }, { by: structure, distance: 0.1 in, clamped: true }]",
      }),
      finds: [],
    },
  ],
});

const names: Readonly<Record<Passed, string>> = {
  "fuel-line": "a fuel line",
  "oxygen-line": "an oxygen line",
  "hydraulic-line": "a hydraulic line",
  "control-cable": "a control cable",
  "movable-control": "a movable control",
  structure: "structure",
};

type FluidLine = "fuel-line" | "oxygen-line" | "hydraulic-line";

const todos: Readonly<Record<Exclude<Passed, FluidLine>, string>> = {
  "control-cable": "Move the wire away, or put a mechanical guard between.",
  "movable-control": "Move the wire away, over the whole travel of the control.",
  structure: "Clamp the wire there, or put a grommet round the hole.",
};

function fluidLineTodo(isClamped: boolean): string {
  return isClamped
    ? "Move the wire away, above the line, and never attach it to the line."
    : "Move the wire away; where that is impracticable, 2 in will do above the line with close clamps, never attached to it.";
}

function isFluidLine(by: Passed): by is FluidLine {
  return by === "fuel-line" || by === "oxygen-line" || by === "hydraulic-line";
}

/** What must be kept; undefined where a clamp or a guard stands for it. */
function limitOf({ by, clamped, guarded }: Pass): (InstallationLimit & { readonly unit: "in" }) | undefined {
  if (!by) return undefined;
  if (isFluidLine(by.value)) return clamped?.value ? fluidLineSeparationClamped : fluidLineSeparation;
  if (by.value === "movable-control") return movableControlClearance;
  if (guarded?.value) return undefined;
  if (by.value === "control-cable") return controlCableSeparation;
  return clamped?.value ? undefined : penetrationClearance;
}
