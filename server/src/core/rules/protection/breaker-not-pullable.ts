import type { Problem } from "../../findings/finding";
import { electricalOf } from "../../graph/derivations";
import type { DeviceResult } from "../../graph/electrical/devices";
import type { Project } from "../../project";
import { defineRule } from "../rule";
import { isMeasuredWithin, measuredReach } from "./measured-reach";
import { protectionExample } from "./protection-example";

/** Why the crew can't open a device, as far as the records tell. */
type Hindrance = "fuse" | "not-pullable" | "pullable-not-said" | "out-of-reach" | "reach-not-said";

const words: Readonly<Record<Hindrance, (device: string) => string>> = {
  fuse: (device) => `and ${device} is a fuse`,
  "not-pullable": (device) => `and ${device} can't be pulled`,
  "pullable-not-said": (device) => `and nothing says that ${device} can be pulled`,
  "out-of-reach": () => "and is out of the crew's reach",
  "reach-not-said": () => "and nothing says that the crew can reach it",
};

const todos: Readonly<Record<Hindrance, string>> = {
  fuse: "Take a breaker that can be pulled, or put a switch into the circuit.",
  "not-pullable": "Take a breaker that can be pulled, or put a switch into the circuit.",
  "pullable-not-said":
    "Write 'pullable: true' at the kit's device where its maker says so; else take one that is.",
  "out-of-reach": "Mount and mark it where the crew can reach it, or put a switch there.",
  "reach-not-said":
    "Mount and mark it where the crew can reach it, and write 'within-reach: true', or its place under 'reach'.",
};

export const breakerNotPullable = defineRule<{ protection: string; device: string; hindrance: Hindrance }>({
  id: "breaker-not-pullable",
  severity: "warning",
  area: "protection",
  title: "A device that the crew must open in flight can't be pulled, or not be reached",
  why:
    "Where a load is shed, or a fault taken off power, by its breaker, the crew pulls it from their seats. A fuse can't " +
    "be pulled under load, and not every breaker has a button. It is no switch for daily use: that wears it out.",
  sources: [{ document: "Breakers that are opened by hand", standing: "common-practice" }],
  say: ({ protection, device, hindrance }) => ({
    what: `${protection} must be opened in flight, ${words[hindrance](device)}.`,
    todo: todos[hindrance],
  }),
  *check(project): Iterable<Problem> {
    for (const { inline, id, device } of electricalOf(project).devices) {
      if (inline.kind !== "protection" || inline.record.openInFlight?.value !== true || !device?.id) continue;
      const hindrance = hindranceOf(inline.record, device, project);
      if (!hindrance) continue;
      yield {
        rule: "breaker-not-pullable",
        subject: { kind: "protection", id },
        place: inline.record.openInFlight.place,
        facts: { protection: id, device: device.id.value, hindrance },
      };
    }
  },
  examples: () => [
    {
      title: "A breaker without a button",
      text: opened("{ id: CB-20, kind: breaker, rating: 20 A, pullable: false }", "within-reach: true"),
      finds: ["^CB-RACK must be opened in flight, and CB-20 can't be pulled\\.$"],
    },
    {
      title: "A fuse",
      text: opened("{ id: CB-20, kind: fuse, rating: 20 A }", "within-reach: true"),
      finds: ["^CB-RACK must be opened in flight, and CB-20 is a fuse\\.$"],
    },
    {
      title: "A breaker in the aft bay",
      text: opened("{ id: CB-20, kind: breaker, rating: 20 A, pullable: true }", "within-reach: false"),
      finds: ["^CB-RACK must be opened in flight, and is out of the crew's reach\\.$"],
    },
    {
      title: "A breaker of which nothing is said",
      text: opened("{ id: CB-20, kind: breaker, rating: 20 A }", "within-reach: true"),
      finds: ["^CB-RACK must be opened in flight, and nothing says that CB-20 can be pulled\\.$"],
    },
    {
      title: "A breaker with a button on the panel",
      text: opened("{ id: CB-20, kind: breaker, rating: 20 A, pullable: true }", "within-reach: true"),
      finds: [],
    },
    {
      title: "One whose distance from the seat is measured",
      text: opened("{ id: CB-20, kind: breaker, rating: 20 A, pullable: true }", undefined, measuredReach),
      finds: [],
    },
  ],
});

function hindranceOf(
  { id, withinReach }: Extract<DeviceResult["inline"], { kind: "protection" }>["record"],
  { kind, pullable }: NonNullable<DeviceResult["device"]>,
  project: Project,
): Hindrance | undefined {
  if (kind?.value === "fuse") return "fuse";
  if (pullable?.value !== true) return pullable ? "not-pullable" : "pullable-not-said";
  if (withinReach) return withinReach.value ? undefined : "out-of-reach";
  return id && isMeasuredWithin(id.value, project) ? undefined : "reach-not-said";
}

/** A record whose one device has to be opened in flight. */
function opened(device: string, reach?: string, parts: Parameters<typeof protectionExample>[0] = {}): string {
  const said = reach ? `, ${reach}` : "";
  return protectionExample({
    ...parts,
    devices: [device],
    protection: [`{ id: CB-RACK, device: CB-20, mounted-on: MAIN, open-in-flight: true${said} }`],
  });
}
