/** The loading conditions of AC 43.13-1B par. 10-18, as whole records. */
import { describe, expect, test } from "vitest";
import { check } from "../../server/src/core/check";
import { weightsOf } from "../../server/src/core/graph/derivations";
import type { LoadingCondition } from "../../server/src/core/graph/weights/loading-conditions";
import type { RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";

const alone: RecordSource = { resolve: () => undefined, load: () => undefined };

/** The aeroplane of figures 10-13 and 10-14; a rack goes in where a box of its weight comes out. */
function record({ aft = "22 in", crew = "crew: { weight: 170 lb, stations: [front-seats] }" } = {}): string {
  return [
    "document: { number: HM-0412, revision: A, status: draft }",
    "airframe:",
    "  aircraft: { type: Type 9, serial: B9-0417, kind: aeroplane, certification-basis: CAR 3 }",
    "  datum: Leading edge of the wing",
    "  empty: { weight: 1169 lb, arm: 10.6 in }",
    "  oil: { weight: 17 lb, arm: -49 in }",
    "  limits: { takeoff: 2100 lb }",
    "  envelopes:",
    "    - id: normal",
    "      forward: [{ weight: 2100 lb, arm: 8.5 in, or-less: true }]",
    `      aft: [{ weight: 2100 lb, arm: ${aft}, or-less: true }]`,
    "  stations:",
    "    - { id: front-seats, kind: seat, arm: 16 in, limit: 400 lb, seats: 2 }",
    "    - { id: rear-seats, kind: seat, arm: 48 in, limit: 400 lb, seats: 2 }",
    "    - { id: tanks, kind: fuel, arm: 22 in, capacity: 40 gal, density: 6.0 lb/gal }",
    "    - { id: baggage, kind: baggage, arm: 75.5 in, limit: 100 lb }",
    `  ${crew}`,
    "  equipment: [{ id: box, weight: 5 lb, arm: 20 in }]",
    "kit:",
    "  kit: { number: QSR-60, revision: C }",
    "  components: [{ id: RACK, weight: 5 lb }]",
    "placement: [{ component: RACK, arm: 20 in }]",
    "removed: [{ equipment: box }]",
    "",
  ].join("\n");
}

function conditionsIn(text: string): readonly LoadingCondition[] {
  const { project } = check(loadRecord("test.install.yaml", "install", text), alone);
  return weightsOf(project!).conditions[0]?.conditions ?? [];
}

const carried = ({ sheet }: LoadingCondition) =>
  Object.fromEntries(sheet.rows.map(({ id, weight }) => [id, weight]));

describe("loading conditions, AC 43.13-1B (9/8/98, Change 1) par. 10-18", () => {
  test("most passengers, figure 10-13: 2,100 lb, 38,466 lb in (18.3 in, misprinted 18.6)", () => {
    const found = conditionsIn(record()).find(({ name }) => name === "most passengers")!;
    expect(carried(found)).toEqual({
      "rest of front-seats": 170,
      "rear-seats": 340,
      tanks: 234,
      baggage: 0,
    });
    expect(found.weight!.value).toBeCloseTo(2100, 9);
    expect(found.weight!.value * found.cg!.value).toBeCloseTo(38_466, -0.5);
    expect(found.verdict).toBe("within");
  });

  test("most baggage, figure 10-14: 2,036 lb, 37,988 lb in; one whole passenger behind", () => {
    const found = conditionsIn(record()).find(({ name }) => name === "most baggage")!;
    expect(carried(found)).toEqual({
      baggage: 100,
      tanks: 240,
      "rest of front-seats": 170,
      "rear-seats": 170,
    });
    expect(found.weight!.value).toBeCloseTo(2036, 9);
    expect(found.weight!.value * found.cg!.value).toBeCloseTo(37_988, -0.5);
  });

  test("full fuel: passengers next, and the baggage that is left (by hand)", () => {
    const found = conditionsIn(record()).find(({ name }) => name === "full fuel")!;
    // 2100 - 1169 - 17 - 170 - 240 lb leave 504 lb: two of 170 lb, not a third, and then the baggage.
    expect(carried(found)).toEqual({
      tanks: 240,
      "rest of front-seats": 170,
      "rear-seats": 170,
      baggage: 100,
    });
    expect(found.limits.map(({ side, limit }) => [side, limit.value])).toEqual([
      ["forward", expect.closeTo(8.5, 9)],
      ["aft", expect.closeTo(22, 9)],
    ]);
  });

  test("beyond a limit is said, and nothing is said without a crew", () => {
    const tight = conditionsIn(record({ aft: "18.5 in" }));
    expect(tight.map(({ name, verdict }) => [name, verdict])).toEqual([
      ["full fuel", "beyond-aft"],
      ["most passengers", "within"],
      ["most baggage", "beyond-aft"],
    ]);
    expect(conditionsIn(record({ crew: "burn-order: [tanks]" }))).toEqual([]);
  });
});
