import { holds } from "../../findings/finding";
import { airOf } from "../../graph/derivations";
import type { Project } from "../../project";
import { formatApart, inUnit } from "../../quantities";
import { defineRule, type Remedy, rewrite } from "../rule";
import { airExample } from "./air-example";

const twoOutlets = (branch: string) =>
  "[{ id: SUPPLY, flow: 60 cfm, data: Duct test HM-0412-T4, segments: [" +
  "{ id: D1, length: 4 ft, diameter: 4 in, roughness: 0.15 mm }, " +
  `{ id: D2, after: D1, length: 8 ft, diameter: ${branch}, roughness: 0.15 mm }], ` +
  "outlets: [{ id: O1, on: D1, area: 5 in2, loss: 2 }, { id: O2, on: D2, area: 5 in2, loss: 2, needed: 20 cfm }] }]";

export const ductOutletShort = defineRule<{ outlet: string; condition: string; is: number; needed: number }>({
  id: "duct-outlet-short",
  severity: "error",
  area: "air",
  title: "An outlet of a duct gets less air than is needed there",
  why:
    "Air takes the easy way: what one outlet gets depends on all of them. The whole duct is balanced, and of each outlet the " +
    "worst condition is told.",
  sources: [],
  say: ({ outlet, condition, is, needed }) => {
    const [a, b] = formatApart(is, needed);
    return {
      what: `Outlet ${outlet} gets ${a} cfm in ${condition}; ${b} cfm are needed there.`,
      todo: "Widen or shorten the way to it, or throttle the outlets that get more than they need.",
    };
  },
  *check(project) {
    for (const { outlets } of airOf(project).ducts) {
      for (const { outlet, id, conditions } of outlets) {
        const known = conditions.filter(({ value, least }) => value && least);
        const [worst] = known.toSorted((a, b) => a.value!.value - b.value!.value);
        if (!worst?.value || !worst.least) continue;
        const { value, least, condition } = worst;
        yield {
          rule: "duct-outlet-short",
          subject: { kind: "duct-outlet", id },
          place: (outlet.needed ?? outlet).place,
          value,
          limit: least,
          sense: "at-least",
          holds: holds(value.value, "at-least", least.value),
          facts: { outlet: id, condition, is: value.value, needed: least.value },
          related: outlet.on ? [{ place: outlet.on.place, words: "the segment that feeds it" }] : [],
        };
      }
    }
  },
  *remedies({ subject }, project) {
    yield* widerSegment(subject.id, project);
  },
  examples: () => [
    {
      title: "A long thin branch beside an outlet near the supply",
      text: airExample({ hasPath: false, ducts: twoOutlets("1.75 in") }),
      finds: ["Outlet O2 gets .* cfm in cruise; 20 cfm are needed there"],
    },
    {
      title: "The branch as wide as it needs",
      text: airExample({ hasPath: false, ducts: twoOutlets("3 in") }),
      finds: [],
    },
  ],
});

/** Sizes of round duct in inches, half an inch apart: a shop's habit, and only tried. */
const widest = 8;

/** The segment that ends in the outlet, wider by half an inch at a time. */
function* widerSegment(outlet: string, { install }: Project): Iterable<Remedy> {
  for (const { segments, outlets } of install.ducts ?? []) {
    const on = outlets?.find(({ id }) => id?.value === outlet)?.on?.value;
    const segment = segments?.find(({ id }) => id?.value === on);
    if (!segment?.diameter || !segment.id) continue;
    const now = inUnit(segment.diameter.value, "in");
    for (let size = Math.floor(now * 2 + 1) / 2; size <= widest; size += 0.5) {
      yield rewrite(`Widen segment ${segment.id.value} to ${size} in`, segment.diameter.place, `${size} in`);
    }
  }
}
