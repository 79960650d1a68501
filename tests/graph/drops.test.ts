/** What a load loses on its way, shown as the values that it is made of. */
import { describe, expect, it } from "vitest";
import { electricalOf } from "../../server/src/core/graph/derivations";
import type { Value } from "../../server/src/core/graph/value";
import { protectionExample, twoFeeds } from "../../server/src/core/rules/protection/protection-example";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { runExample } from "../../server/src/core/run-example";

function valuesIn(text: string): (id: string, quantity: string) => Value | undefined {
  const { project } = runExample({ title: "", text, finds: [] });
  const { values } = electricalOf(project!);
  return (id, quantity) => values.find((one) => one.subject.id === id && one.quantity === quantity);
}

describe("voltage dropped on the way to a load", () => {
  const devices = ["{ id: CB-20, kind: breaker, rating: 20 A, resistance: 5 mohm }"];

  it("has a value of its own for each device: 15 A through 5 mohm", () => {
    const found = valuesIn(protectionExample({ devices }));
    const drop = found("CB-RACK", "device-drop")!;
    expect(drop.value).toBeCloseTo(0.075, 12);
    expect(drop.inputs.map(({ derivedFrom }) => derivedFrom?.quantity)).toEqual([
      "device-current",
      undefined,
    ]);
    const ofPath = found("RACK", "path-drop")!;
    expect(ofPath.inputs.flatMap(({ derivedFrom }) => derivedFrom ?? [])).toContain(drop);
    const ofWires = ["P1", "P2N"].map((id) => found(id, "wire-drop")!.value);
    expect(ofPath.value).toBeCloseTo(0.075 + ofWires[0]! + ofWires[1]!, 9);
  });

  it("rests on the voltages of its buses where the current has several ways", () => {
    const parts = {
      ...twoFeeds,
      devices,
      protection: [
        "{ id: CB-A, device: CB-20, mounted-on: MAIN }",
        "{ id: CB-B, device: CB-20, mounted-on: SIDE }",
      ],
      wires: [
        ...twoFeeds.wires,
        "{ id: P3, from: TB-1, to: RACK, gauge: 10 AWG, length: 8 ft, rating: 150 degC }",
      ],
    };
    const found = valuesIn(
      protectionExample(parts).replace("buses: [{ id: MAIN }]", "buses: [{ id: MAIN }, { id: SIDE }]"),
    );
    const drop = found("RACK", "path-drop")!;
    expect(drop.formula).toBe("max(V_1, V_2) - V_load");
    expect(drop.inputs.map(({ derivedFrom }) => derivedFrom)).toEqual([
      found("MAIN", "bus-voltage"),
      found("SIDE", "bus-voltage"),
      found("RACK", "load-voltage"),
    ]);
    expect(drop.value).toBeCloseTo(28 - found("RACK", "load-voltage")!.value, 9);
  });
});

describe("a load of which nothing is known in a condition", () => {
  const text = (loads: string) =>
    protectionExample({
      components: [
        "{ id: RACK, weight: 31.2 lb, draws: [{ mode: run, current: 15 A }] }",
        "{ id: FANS, weight: 5.2 lb, draws: [{ mode: run, current: 3 A }] }",
      ],
      loads,
      wires: [
        "{ id: P1, from: CB-RACK, to: RACK, gauge: 10 AWG, length: 10 ft, rating: 150 degC }",
        "{ id: P2, from: CB-RACK, to: FANS, gauge: 14 AWG, length: 10 ft, rating: 150 degC }",
      ],
    });
  const notesOf = (loads: string) => {
    const found = valuesIn(text(loads));
    return [found("RACK", "load-voltage"), found("MAIN", "bus-voltage")].map((value) => value?.notes);
  };
  const note = "It is not known what FANS draws in this condition: as if that were nothing.";

  it.each([
    ["a blank mode", "{ RACK: run, FANS: }"],
    ["a mode that the kit does not give", "{ RACK: run, FANS: walk }"],
  ])("is named beside the voltages that leave it out: %s", (_, loads) => {
    expect(notesOf(loads)).toEqual([[note], [note]]);
  });

  it("is not, once it is known, or where it does not run", () => {
    expect(notesOf("{ RACK: run, FANS: run }")).toEqual([[], []]);
    expect(notesOf("{ RACK: run }")).toEqual([[], []]);
  });
});

describe("the drop that is allowed (AC 43.13-1B Table 11-6; that 2 min are intermittent: secondary and memory)", () => {
  it.each([
    ["28 V", undefined, 1],
    ["28 V", "121 s", 1],
    ["28 V", "2 min", 2],
    ["28 V", "5 s", 2],
    ["14 V", "5 min", 0.5],
    ["14 V", "120 s", 1],
  ])("%s for %s: %d V", (nominal, duration, volts) => {
    const found = valuesIn(circuitExample({ nominal, ...(duration && { duration }) }));
    expect(found("RACK", "drop-limit")?.value).toBe(volts);
  });
});

// AC 43.13-1B p. 11-26, example No. 1: 28 V, 50 ft with the ground wire, 20 A continuous: not No. 10, but No. 8.
describe("the circular's own run, as a record: 48 ft out and 2 ft back", () => {
  const at = (gauge: string) => {
    const parts = { gauge, length: "48 ft", current: "20 A", ambient: "20 degC" };
    return runExample({ title: "", text: circuitExample(parts), finds: [] });
  };

  it.each([
    ["10 AWG", 1.26, false],
    ["8 AWG", 0.7, true],
  ])("%s: %d V at 20 degC, within its limit: %s", (gauge, volts, isWithin) => {
    const { assessments } = at(gauge);
    const [drop] = assessments.filter(({ rule }) => rule === "wire-voltage-drop");
    expect(drop).toMatchObject({ holds: isWithin, limit: { value: 1 } });
    // The conductor is warmer than 20 degC: the drop is the printed one and up to a half more.
    expect(drop!.value.value).toBeGreaterThan(volts);
    expect(drop!.value.value).toBeLessThan(1.5 * volts);
  });
});
