/**
 * Fault currents, opening times and their order, from record to finding. No published time-current table was
 * found: the points of every device here are made up, and only the arithmetic on them is checked.
 */
import { describe, expect, it } from "vitest";
import { electricalOf } from "../../server/src/core/graph/derivations";
import { proveRemedy } from "../../server/src/core/remedies";
import { inSeries, protectionExample } from "../../server/src/core/rules/protection/protection-example";
import { runExample } from "../../server/src/core/run-example";

function judge(text: string) {
  const judgement = runExample({ title: "", text, finds: [] });
  const project = judgement.project!;
  const values = electricalOf(project).values;
  const value = (subject: string, quantity: string) =>
    values.find((one) => one.subject.id === subject && one.quantity === quantity)?.value;
  const ofRule = (rule: string) => judgement.findings.filter((finding) => finding.rule === rule);
  return { judgement, project, value, ofRule };
}

const opening = (...points: readonly (readonly [at: number, earliest: string, latest: string])[]) =>
  `opening: [${points.map(([at, earliest, latest]) => `{ at: ${at} %, earliest: ${earliest}, latest: ${latest} }`).join(", ")}]`;

describe("a dead short at the far end of a run", () => {
  const text = protectionExample({
    devices: [
      `{ id: CB-20, kind: breaker, rating: 20 A, resistance: 5 mohm, ${opening([200, "8 s", "40 s"], [8000, "5 ms", "25 ms"])} }`,
    ],
  });
  const { value } = judge(text);

  it("runs through the device, the feeder and the return (AC 43.13-1B Table 11-9: 10 AWG 1.26 ohm/1000 ft)", () => {
    // 12 ft at 20 degC: 12 x 0.00126 = 0.01512; with the breaker's 0.005: 0.02012; 28 / 0.02012 = 1391.65
    expect(value("P2N", "least-loop-resistance")).toBeCloseTo(0.02012, 12);
    expect(value("P2N", "largest-fault-current")).toBeCloseTo(1391.6501, 3);
  });

  it("is largest when the feeder's end touches the structure: the return has no part in it", () => {
    // 10 ft at 20 degC: 0.0126; with the breaker's 0.005: 0.0176; 28 / 0.0176 = 1590.909
    expect(value("P1", "least-loop-resistance")).toBeCloseTo(0.0176, 12);
    expect(value("P1", "largest-fault-current")).toBeCloseTo(1590.909, 3);
  });

  it("is smallest with wires at their rating (AC 43.13-1B par. 11-66: (234.5 + 150) / 254.5)", () => {
    // 0.01512 x 384.5 / 254.5 = 0.0228434; + 0.005 = 0.0278434; 28 / 0.0278434 = 1005.62
    expect(value("P1", "loop-resistance")).toBeCloseTo(0.02784338, 7);
    expect(value("P1", "fault-current")).toBeCloseTo(1005.625, 1);
  });

  it("is borne for (k S / I)^2 (IEC 60949, K = 226, beta = 234.5; 9354 circular mils, Table 11-9)", () => {
    // k = 226 x sqrt(ln(484.5 / 384.5)) = 226 x sqrt(0.231182) = 108.66; S = 9354 x 5.067075e-4 = 4.73974 mm2
    // t = (108.66 x 4.73974 / 1005.625)^2 = 0.5121^2 = 0.2623 s
    expect(value("P1", "fault-factor")).toBeCloseTo(108.66, 1);
    expect(value("P1", "withstand-time")).toBeCloseTo(0.2623, 3);
  });

  it("opens the device on the line between its points", () => {
    // 1005.625 / 20 = 50.281; log(50.281 / 2) / log(80 / 2) = 3.22448 / 3.68888 = 0.87411
    // 40 x (0.025 / 40)^0.87411 = 40 x exp(-7.37776 x 0.87411) = 40 x 0.0015823 = 0.06329 s
    expect(value("P1", "opening-time")).toBeCloseTo(0.06329, 4);
  });

  it("is the same for the network, the faults and the ratings where the kit has two devices of one id: the first", () => {
    const device = (rating: number, milliohms: number) =>
      `{ id: CB-20, kind: breaker, rating: ${rating} A, resistance: ${milliohms} mohm, ${opening([200, "8 s", "40 s"], [8000, "5 ms", "25 ms"])} }`;
    const numbersWith = (...devices: readonly string[]) =>
      electricalOf(judge(protectionExample({ devices })).project).values.map(
        ({ subject, quantity, condition, value }) => [subject.id, quantity, condition, value],
      );
    const first = numbersWith(device(20, 5));
    expect(numbersWith(device(20, 5), device(30, 50))).toEqual(first);
    expect(numbersWith(device(30, 50), device(20, 5))).not.toEqual(first);
  });

  it("and where it has two components of one id, whose current is then neither doubled nor told twice", () => {
    const component = (amps: number) =>
      `{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: ${amps} A }] }`;
    const currentsWith = (...components: readonly string[]) =>
      electricalOf(judge(protectionExample({ components })).project)
        .values.filter(({ unit }) => unit === "A")
        .map(({ subject, quantity, condition, value }) => [subject.id, quantity, condition, value]);
    const first = currentsWith(component(5));
    expect(currentsWith(component(5), component(9))).toEqual(first);
    expect(currentsWith(component(9), component(5))).not.toEqual(first);
  });

  it("counts sources and feeders where the airframe gives their resistance", () => {
    const withSources = judge(
      protectionExample({
        system: [
          "sources:",
          "  - { id: ALT, kind: alternator, bus: MAIN, voltage: 28 V, rating: 100 A, resistance: 20 mohm }",
          "  - { id: BAT, kind: battery, voltage: 25 V, capacity: 24 Ah, resistance: 10 mohm }",
          "feeders: [{ id: W-BAT, from: BAT, to: MAIN, resistance: 3 mohm }]",
        ],
      }),
    );
    // the alternator alone: 20 mohm; with the battery's 13 mohm beside it: 20 x 13 / 33 = 7.878788 mohm
    expect(withSources.value("MAIN", "supply-resistance")).toBeCloseTo(0.02, 12);
    expect(withSources.value("MAIN", "least-supply-resistance")).toBeCloseTo(0.007878788, 9);
    expect(withSources.value("P1", "least-loop-resistance")).toBeCloseTo(0.007878788 + 0.0126, 9);
    expect(withSources.value("P2N", "least-loop-resistance")).toBeCloseTo(0.007878788 + 0.01512, 9);
    expect(electricalOf(withSources.project).protection.faults).toMatchObject(
      ["P1", "P2N"].map((id) => ({ wire: { id }, largest: { isJudged: true } })),
    );
    expect(electricalOf(judge(text).project).protection.faults[0]?.largest.isJudged).toBe(false);
  });

  it("is found too small, and a thicker gauge is proven to mend it; without points nothing is said", () => {
    const thin = (points: string) =>
      protectionExample({
        components: ["{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 1 A }] }"],
        devices: [`{ id: CB-20, kind: breaker, rating: 3 A${points} }`],
        wires: ["{ id: P1, from: CB-RACK, to: RACK, gauge: 24 AWG, length: 10 ft, rating: 150 degC }"],
      });
    // 24 AWG: 28.4 ohm/1000 ft; 0.284 x 384.5 / 254.5 = 0.42907 ohm; 65.26 A. It stands that for
    // (108.66 x 475 x 5.067075e-4 / 65.26)^2 = 0.1606 s; at 21.75 times the device may take 1.06 s.
    const points = opening([200, "8 s", "40 s"], [5000, "0.2 s", "0.3 s"]);
    const { judgement, ofRule } = judge(thin(`, ${points}`));
    const [finding] = ofRule("fault-current-too-small");
    expect(finding?.what).toContain("draws 65.3 A: CB-RACK may take 1.06 s, the wire stands 0.161 s");
    // Its limit rests on a final temperature from memory.
    expect(finding?.severity).toBe("warning");
    const remedy = proveRemedy(finding!, judgement, { resolve: () => undefined, load: () => undefined });
    expect(remedy?.edits[0]?.newText).toMatch(/^\d+ AWG$/);
    expect(judge(thin("")).ofRule("fault-current-too-small")).toEqual([]);
    expect(judge(thin("")).value("P1", "fault-current")).toBeCloseTo(65.26, 2);
  });
});

describe("two devices in series", () => {
  const pair = (upstream: string, downstream: string) =>
    judge(
      protectionExample({
        devices: [
          `{ id: F-UP, kind: fuse, rating: 40 A, ${upstream} }`,
          `{ id: CB-20, kind: breaker, rating: 20 A, ${downstream} }`,
        ],
        ...inSeries,
      }),
    );
  const breaker = opening([200, "8 s", "40 s"], [20000, "4 ms", "20 ms"]);

  it("clash where the lines cross, to the largest fault behind the downstream device", () => {
    // Downstream latest at 40 A 40 s, falling as 40 x (I / 40)^(log(0.0005) / log(100)); upstream earliest at
    // 40 A 40000 s, falling as 40000 x (I / 40)^(log(1e-8) / log(100)) = 40000 x (I / 40)^-4.
    // Equal where 1000 = (I / 40)^(4 - 1.650515), so I = 40 x 1000^(1 / 2.349485) = 756.6 A.
    const { ofRule, value } = pair(opening([100, "40000 s", "90000 s"], [10000, "0.4 ms", "1 ms"]), breaker);
    expect(value("CB-RACK", "largest-fault-current")).toBeCloseTo(28 / 0.0126, 6);
    const [finding] = ofRule("protection-order");
    expect(finding?.what).toMatch(/^F-MAIN may open before CB-RACK from 757 A to 2222 A: at 2222 A/);
    expect(finding?.severity).toBe("error");
  });

  it("keep their order where the upstream one is later everywhere", () => {
    const { judgement, ofRule } = pair(opening([100, "40000 s", "90000 s"], [10000, "1 s", "2 s"]), breaker);
    expect(ofRule("protection-order")).toEqual([]);
    expect(ofRule("opening-time-not-covered")).toEqual([]);
    const [order] = judgement.assessments.filter(({ rule }) => rule === "protection-order");
    expect(order?.holds).toBe(true);
  });

  it("are not known where points end, and each pair without points is asked for once", () => {
    const short = pair(opening([100, "40000 s", "90000 s"], [1000, "1 s", "2 s"]), breaker);
    expect(short.ofRule("protection-order")).toEqual([]);
    const whats = short.ofRule("opening-time-not-covered").map(({ what }) => what);
    expect(whats).toContain(
      "Whether CB-RACK opens before F-MAIN is not known: no points cover 400 A to 2222 A.",
    );
    const none = judge(
      protectionExample({
        devices: ["{ id: F-UP, kind: fuse, rating: 40 A }", "{ id: CB-20, kind: breaker, rating: 20 A }"],
        ...inSeries,
      }),
    );
    expect(none.ofRule("opening-time-not-covered")).toHaveLength(1);
  });
});

describe("a slow fuse of 70 A ahead of a breaker of 60 A for one equipment feeder (common practice, no source)", () => {
  const text = (fuse: string) =>
    protectionExample({
      components: [
        "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 48 A, inrush: 180 A, inrush-time: 300 ms }] }",
      ],
      devices: [
        `{ id: F-70, kind: fuse, rating: 70 A, ${fuse} }`,
        `{ id: CB-60, kind: breaker, rating: 60 A, ${opening([115, "100 s", "3600 s"], [200, "10 s", "60 s"], [1000, "0.1 s", "0.8 s"], [5000, "5 ms", "20 ms"])} }`,
      ],
      protection: ["{ id: F-FEED, device: F-70, mounted-on: MAIN }", "{ id: CB-RACK, device: CB-60 }"],
      wires: [
        "{ id: P1, from: F-FEED, to: CB-RACK, gauge: 4 AWG, length: 10 ft, rating: 150 degC }",
        "{ id: P2, from: CB-RACK, to: RACK, gauge: 4 AWG, length: 20 ft, rating: 150 degC }",
        "{ id: P3N, from: RACK, to: GND-AFT, gauge: 4 AWG, length: 4 ft, rating: 150 degC }",
      ],
    });
  const areas = ["protection-order", "protection-opens-at-inrush", "fault-current-too-small"];

  it("is consistent for a load that fits (points made up)", () => {
    const slow = opening(
      [100, "10 h", "100 h"],
      [200, "300 s", "900 s"],
      [1000, "2 s", "4 s"],
      [15000, "25 ms", "45 ms"],
    );
    const { judgement } = judge(text(slow));
    const own = judgement.findings.filter(({ rule }) => areas.includes(rule));
    expect(own.map(({ what }) => what)).toEqual([]);
    const judged = judgement.assessments.filter(({ rule }) => areas.includes(rule)).map(({ rule }) => rule);
    expect([...new Set(judged)].sort()).toEqual([...areas].sort());
  });

  it("is not, with a quick fuse of the same rating (points made up)", () => {
    const quick = opening(
      [100, "10 h", "100 h"],
      [200, "1 s", "5 s"],
      [1000, "10 ms", "40 ms"],
      [15000, "1 ms", "4 ms"],
    );
    const { judgement } = judge(text(quick));
    expect(judgement.findings.map(({ rule }) => rule)).toContain("protection-order");
  });
});

describe("contacts (AC 43.13-1B Table 11-4, p. 11-17)", () => {
  const relay = (nominal: string) =>
    judge(
      protectionExample({
        nominal,
        components: [
          "{ id: RACK, weight: 31.2 lb, load-type: lamp, draws: [{ mode: run, current: 2 A }] }",
          "{ id: FANS, weight: 5.2 lb, load-type: motor, draws: [{ mode: run, current: 3 A }] }",
          "{ id: BOX, weight: 1 lb, draws: [{ mode: run, current: 1 A }] }",
        ],
        loads: "{ RACK: run, FANS: run, BOX: run }",
        wires: ["RACK", "FANS", "BOX"].map(
          (id, index) =>
            `{ id: P${index}, from: K-1, to: ${id}, gauge: 10 AWG, length: 5 ft, rating: 150 degC }`,
        ),
        sections: ["contacts: [{ id: K-1, kind: relay, rating: 26 A, mounted-on: CB-RACK }]"],
      }),
    );

  it("add up load by load: 28 V 2 x 8 + 3 x 3 + 1 = 26 A; 14 V 2 x 5 + 3 x 2 + 1 = 17 A", () => {
    expect(relay("28 V").value("K-1", "contact-requirement")).toBe(26);
    expect(relay("28 V").ofRule("contact-below-load")).toEqual([]);
    expect(relay("14 V").value("K-1", "contact-requirement")).toBe(17);
  });
});

describe("spares and certification basis (14 CFR 23.1357(e), before Amdt 23-64)", () => {
  const fuses = (count: number, basis: string) =>
    judge(
      protectionExample({
        basis,
        devices: ["{ id: CB-20, kind: fuse, rating: 20 A }"],
        protection: Array.from(
          { length: count },
          (_, index) =>
            `{ id: ${index === 0 ? "CB-RACK" : `F-${index}`}, device: CB-20, mounted-on: MAIN, reset-in-flight: true }`,
        ),
        sections: ["spares: [{ device: CB-20, count: 1 }]"],
      }),
    );

  it.each([
    [1, 1],
    [2, 1],
    [3, 2],
    [5, 3],
  ])("%i fuses need %i spares", (count, needed) => {
    expect(fuses(count, "14 CFR 23 before Amdt 23-64").value("CB-20", "spares-needed")).toBe(needed);
  });

  it("fails where the paragraph is the aircraft's own, and warns where it is not", () => {
    const severities = (basis: string) =>
      fuses(3, basis)
        .ofRule("fuse-spares-too-few")
        .map(({ severity }) => severity);
    expect(severities("14 CFR 23 before Amdt 23-64")).toEqual(["error"]);
    expect(severities("CAR 3")).toEqual(["warning"]);
    expect(fuses(1, "CAR 3").ofRule("reset-out-of-reach")).toEqual([]);
  });
});
