/**
 * Sources and their loads, as whole records. Beside each check: document, edition and place, or that its numbers
 * are constructed. No published curve of an aircraft alternator was found: all output points are made up.
 */
import { describe, expect, it } from "vitest";
import type { Judgement } from "../../server/src/core/check";
import { electricalOf, valuesOf } from "../../server/src/core/graph/derivations";
import { loadAnalysisSource } from "../../server/src/core/graph/electrical/load-analysis";
import type { QuantityName } from "../../server/src/core/graph/quantity-names";
import type { Value } from "../../server/src/core/graph/value";
import type { Project } from "../../server/src/core/project";
import { ruleById } from "../../server/src/core/rules";
import { sourceRules } from "../../server/src/core/rules/sources";
import {
  exampleAlternator,
  existingLoad,
  runningIn,
  sourceExample,
} from "../../server/src/core/rules/sources/source-example";
import { runExample } from "../../server/src/core/run-example";
import { hintsOf } from "../../server/src/core/views/hints";

const ownRules = new Set(sourceRules.map(({ id }) => id));

function judge(text: string, others: Record<string, string> = {}): Judgement & { readonly project: Project } {
  const judgement = runExample({ title: "", finds: [], text, others });
  return { ...judgement, project: judgement.project! };
}

/** Rules of this area that the record breaks. */
const broken = (judgement: Judgement) =>
  judgement.findings.filter(({ rule }) => ownRules.has(rule)).map(({ rule }) => rule);

const marginsOf = (judgement: Judgement, rule: string) =>
  judgement.assessments.filter((assessment) => assessment.rule === rule);

function valueIn(project: Project, quantity: QuantityName, condition?: string): Value {
  const found = valuesOf(project).filter(
    (value) => value.quantity === quantity && (condition === undefined || value.condition === condition),
  );
  expect(found.map((value) => value.quantity)).toEqual([quantity]);
  return found[0]!;
}

function pointedAt({ record, findings }: Judgement, rule: string): string[] {
  return findings
    .filter((finding) => finding.rule === rule)
    .map(({ anchor }) => {
      const span = "node" in anchor ? record.reading.spanOf(anchor.node) : anchor.span;
      return record.text.slice(span.start, span.end);
    });
}

const failed = (loads = "{}") =>
  `{ id: lost, phase: source-failed, failed: [ALT], altitude: 0 ft, ambient: 40 degC, loads: ${loads} }`;

describe("an alternator with over 100 A at idle (common practice, no source: made-up points)", () => {
  // 900 and 1000 rpm of the engine are 2880 and 3200 of the alternator: 104 A, and 104 + 6 x 320 / 640 = 107 A.
  const alternator =
    "bus: MAIN, rating: 130 A, drive-ratio: 3.2, output: [{ speed: 2880 rpm, current: 104 A }, " +
    "{ speed: 3520 rpm, current: 110 A }, { speed: 8000 rpm, current: 130 A }]";
  const taxi = (kitAmps: number, rpm: number) =>
    judge(
      sourceExample({
        alternator,
        draw: `current: ${kitAmps} A`,
        gauge: "2 AWG",
        existing: [existingLoad("avionics", 22, 8)],
        conditions: [runningIn("taxi", `duration: 15 min, engine-speed: ${rpm} rpm`)],
      }),
    );

  it.each([
    { rpm: 900, output: 104 },
    { rpm: 950, output: 105.5 },
    { rpm: 1000, output: 107 },
  ])("carries a kit of 80 A beside 22 A at $rpm rpm: it gives $output A", ({ rpm, output }) => {
    const judgement = taxi(80, rpm);
    expect(broken(judgement)).toEqual([]);
    expect(valueIn(judgement.project, "source-output").value).toBeCloseTo(output, 9);
    expect(valueIn(judgement.project, "source-demand").value).toBe(102);
    expect(marginsOf(judgement, "source-overloaded").map(({ holds }) => holds)).toEqual([true]);
  });

  it("does not carry a kit of 84 A: 106 A of 104 A at 900 rpm, and needs 947 rpm for it", () => {
    const judgement = taxi(84, 900);
    expect(broken(judgement).sort()).toEqual(["idle-speed-too-low", "source-overloaded"]);
    expect(valueIn(judgement.project, "battery-current").value).toBeCloseTo(2, 9);
    // (106 - 104) / (110 - 104) x (3520 - 2880) = 213.33 above 2880 rpm, over 3.2.
    expect(valueIn(judgement.project, "least-engine-speed").value).toBeCloseTo((2880 + 640 / 3) / 3.2, 6);
    expect(pointedAt(judgement, "source-overloaded")).toEqual(["taxi"]);
    expect(pointedAt(judgement, "idle-speed-too-low")).toEqual(["900 rpm"]);
  });

  it("carries that kit at 1000 rpm", () => {
    expect(broken(taxi(84, 1000))).toEqual([]);
  });
});

describe("1.14 eighty per cent: AC 43.13-1B (9/8/98, Change 1) par. 11-35a; the numbers are constructed", () => {
  const cruise = (existingAmps: number, more: Parameters<typeof sourceExample>[0] = {}) =>
    judge(sourceExample({ existing: [existingLoad("avionics", existingAmps, 8)], ...more }));

  it("47 A of a 60 A alternator is 78.3 %, and passes", () => {
    const judgement = cruise(29);
    expect(broken(judgement)).toEqual([]);
    const [share] = marginsOf(judgement, "source-above-share");
    expect([share!.value.value, share!.limit.value]).toEqual([47, 48]);
    expect(valueIn(judgement.project, "source-margin").value).toBeCloseTo(21.667, 3);
  });

  it("48 A is 80 %, and passes", () => {
    expect(broken(cruise(30))).toEqual([]);
  });

  it("50 A is 83.3 %, and fails", () => {
    const judgement = cruise(32);
    expect(broken(judgement)).toEqual(["source-above-share"]);
    expect(judgement.findings.find(({ rule }) => rule === "source-above-share")?.severity).toBe("error");
  });

  it("holds for loads that last: not in a condition of limited time, nor after the loss of a source", () => {
    expect(
      broken(cruise(32, { conditions: [runningIn("cruise", "duration: 5 min, engine-speed: 2000 rpm")] })),
    ).toEqual([]);
    const lost = runningIn("source-failed", "engine-speed: 2000 rpm");
    expect(marginsOf(cruise(32, { conditions: [lost] }), "source-above-share")).toEqual([]);
  });

  it("a monitored source may give all of its rating; above it the finding warns: that limit is from memory", () => {
    expect(broken(cruise(42, { monitored: true }))).toEqual([]);
    const over = cruise(43, { monitored: true });
    expect(over.findings.find(({ rule }) => rule === "source-above-share")?.severity).toBe("warning");
  });

  it.each([
    { what: "57 A with the light, 48 A without", light: 9, rest: 30, finds: 0 },
    { what: "57.1 A with the light", light: 9.1, rest: 30, finds: 1 },
    { what: "48.1 A without the light", light: 5, rest: 30.1, finds: 1 },
  ])(
    "take-off with pitot heat: $what (manuals 190-01007-A3 rev. 4 p. 3-40, 190-00734-17 rev. 1 p. 3-24)",
    ({ light, rest, finds }) => {
      const judgement = judge(
        sourceExample({
          existing: [
            existingLoad("pitot", 10, 0, ", use: pitot-heat"),
            existingLoad("light", light, 0, ", use: landing-light"),
            existingLoad("avionics", rest - 10, 8),
          ],
          conditions: [runningIn("take-off")],
        }),
      );
      expect(broken(judgement)).toEqual(Array.from({ length: finds }, () => "source-above-share"));
      expect(marginsOf(judgement, "source-above-share")).toHaveLength(2);
    },
  );

  it("without pitot heat the landing light has no share of its own", () => {
    const judgement = judge(
      sourceExample({
        existing: [existingLoad("light", 9, 0, ", use: landing-light"), existingLoad("avionics", 30, 8)],
        conditions: [runningIn("landing")],
      }),
    );
    expect(broken(judgement)).toEqual(["source-above-share"]);
  });
});

describe("3.2 endurance: manuals 190-01007-A3 rev. 4 fig. 3-19, 190-02246-10 rev. 11 p. 3-38; constructed numbers", () => {
  // 0.75 x 24 x 60 = 1080 A min; 5 x 30 = 150; 10 x 20 = 200; (1080 - 350) / 20 = 36.5; 51.5 in all.
  const battery = (keys: string) => `bus: MAIN, rating: 200 A, resistance: 20 mohm, ${keys}`;
  const lost = (keys: string, cruiseAmps: number, lostAmps: number) =>
    judge(
      sourceExample({
        battery: battery(keys),
        existing: [existingLoad("avionics", cruiseAmps - 18, lostAmps)],
        conditions: [runningIn("cruise"), failed()],
      }),
    );

  it("24 Ah last 51.5 min where the landing takes what emergency cruise does", () => {
    const judgement = lost("capacity: 24 Ah", 30, 20);
    expect(broken(judgement)).toEqual([]);
    expect(valueIn(judgement.project, "battery-usable-charge").value).toBe(18);
    expect(valueIn(judgement.project, "battery-reserved-charge").value).toBeCloseTo(350 / 60, 9);
    expect(valueIn(judgement.project, "battery-endurance").value).toBeCloseTo(51.5, 9);
    expect(valueIn(judgement.project, "endurance-needed").value).toBe(30);
  });

  it("24 Ah last 45.0 min with 30 A before, 20 A after, and 33 A for the landing: enough for 30 min, not for 60", () => {
    // 0.75 x 24 x 60 = 1080 A min; 5 x 30 = 150; 10 x 33 = 330; (1080 - 480) / 20 = 30.0; 45.0 in all.
    const constructed = (asked: string) =>
      judge(
        sourceExample({
          battery: battery(`capacity: 24 Ah, endurance: ${asked}`),
          draw: "current: 13 A",
          existing: [existingLoad("avionics", 17, 20)],
          conditions: [
            runningIn("cruise"),
            failed(),
            failed("{ RACK: survey }").replace("id: lost", "id: approach, duration: 10 min"),
          ],
        }),
      );
    const enough = constructed("30 min");
    expect(valueIn(enough.project, "battery-endurance").value).toBeCloseTo(45, 9);
    expect(valueIn(enough.project, "battery-reserved-charge").value).toBeCloseTo(8, 9);
    expect(broken(enough)).toEqual([]);
    const short = constructed("60 min");
    expect(broken(short)).toEqual(["battery-endurance-short"]);
    expect(short.findings.find(({ rule }) => rule === "battery-endurance-short")?.what).toBe(
      "BATT lasts 45 min in lost, short of the 60 min needed.",
    );
    expect(pointedAt(short, "battery-endurance-short")).toEqual(["lost"]);
  });

  it("a peak in cruise counts for as long as it lasts, once, and for all five minutes from five minutes on", () => {
    // 5 x 30 + 20 / 60 x (90 - 30) = 170; (1080 - 170 - 200) / 20 = 35.5; 50.5 in all. At 5 x 90 = 450 36.5.
    const withPeak = (duration: string) =>
      judge(
        sourceExample({
          battery: battery("capacity: 24 Ah"),
          draw: "current: 18 A }, { mode: peak, current: 78 A",
          existing: [existingLoad("avionics", 12, 20)],
          conditions: [
            runningIn("cruise"),
            runningIn("cruise", `duration: ${duration}, engine-speed: 2000 rpm`)
              .replace("id: cruise", "id: burst")
              .replace("RACK: survey", "RACK: peak"),
            failed(),
          ],
        }),
      ).project;
    expect(valueIn(withPeak("20 s"), "battery-reserved-charge").value).toBeCloseTo(370 / 60, 9);
    expect(valueIn(withPeak("20 s"), "battery-endurance").value).toBeCloseTo(50.5, 9);
    expect(valueIn(withPeak("5 min"), "battery-endurance").value).toBeCloseTo(36.5, 9);
  });

  it("30 min that the record does not ask for are from memory, and only warn", () => {
    const severity = (judgement: Judgement) =>
      judgement.findings.find(({ rule }) => rule === "battery-endurance-short")?.severity;
    expect(severity(lost("capacity: 15 Ah", 24, 24))).toBe("warning");
    expect(severity(lost("capacity: 15 Ah, endurance: 30 min", 24, 24))).toBe("error");
  });

  // 14 CFR 23.1353(h), Amdt 23-62: 30 min up to a maximum altitude of 25,000 ft, 60 min above (times from memory).
  it("of a record that asks for no time, a condition above 25,000 ft asks for 60 min", () => {
    const at = (altitude: string, keys = "") =>
      judge(
        sourceExample({
          battery: battery(`capacity: 24 Ah${keys}`),
          existing: [existingLoad("avionics", 12, 20)],
          conditions: [runningIn("cruise").replace("altitude: 0 ft", `altitude: ${altitude}`), failed()],
        }),
      );
    expect(valueIn(at("25000 ft").project, "endurance-needed").value).toBe(30);
    const high = at("25001 ft");
    expect(valueIn(high.project, "endurance-needed").value).toBe(60);
    const [finding] = high.findings.filter(({ rule }) => rule === "battery-endurance-short");
    expect(finding).toMatchObject({ severity: "warning", what: expect.stringContaining("60 min needed") });
    expect(valueIn(at("7700 m").project, "endurance-needed").value).toBe(60);
    expect(valueIn(at("25001 ft", ", endurance: 45 min").project, "endurance-needed").value).toBe(45);
  });

  it("a spent battery is said to be spent, and has no time", () => {
    // 0.75 x 5 Ah = 3.75 Ah; (5 x 30 + 10 x 20) / 60 = 5.83 Ah.
    const judgement = lost("capacity: 5 Ah", 30, 20);
    const [finding] = judgement.findings.filter(({ rule }) => rule === "battery-endurance-short");
    expect(finding?.what).toMatch(
      /^BATT is spent before cruise in lost: .* take 5\.83\d* Ah of 3\.75 Ah usable\.$/,
    );
    expect(finding?.severity).toBe("error");
    expect(valuesOf(judgement.project).some(({ quantity }) => quantity === "battery-endurance")).toBe(false);
  });

  it("a capacity is asked for only where a source is lost", () => {
    const keys = battery("endurance: 30 min");
    const asked = judge(sourceExample({ battery: keys, conditions: [runningIn("cruise"), failed()] }));
    expect(asked.findings.find(({ rule }) => rule === "battery-capacity-missing")?.severity).toBe(
      "information",
    );
    expect(broken(asked)).toEqual(["battery-capacity-missing"]);
    expect(broken(judge(sourceExample({ battery: keys })))).toEqual(["source-loss-not-covered"]);
  });

  it("shows what each load that is shed leaves, in the order of shedding", () => {
    const { project } = judge(
      sourceExample({
        existing: [
          existingLoad("galley", 7, 0, ", shed: 2"),
          existingLoad("cabin", 5, 0, ", shed: 1"),
          existingLoad("avionics", 10, 8),
        ],
        conditions: [runningIn("cruise"), failed()],
      }),
    );
    const steps = electricalOf(project).sources.shedding.map(({ load, demand }) => [
      load.id?.value,
      demand.value,
    ]);
    // 18 + 7 + 5 + 10 = 40 A before.
    expect(steps).toEqual([
      ["cabin", 35],
      ["galley", 28],
    ]);
  });
});

describe("an output that the record does not tell", () => {
  const unknown = (demandAmps: number) =>
    judge(
      sourceExample({
        alternator: "bus: MAIN, rating: 60 A",
        existing: [existingLoad("avionics", demandAmps - 18, 8)],
        conditions: [runningIn("taxi", "duration: 10 min"), runningIn("cruise", "duration: 1 h")],
      }),
    );

  it("asks for the maker's data once for all conditions, and shows no capacity as if it were known", () => {
    const judgement = unknown(40);
    expect(broken(judgement)).toEqual(["source-output-unknown"]);
    expect(marginsOf(judgement, "source-overloaded")).toEqual([]);
    const { columns } = electricalOf(judgement.project).sources.analysis;
    expect(columns.map(({ capacity, margin }) => [capacity, margin])).toEqual([
      [undefined, undefined],
      [undefined, undefined],
    ]);
  });

  it("is still a shortage where even the rated output is not enough", () => {
    expect(broken(unknown(61)).sort()).toEqual([
      "source-output-unknown",
      "source-overloaded",
      "source-overloaded",
    ]);
  });

  it("below the points is unknown, and not called too slow", () => {
    const judgement = judge(
      sourceExample({
        draw: "current: 1 A",
        existing: [],
        conditions: [runningIn("taxi", "engine-speed: 600 rpm")],
      }),
    );
    expect(broken(judgement)).toEqual(["source-output-unknown"]);
    expect(pointedAt(judgement, "source-output-unknown")).toEqual(["600 rpm"]);
  });

  it("in an airframe record of its own is found at the link to it, with the alternator beside it", () => {
    const text = sourceExample({ alternator: "bus: MAIN, rating: 60 A" });
    const [head, airframe, tail] = text.split(/^airframe:\n|^(?=kit:)/m);
    const judgement = judge(`${head}airframe: a.airframe.yaml\n${tail}`, {
      "a.airframe.yaml": airframe!.replace(/^ {2}/gm, ""),
    });
    expect(pointedAt(judgement, "source-output-unknown")).toEqual(["a.airframe.yaml"]);
    const [finding] = judgement.findings.filter(({ rule }) => rule === "source-output-unknown");
    expect(finding?.related.map(({ place }) => place.file)).toEqual(["a.airframe.yaml"]);
  });
});

describe("a load whose mode is still to be filled in", () => {
  const blank = (condition: string) => condition.replace("RACK: survey", "RACK: ");

  it.each([
    ["blank", blank],
    ["unknown to the kit", (condition: string) => condition.replace("RACK: survey", "RACK: idle")],
  ])("leaves the demand open instead of counting it as none: %s", (_, change) => {
    const { project } = judge(
      sourceExample({ conditions: [runningIn("taxi"), change(runningIn("cruise"))] }),
    );
    const demands = valuesOf(project).filter(({ quantity }) => quantity === "source-demand");
    expect(demands.map(({ condition, value }) => [condition, value])).toEqual([["taxi", 38]]);
    const [, cruise] = electricalOf(project).sources.balances;
    expect(cruise).toMatchObject({ demand: undefined, margin: undefined, batteryCurrent: undefined });
  });

  it("has no hint of what the sources are asked for", () => {
    const hints = hintsOf(
      judge(sourceExample({ conditions: [runningIn("taxi"), blank(runningIn("cruise"))] })),
    );
    expect(hints.filter(({ text }) => text.includes("from the sources")).map(({ text }) => text)).toEqual([
      "38 A of 60 A from the sources",
    ]);
  });
});

describe("the least engine speed (alternator speed = engine speed x ratio, derived; made-up points)", () => {
  const taxi = (existingAmps: number, alternator = exampleAlternator) =>
    judge(
      sourceExample({
        alternator,
        existing: [existingLoad("avionics", existingAmps, 8)],
        conditions: [runningIn("taxi", "duration: 10 min, engine-speed: 1000 rpm")],
      }),
    );

  it("is offered as a change that was tried, rounded up to what is set", () => {
    // 42 A: 3000 + (2 / 20) x 3000 = 3300 rpm of the alternator, 1100 of the engine.
    const judgement = taxi(24);
    const [finding] = judgement.findings.filter(({ rule }) => rule === "idle-speed-too-low");
    const [remedy] = [
      ...ruleById.get("idle-speed-too-low")!.remedies!(finding!.assessment!, judgement.project),
    ];
    expect(remedy).toMatchObject({ title: "Run taxi at 1100 rpm", changes: [{ text: "1100 rpm" }] });
    const mended = judge(judgement.record.text.replace("1000 rpm", "1100 rpm"));
    expect(broken(mended)).toEqual([]);
  });

  it("is never reached above the rating, though the points go beyond it", () => {
    const judgement = taxi(37, exampleAlternator.replace("rating: 60 A", "rating: 50 A"));
    expect(broken(judgement).sort()).toEqual(["idle-speed-too-low", "source-overloaded"]);
    expect(valuesOf(judgement.project).some(({ quantity }) => quantity === "least-engine-speed")).toBe(false);
  });
});

describe("main power wires: AC 43.13-1B (9/8/98, Change 1) par. 11-66, 2 % at rated current", () => {
  const feeder = (from: string, ohms: string) =>
    judge(
      sourceExample({
        alternator: exampleAlternator.replace("bus: MAIN", "bus: AUX"),
        moreSources: ["{ id: ALT2, kind: alternator, voltage: 14 V, rating: 50 A, drive-ratio: 3 }"],
        feeders: [
          `{ id: F1, from: ${from}, to: MAIN, resistance: ${ohms} }`,
          "{ id: TIE, from: AUX, to: MAIN, resistance: 1 ohm }",
        ],
        conditions: [],
      }),
    );

  it.each([
    // 2 % of 28 V is 0.56 V, of 14 V 0.28 V, of the battery's 25 V 0.5 V.
    { from: "ALT", ohms: "9.33 mohm", limit: 0.56, holds: true },
    { from: "ALT", ohms: "9.34 mohm", limit: 0.56, holds: false },
    { from: "ALT2", ohms: "5.6 mohm", limit: 0.28, holds: true },
    { from: "ALT2", ohms: "5.7 mohm", limit: 0.28, holds: false },
    { from: "BATT", ohms: "2.5 mohm", limit: 0.5, holds: true },
    { from: "BATT", ohms: "2.6 mohm", limit: 0.5, holds: false },
  ])("$ohms from $from: $holds", ({ from, ohms, limit, holds }) => {
    const judgement = feeder(from, ohms);
    const margins = marginsOf(judgement, "feeder-voltage-drop");
    expect(margins.map((one) => [one.subject.id, one.holds])).toEqual([["F1", holds]]);
    expect(margins[0]!.limit.value).toBeCloseTo(limit, 12);
    expect(pointedAt(judgement, "feeder-voltage-drop")).toEqual(holds ? [] : [ohms]);
  });
});

describe("inrush, recharge and cycling loads (derived; constructed numbers)", () => {
  it("counts an inrush beside the rest of the demand, without the component's own mean current", () => {
    const judgement = judge(
      sourceExample({ draw: "current: 18 A, duty: 50 %, inrush: 241 A, inrush-time: 40 ms" }),
    );
    expect(valueIn(judgement.project, "mean-current").value).toBe(9);
    expect(valueIn(judgement.project, "source-demand").value).toBe(29);
    expect(valueIn(judgement.project, "inrush-demand").value).toBe(261);
    expect(valueIn(judgement.project, "inrush-capacity").value).toBe(260);
    expect(broken(judgement)).toEqual(["inrush-above-source"]);
    expect(pointedAt(judgement, "inrush-above-source")).toEqual(["RACK"]);
  });

  it("an inrush just within all ratings passes", () => {
    const judgement = judge(sourceExample({ draw: "current: 18 A, inrush: 240 A, inrush-time: 40 ms" }));
    expect(broken(judgement)).toEqual([]);
    expect(marginsOf(judgement, "inrush-above-source")).toHaveLength(1);
  });

  it("cruise puts back what taxi took: 7 A for 10 min, at 22 A to spare", () => {
    const { project } = judge(
      sourceExample({
        conditions: [runningIn("taxi", "duration: 10 min, engine-speed: 900 rpm"), runningIn("cruise")],
      }),
    );
    expect(valueIn(project, "battery-charge-taken").value).toBeCloseTo(7 / 6, 9);
    expect(valueIn(project, "spare-current").value).toBe(22);
    expect(valueIn(project, "recharge-time").value).toBeCloseTo(7 / 6 / 22, 9);
  });

  it("an engine start takes all from the battery", () => {
    const { project } = judge(
      sourceExample({ conditions: [runningIn("start", "duration: 30 s"), runningIn("cruise")] }),
    );
    expect(valueIn(project, "battery-current").value).toBe(38);
    expect(valueIn(project, "battery-charge-taken").value).toBeCloseTo((38 * 0.5) / 60, 9);
  });

  it("nothing is put back where cruise leaves nothing to spare", () => {
    const { project } = judge(
      sourceExample({
        existing: [existingLoad("avionics", 42, 8)],
        conditions: [runningIn("start", "duration: 30 s"), runningIn("cruise")],
      }),
    );
    expect(valuesOf(project).some(({ quantity }) => quantity === "recharge-time")).toBe(false);
  });
});

describe("the voltage at a component (Kirchhoff's laws, derived; constructed numbers)", () => {
  it("is that of the condition in which it gets least, at its entry there", () => {
    const judgement = judge(
      sourceExample({
        component: "least-voltage: 24.6 V",
        conditions: [runningIn("cruise"), failed("{ RACK: survey }")],
      }),
    );
    // The battery holds 25 V behind 20 mohm for 26 A: 24.48 V at the bus, and less at the rack.
    const [voltage] = marginsOf(judgement, "load-voltage-low");
    expect(voltage!.value.condition).toBe("lost");
    expect(voltage!.value.value).toBeLessThan(24.48);
    expect(voltage!.value.value).toBeGreaterThan(24);
    expect(pointedAt(judgement, "load-voltage-low")).toEqual(["RACK"]);
  });
});

describe("a network without a solution", () => {
  it("leaves out a demand that is not known, and says so once", () => {
    const judgement = judge(sourceExample({ draw: "power: 3000 W", gauge: "20 AWG", length: "40 ft" }));
    expect(broken(judgement)).toEqual(["network-unsolved"]);
    expect(pointedAt(judgement, "network-unsolved")).toEqual(["cruise"]);
    expect(valuesOf(judgement.project).some(({ quantity }) => quantity === "source-demand")).toBe(false);
  });

  it.each([
    { reason: "did-not-converge", names: [], says: "No working point of the network was found in climb." },
    {
      reason: "unlimited-current",
      names: ["GPU"],
      says: "Nothing limits the current of GPU in climb: a short circuit, or two voltages on one bus.",
    },
    {
      reason: "invalid-input",
      names: [],
      says: "The network can't be computed in climb: a figure of a wire, feeder or contact is impossible.",
    },
  ])("says in words: $reason", ({ reason, names, says }) => {
    expect(ruleById.get("network-unsolved")!.say({ condition: "climb", reason, names }).what).toBe(says);
  });

  it("tells dead loads once for all conditions, and not what is said to lack its wires", () => {
    const alternator = exampleAlternator.replace("bus: MAIN", "bus: AUX");
    const battery = "bus: AUX, rating: 200 A";
    const conditions = [runningIn("taxi", "engine-speed: 1500 rpm"), runningIn("cruise")];
    const text = sourceExample({ alternator, battery, conditions });
    expect(broken(judge(text))).toEqual(["network-island"]);
    const what = (judgement: Judgement) =>
      judgement.findings.find(({ rule }) => rule === "network-island")?.what;
    expect(what(judge(text))).toBe("No source reaches RACK and avionics in taxi and 1 more.");
    const unwired = judge(text.replace("to: RACK", "to: TB1").concat("junctions: [{ id: TB1 }]\n"));
    expect(unwired.findings.map(({ rule }) => rule)).toContain("load-not-connected");
    expect(what(unwired)).toBe("No source reaches avionics in taxi and 1 more.");
  });
});

describe(`the load analysis: conditions of ${loadAnalysisSource.document}, ${loadAnalysisSource.edition}, ${loadAnalysisSource.at}`, () => {
  it("has conditions across and loads down, with the values of the graph themselves", () => {
    const { project } = judge(
      sourceExample({
        existing: [existingLoad("avionics", 20, 8)],
        conditions: [runningIn("cruise"), failed()],
      }),
    );
    const { columns, rows } = electricalOf(project).sources.analysis;
    expect(
      columns.map(({ standard, demand, capacity, margin }) => [
        standard,
        demand?.value,
        capacity?.value,
        margin?.value.toFixed(2),
      ]),
    ).toEqual([
      ["G7 cruise", 38, 60, "36.67"],
      ["G10 emergency", 8, undefined, undefined],
    ]);
    expect(rows.map(({ id, buses, currents }) => [id, buses, currents.map((one) => one?.value)])).toEqual([
      ["avionics", ["MAIN"], [20, 8]],
      ["RACK", ["MAIN"], [18, undefined]],
    ]);
    const known = new Set(valuesOf(project));
    const shown = [
      ...columns.flatMap(({ demand, capacity, margin }) => [demand, capacity, margin]),
      ...rows.flatMap(({ currents }) => currents),
    ];
    expect(shown.filter((value) => value && !known.has(value))).toEqual([]);
  });

  it("is empty where the airframe records no sources", () => {
    const text = sourceExample().replace(/^ {4}sources:\n(?: {6}- .*\n)+/m, "");
    const judgement = judge(text);
    expect(electricalOf(judgement.project).sources.analysis).toEqual({ columns: [], rows: [] });
    expect(broken(judgement)).toEqual(["sources-not-recorded"]);
  });
});

it("a bus takes its voltage from the sources that run, and from no other", () => {
  const { project } = judge(
    sourceExample({
      moreSources: ["{ id: GPU, kind: ground-power, voltage: 28 V, bus: MAIN }"],
      conditions: [runningIn("cruise"), runningIn("ground-power"), failed()],
    }),
  );
  const sourcesOf = (condition: string) =>
    valuesOf(project)
      .find((value) => value.quantity === "bus-voltage" && value.condition === condition)
      ?.inputs.filter(({ unit }) => unit === "V")
      .map(({ symbol }) => symbol);
  expect(["cruise", "ground-power", "lost"].map(sourcesOf)).toEqual([
    ["ALT", "BATT"],
    ["BATT", "GPU"],
    ["BATT"],
  ]);
});
