/** Servicing: how far a job is from its panel however the component stands, and who is accused of what. */

import { describe, expect, it } from "vitest";
import { placementsOf } from "../../server/src/core/graph/derivations";
import { serviced, serviceExample } from "../../server/src/core/rules/placement/service-example";
import { judge, remediesFor, titlesFor } from "../remedies/support";
import { fc } from "../support/random";

const spot = (front: number, left: number, bottom: number) =>
  serviced(`at: { from-front: ${front} in, from-left: ${left} in, from-bottom: ${bottom} in }`);
const anywhere = serviced("data: QSR-60-2");
const access = (arm: number, buttLine: number, waterLine: number, reach = "18 in") =>
  `at: { arm: ${arm} in, butt-line: ${buttLine} in, water-line: ${waterLine} in }, reach: ${reach}`;

function distanceIn(text: string): number {
  const [service] = placementsOf(judge(text).project!).services;
  return service!.ways[0]!.distance!.value;
}

/** Findings of the place alone: the examples' aircraft has no envelope. */
function findingsIn(text: string) {
  return judge(text).findings.filter(({ rule }) => rule !== "cg-not-checked");
}

function rulesIn(text: string): string[] {
  return findingsIn(text).map(({ rule }) => rule);
}

describe("the distance of a job", () => {
  // The rack is 20 in long, 12 wide, 10 high, its centre of gravity in its middle at 140, 0 and 20 in. The job is
  // at its front, 6 in to the left and 5 in below its middle: 10 in ahead, 6 to the left, 5 below.
  const corner = spot(0, 0, 0);

  it.each([
    { stands: "as it is", keys: "", at: [130, -6, 15] },
    { stands: "turned by a quarter, its front to the left", keys: ", turn: 90 deg", at: [146, -10, 15] },
    { stands: "turned round", keys: ", turn: 180 deg", at: [150, 6, 15] },
    { stands: "upside down", keys: ", up: bottom", at: [130, 6, 25] },
    { stands: "on its right side", keys: ", up: left", at: [130, -5, 26] },
    { stands: "on its rear", keys: ", up: front", at: [135, -6, 30] },
  ])("is none where one reaches in at the very place: $stands", ({ keys, at }) => {
    const placement = `${keys}, served-through: [BAY-DOOR]`;
    const text = (arm: number) =>
      serviceExample({ component: corner, placement, access: access(arm, at[1]!, at[2]!) });
    expect(distanceIn(text(at[0]!))).toBeCloseTo(0, 9);
    expect(distanceIn(text(at[0]! + 7))).toBeCloseTo(7, 9);
  });

  it("is that of the nearest point where none is named, and of no named one less", () => {
    const inch = fc.integer({ min: -30, max: 30 });
    const share = fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100);
    fc.assert(
      fc.property(
        fc.tuple(inch, inch, inch),
        fc.tuple(share, share, share),
        fc.integer({ min: 0, max: 359 }),
        ([x, y, z], [a, b, c], turn) => {
          const parts = {
            access: access(140 + x, y, 20 + z),
            placement: `, turn: ${turn} deg, served-through: [BAY-DOOR]`,
          };
          const nearest = distanceIn(serviceExample({ ...parts, component: anywhere }));
          const named = distanceIn(serviceExample({ ...parts, component: spot(20 * a, 12 * b, 10 * c) }));
          expect(nearest).toBeLessThanOrEqual(named + 1e-9);
          // The point of the box that is nearest, found in its own axes, by turning the hand back.
          const angle = (-turn * Math.PI) / 180;
          const hand = [
            x * Math.cos(angle) - y * Math.sin(angle),
            x * Math.sin(angle) + y * Math.cos(angle),
            z,
          ];
          const beyond = hand.map((one, axis) => Math.max(0, Math.abs(one) - [10, 6, 5][axis]!));
          expect(nearest).toBeCloseTo(Math.hypot(...beyond), 9);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("a finding", () => {
  const far = spot(0, 12, 5);

  it("comes only where every panel that is named is known to be too far", () => {
    const both = ", served-through: [BAY-DOOR, BELLY]";
    expect(rulesIn(serviceExample({ component: far }))).toEqual(["service-out-of-reach"]);
    // 6 in to the right of the belly panel's middle and 16 in above it: 17.09 in, of 16.
    expect(rulesIn(serviceExample({ component: far, placement: both }))).toEqual(["service-out-of-reach"]);
    const unknown = {
      component: far,
      placement: both,
      access: "at: { arm: 140 in, butt-line: -20 in, water-line: 20 in }",
    };
    expect(rulesIn(serviceExample(unknown))).toEqual(["placement-data-missing"]);
    const misspelt = { component: far, placement: ", served-through: [BAY-DOR]" };
    expect(rulesIn(serviceExample(misspelt))).toEqual(["reference-unknown"]);
  });

  it("is of each job by itself", () => {
    const component = `${anywhere.replace(/\}\]$/, "}")}, { what: drain it, at: { from-front: 20 in, from-left: 12 in, from-bottom: 0 in } }]`;
    const found = findingsIn(serviceExample({ component }));
    expect(found.map(({ what }) => what)).toEqual([expect.stringMatching(/^To drain it at RACK/)]);
  });
});

describe("a remedy", () => {
  it("names the panels that reach, and no other", () => {
    // 4 in ahead of the belly panel's middle, 11 in above it; the door is 29 in away.
    const component = spot(6, 6, 0);
    expect(titlesFor("service-out-of-reach", serviceExample({ component }))).toEqual([
      "Service RACK through BELLY",
    ]);
    expect(titlesFor("service-out-of-reach", serviceExample({ component: spot(20, 12, 10) }))).toEqual([]);
  });

  it("adds the panel that nobody named", () => {
    const [remedy, ...others] = remediesFor("service-panel-missing", serviceExample({ placement: "" }));
    expect(remedy!.title).toBe("Service RACK through BAY-DOOR");
    expect(remedy!.text).toContain("water-line: 20 in, served-through: [BAY-DOOR] }");
    expect(others).toEqual([]);
    expect(rulesIn(remedy!.text)).toEqual([]);
  });
});
