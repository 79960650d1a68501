/**
 * Faults whose current has more than one way, against an outside linear-algebra package (mathjs, by
 * tests/network/outside.ts) and by hand. Resistances: AC 43.13-1B Table 11-9; points of devices are made up.
 */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { electricalOf } from "../../server/src/core/graph/derivations";
import { protectionExample, twoFeeds } from "../../server/src/core/rules/protection/protection-example";
import { runExample } from "../../server/src/core/run-example";
import { RecordShelf } from "../../server/src/core/shelf";
import { solveLinear } from "../network/outside";
import { ground, network, wire as run, stiff } from "../network/support";

const points =
  "opening: [{ at: 120 %, earliest: 100 s, latest: 1000 s }, { at: 200 %, earliest: 8 s, latest: 40 s }, " +
  "{ at: 8000 %, earliest: 5 ms, latest: 20 ms }]";

function faultsOf(parts: Parameters<typeof protectionExample>[0]) {
  const judgement = runExample({ title: "", text: protectionExample(parts), finds: [] });
  const { protection, values } = electricalOf(judgement.project!);
  const fault = (wire: string, guard: string) =>
    protection.faults.find((one) => one.wire.id === wire && one.guard.id === guard)!;
  return { judgement, protection, values, fault };
}

/** Ohm of copper at 20 degC, and at a rating of 150 degC. Table 11-9 and par. 11-66. */
const cold = (per1000Feet: number, feet: number) => (per1000Feet * feet) / 1000;
const hot = (per1000Feet: number, feet: number) => cold(per1000Feet, feet) * (384.5 / 254.5);

const gauge10 = 1.26;
const gauge14 = 3.06;

/** Currents of a network with its fault, the branches' own order kept. */
function solved(branches: readonly ReturnType<typeof run>[], sources: readonly ReturnType<typeof stiff>[]) {
  const found = solveLinear(network({ branches, sources }))!;
  const at = (node: number) => (node === ground ? 0 : found.potentials[node]!);
  return branches.map(({ from, to, ohms }) => (at(from) - at(to)) / ohms);
}

describe("a wire that two breakers feed", () => {
  const device = (id: string, more = "") => `{ id: ${id}, kind: breaker, rating: 20 A${more}, ${points} }`;
  const parts = {
    ...twoFeeds,
    devices: [device("CB-20", ", resistance: 4 mohm")],
    wires: [
      "{ id: P1, from: CB-A, to: TB-1, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
      "{ id: P2, from: CB-B, to: TB-1, gauge: 10 AWG, length: 6 ft, rating: 150 degC }",
      "{ id: P3, from: TB-1, to: RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
      "{ id: P4N, from: RACK, to: GND-AFT, gauge: 10 AWG, length: 2 ft, rating: 150 degC }",
    ],
  };

  it("sees in each what the outside package gives, the other way cold", () => {
    const { fault } = faultsOf(parts);
    const last = hot(gauge14, 8) + hot(gauge10, 2);
    const [throughA, , whole] = solved(
      [run(0, 1, 0.004 + hot(gauge10, 10)), run(0, 1, 0.004 + cold(gauge10, 6)), run(1, ground, last)],
      [stiff(0, 28)],
    );
    const { smallest, largest } = fault("P3", "CB-A");
    expect(smallest.current!.value).toBeCloseTo(throughA!, 6);
    expect(smallest.inWire!.value).toBeCloseTo(whole!, 6);
    expect(smallest.current!.subject).toEqual({ kind: "wire", id: "P3" });
    // To the structure: the return has no part in the largest.
    const allCold = solved(
      [
        run(0, 1, 0.004 + cold(gauge10, 10)),
        run(0, 1, 0.004 + cold(gauge10, 6)),
        run(1, ground, cold(gauge14, 8)),
      ],
      [stiff(0, 28)],
    );
    expect(largest.current!.value).toBeCloseTo(allCold[0]!, 6);
    expect(largest.inWire!.value).toBeCloseTo(allCold[2]!, 6);
    // No resistance ahead of the bus is recorded, so that the largest current is a bound.
    expect(largest.isJudged).toBe(false);
  });

  it("heats the wire with all of the current, and opens each breaker with its own part", () => {
    const { fault } = faultsOf(parts);
    const { smallest } = fault("P3", "CB-A");
    const [inWire, current] = [smallest.inWire!.value, smallest.current!.value];
    // k = 108.66 (150 to 250 degC), S = 3831 circular mils = 1.94120 mm2
    expect(smallest.withstand!.value).toBeCloseTo(((108.66 * 1.9412) / inWire) ** 2, 5);
    const steepness = Math.log(0.02 / 40) / Math.log(80 / 2);
    expect(smallest.opening!.value).toBeCloseTo(40 * (current / 20 / 2) ** steepness, 9);
  });

  it("is the same through its return, and through one breaker where a wire ahead of the joint fails", () => {
    const { fault, values } = faultsOf(parts);
    expect(fault("P4N", "CB-A").smallest.current!.value).toBe(fault("P3", "CB-A").smallest.current!.value);
    // off the joint, P1 has one way: 28 / (0.004 + 0.0126 x 384.5 / 254.5)
    const own = fault("P1", "CB-A").smallest;
    expect(own.current!.value).toBeCloseTo(28 / (0.004 + hot(gauge10, 10)), 9);
    expect(own.inWire).toBe(own.current);
    expect(
      values.filter(({ quantity }) => quantity === "wire-fault-current").map(({ subject }) => subject.id),
    ).toEqual(expect.arrayContaining(["P3", "P4N"]));
  });

  it("counts each source alone and both, and takes what leaves the breaker least", () => {
    const { fault } = faultsOf({
      ...parts,
      system: [
        "sources:",
        "  - { id: ALT, kind: alternator, bus: MAIN, voltage: 28 V, rating: 100 A, resistance: 20 mohm }",
        "  - { id: BAT, kind: battery, voltage: 25 V, capacity: 24 Ah, resistance: 10 mohm }",
        "feeders: [{ id: W-BAT, from: BAT, to: MAIN, resistance: 3 mohm }]",
      ],
    });
    const branches = (ahead: number, ohms: typeof hot, last: number) => [
      run(0, 1, ahead),
      run(1, 2, 0.004 + ohms(gauge10, 10)),
      run(1, 2, 0.004 + cold(gauge10, 6)),
      run(2, ground, last),
    ];
    const alone = solved(branches(0.02, hot, hot(gauge14, 8) + hot(gauge10, 2)), [stiff(0, 28)]);
    expect(fault("P3", "CB-A").smallest.current!.value).toBeCloseTo(alone[1]!, 6);
    // The largest is that of a short to the structure, which needs no return.
    const both = solved(branches((20 * 13) / 33 / 1000, cold, cold(gauge14, 8)), [stiff(0, 28)]);
    const { largest } = fault("P3", "CB-A");
    expect(largest.current!.value).toBeCloseTo(both[1]!, 6);
    expect(largest.isJudged).toBe(true);
  });

  it("has a larger current in one breaker once the other has opened, which never counts for it", () => {
    const { fault } = faultsOf(parts);
    const after = 28 / (0.004 + hot(gauge10, 10) + hot(gauge14, 8) + hot(gauge10, 2));
    expect(fault("P3", "CB-A").smallest.current!.value).toBeLessThan(after);
  });
});

describe("after an edit of something on one of the ways", () => {
  const text = protectionExample({
    ...twoFeeds,
    devices: [
      `{ id: CB-20, kind: breaker, rating: 20 A, resistance: 4 mohm, ${points} }`,
      `{ id: CB-15, kind: breaker, rating: 15 A, resistance: 6 mohm, ${points} }`,
    ],
    wires: [
      ...twoFeeds.wires,
      "{ id: P3, from: TB-1, to: RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
    ],
  });
  const seen = (project: Parameters<typeof electricalOf>[0]) =>
    electricalOf(project).protection.faults.map(({ wire, guard, smallest, largest }) => [
      wire.id,
      guard.id,
      ...[smallest, largest].map(({ current, inWire, opening }) => [
        current?.value,
        inWire?.value,
        opening?.value,
      ]),
    ]);

  it.each([
    [
      "the length of the other breaker's wire",
      "to: TB-1, gauge: 10 AWG, length: 10 ft",
      "to: TB-1, gauge: 10 AWG, length: 9 ft",
    ],
    ["the other breaker", "id: CB-B, device: CB-20", "id: CB-B, device: CB-15"],
    ["the end of a wire, so that one way is left", "from: CB-B, to: TB-1", "from: CB-B, to: RACK"],
    ["the nominal voltage", "nominal: 28 V", "nominal: 14 V"],
  ])("is computed anew: %s", (_, before, after) => {
    const texts = { record: text };
    const shelf = new RecordShelf({ resolve: () => undefined, text: () => texts.record });
    const judged = () => check(shelf.load("example.install.yaml")!, shelf).project!;
    const first = seen(judged());
    expect(text).toContain(before);
    texts.record = text.replace(before, after);
    const second = seen(judged());
    expect(second).not.toEqual(first);
    expect(second).toEqual(seen(runExample({ title: "", text: texts.record, finds: [] }).project!));
    texts.record = text;
    expect(seen(judged())).toEqual(first);
  });
});

describe("ways that cross", () => {
  // Two breakers, two joints, a tie between them, and a wire from each joint to a third that feeds the load.
  const parts = {
    ...twoFeeds,
    devices: [
      `{ id: CB-20, kind: breaker, rating: 20 A, resistance: 4 mohm, ${points} }`,
      `{ id: CB-15, kind: breaker, rating: 15 A, resistance: 6 mohm, ${points} }`,
    ],
    protection: [
      "{ id: CB-A, device: CB-20, mounted-on: MAIN }",
      "{ id: CB-B, device: CB-20, mounted-on: MAIN }",
      "{ id: CB-TIE, device: CB-15 }",
    ],
    wires: [
      "{ id: P1, from: CB-A, to: TB-1, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
      "{ id: P2, from: CB-B, to: TB-2, gauge: 10 AWG, length: 20 ft, rating: 150 degC }",
      "{ id: P5, from: TB-1, to: CB-TIE, gauge: 14 AWG, length: 2 ft, rating: 150 degC }",
      "{ id: P6, from: CB-TIE, to: TB-2, gauge: 14 AWG, length: 2 ft, rating: 150 degC }",
      "{ id: P7, from: TB-1, to: TB-3, gauge: 14 AWG, length: 9 ft, rating: 150 degC }",
      "{ id: P8, from: TB-2, to: TB-3, gauge: 14 AWG, length: 7 ft, rating: 150 degC }",
      "{ id: P3, from: TB-3, to: RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
    ],
    sections: ["junctions: [{ id: TB-1 }, { id: TB-2 }, { id: TB-3 }]"],
  };
  const tie = 0.006;

  it("give each device what the outside package gives at the least of all states of the others", () => {
    const { fault } = faultsOf(parts);
    const states = (
      isOpen: (device: "CB-A" | "CB-B" | "CB-TIE") => boolean,
      ohms: Record<string, number>,
    ) => {
      const huge = 1e12;
      return solved(
        [
          run(0, 1, isOpen("CB-A") ? huge : 0.004 + ohms.P1!),
          run(0, 2, isOpen("CB-B") ? huge : 0.004 + ohms.P2!),
          run(1, 2, isOpen("CB-TIE") ? huge : tie + ohms.P5! + ohms.P6!),
          run(1, 3, ohms.P7!),
          run(2, 3, ohms.P8!),
          run(3, ground, ohms.P3!),
        ],
        [stiff(0, 28)],
      );
    };
    const lengths = {
      P1: [gauge10, 10],
      P2: [gauge10, 20],
      P5: [gauge14, 2],
      P6: [gauge14, 2],
      P7: [gauge14, 9],
      P8: [gauge14, 7],
      P3: [gauge14, 8],
    } as const;
    const ohms = (hotWires: readonly string[]) =>
      Object.fromEntries(
        Object.entries(lengths).map(([id, [per, feet]]) => [
          id,
          (hotWires.includes(id) ? hot : cold)(per, feet),
        ]),
      );
    const ids = ["CB-A", "CB-B", "CB-TIE"] as const;
    const cases = [
      { guard: "CB-B", branch: 1, hotWires: ["P2", "P8", "P3"] },
      { guard: "CB-A", branch: 0, hotWires: ["P1", "P5", "P6", "P7", "P8", "P3"] },
      { guard: "CB-TIE", branch: 2, hotWires: ["P1", "P5", "P6", "P8", "P3"] },
    ] as const;
    for (const { guard, branch, hotWires } of cases) {
      const others = ids.filter((id) => id !== guard);
      const seen = [[], [others[0]!], [others[1]!], others].map((open) =>
        Math.abs(states((device) => open.includes(device), ohms(hotWires))[branch]!),
      );
      const least = Math.min(...seen.filter((amps) => amps > 1e-3));
      const result = fault("P3", guard);
      expect(result.smallest.current!.value).toBeCloseTo(least, 4);
      const whole = states(() => false, ohms(hotWires))[5]!;
      expect(result.smallest.inWire!.value).toBeCloseTo(whole, 4);
    }
  });
});

describe("what is taken for certain", () => {
  it("one wire of two that share a load: off its end, it carries the whole current", () => {
    const { fault } = faultsOf({
      devices: [`{ id: CB-20, kind: breaker, rating: 20 A, resistance: 4 mohm, ${points} }`],
      wires: [
        "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
        "{ id: P2, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
      ],
    });
    expect(fault("P1", "CB-RACK").smallest.current!.value).toBeCloseTo(28 / (0.004 + hot(gauge10, 10)), 9);
    expect(fault("P2", "CB-RACK").smallest.inWire!.value).toBeCloseTo(28 / (0.004 + hot(gauge10, 10)), 9);
  });

  it("two buses that no source is recorded for: each may be the only one alive, or both", () => {
    const text = protectionExample({
      ...twoFeeds,
      devices: [`{ id: CB-20, kind: breaker, rating: 20 A, resistance: 4 mohm, ${points} }`],
      protection: [
        "{ id: CB-A, device: CB-20, mounted-on: MAIN }",
        "{ id: CB-B, device: CB-20, mounted-on: SIDE }",
      ],
      wires: [
        ...twoFeeds.wires,
        "{ id: P3, from: TB-1, to: RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
      ],
    }).replace("buses: [{ id: MAIN }]", "buses: [{ id: MAIN }, { id: SIDE }]");
    const { protection } = electricalOf(runExample({ title: "", text, finds: [] }).project!);
    const alone = 28 / (0.004 + hot(gauge10, 10) + hot(gauge14, 8));
    const both = solved(
      [
        run(0, 2, 0.004 + hot(gauge10, 10)),
        run(1, 2, 0.004 + cold(gauge10, 10)),
        run(2, ground, hot(gauge14, 8)),
      ],
      [stiff(0, 28), stiff(1, 28)],
    );
    const found = protection.faults.find(({ wire, guard }) => wire.id === "P3" && guard.id === "CB-A")!;
    expect(found.smallest.current!.value).toBeCloseTo(Math.min(alone, both[0]!), 6);
    expect(protection.uncomparedFaults).toEqual([]);
  });

  it("a device behind two ways: the largest fault behind it runs through it whole", () => {
    const { values } = faultsOf({
      ...twoFeeds,
      devices: [
        `{ id: CB-20, kind: breaker, rating: 20 A, resistance: 4 mohm, ${points} }`,
        `{ id: CB-10, kind: breaker, rating: 10 A, resistance: 8 mohm, ${points} }`,
      ],
      protection: [...twoFeeds.protection, "{ id: CB-RACK, device: CB-10 }"],
      wires: [
        ...twoFeeds.wires,
        "{ id: P3, from: TB-1, to: CB-RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
        "{ id: P4, from: CB-RACK, to: RACK, gauge: 14 AWG, length: 8 ft, rating: 150 degC }",
      ],
    });
    const found = values.find(
      ({ subject, quantity }) => subject.id === "CB-RACK" && quantity === "largest-fault-current",
    );
    // two ways of 0.004 + 0.0126 ohm side by side, then 0.02448 and the device's 0.008
    const ohms = (0.004 + cold(gauge10, 10)) / 2 + cold(gauge14, 8) + 0.008;
    expect(found!.value).toBeCloseTo(28 / ohms, 6);
  });
});
