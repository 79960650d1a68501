/** What counts as a change of a record, and what does not. */
import { describe, expect, it } from "vitest";
import { loadRecord } from "../../server/src/core/records/record";
import { fieldChanges } from "../../server/src/core/views/field-changes";
import { demo, demoRecords, replaceOnce } from "../support/workspace";

const records = demoRecords();
const clean = records[demo.clean]!;

/** Two components, the second one's arm as given. */
const placed = (arm: string, isSwapped = false) => {
  const entries = ["  - { component: RACK, arm: 121.0 in }\n", `  - { component: CHILLER, arm: ${arm} }\n`];
  return `placement:\n${(isSwapped ? entries.toReversed() : entries).join("")}`;
};

function changesOf(before: string, after: string, kind: "install" | "airframe" | "kit" = "install") {
  const load = (text: string) => loadRecord(`a.${kind}.yaml`, kind, text);
  return fieldChanges(load(before), load(after)).map(
    ({ field, before: old, after: now }) => `${field}: ${old} -> ${now}`,
  );
}

describe("no change", () => {
  it.each([
    { what: "the same text", text: clean },
    { what: "another unit", text: replaceOnce(clean, "length: 14.5 ft", "length: 174 in") },
    { what: "a metric unit", text: clean.replaceAll("arm: 121.0 in", "arm: 3.0734 m") },
    { what: "more digits", text: placed("142 in"), from: placed("142.0 in") },
    { what: "quotes", text: replaceOnce(clean, "revision: B", 'revision: "B"') },
    {
      what: "another order of keys",
      text: replaceOnce(clean, "gauge: 8 AWG\n    length: 14.5 ft", "length: 14.5 ft\n    gauge: 8 AWG"),
    },
    {
      what: "another order of entries with ids",
      from: placed("142.0 in"),
      text: placed("142.0 in", true),
    },
    {
      what: "a block moved to another place",
      text: `${clean.slice(0, clean.indexOf("spares:"))}${clean.slice(clean.indexOf("cutouts:"))}${clean.slice(
        clean.indexOf("spares:"),
        clean.indexOf("cutouts:"),
      )}`,
    },
    { what: "comments and blank lines", text: `# new\n\n${clean.replaceAll("\n\n", "\n\n\n")}` },
  ])("$what", ({ from = clean, text }) => {
    expect(changesOf(from, text)).toEqual([]);
  });

  it("points without names in another order, where order has no meaning", () => {
    const airframe = records[demo.airframe]!;
    const [first, second] = [
      "      - { speed: 1500 rpm, current: 18 A }\n",
      "      - { speed: 2400 rpm, current: 62 A }\n",
    ];
    expect(
      changesOf(
        airframe,
        replaceOnce(airframe, indented(first + second), indented(second + first)),
        "airframe",
      ),
    ).toEqual([]);
  });
});

/** The points of an output stand two columns further in. */
function indented(text: string): string {
  return text.replace(/^/gm, "  ").trimEnd().concat("\n");
}

describe("a change", () => {
  it.each([
    {
      what: "another value",
      text: replaceOnce(clean, "gauge: 8 AWG\n    length: 14.5 ft", "gauge: 12 AWG\n    length: 14.5 ft"),
      changes: ["wires[P102A8].gauge: 8 AWG -> 12 AWG"],
    },
    {
      what: "the same number in another unit",
      text: replaceOnce(clean, "length: 14.5 ft", "length: 14.5 m"),
      changes: ["wires[P102A8].length: 14.5 ft -> 14.5 m"],
    },
    {
      what: "a key that is gone",
      text: replaceOnce(clean, "    outside-diameter: 0.15 in\n", ""),
      changes: ["wires[P101A10].outside-diameter: 0.15 in -> null"],
    },
    {
      what: "an entry that comes, and nothing else of it",
      text: replaceOnce(clean, "removed:\n", "removed:\n  - { equipment: bench-2 }\n"),
      changes: ["removed[bench-2]: null -> { equipment: bench-2 }"],
    },
    {
      what: "an entry that is renamed, as one that went and one that came",
      from: "added: [{ id: harness, weight: 9.8 lb, arm: 96.0 in }]\n",
      text: "added: [{ id: loom, weight: 9.8 lb, arm: 96.0 in }]\n",
      changes: [
        "added[loom]: null -> { id: loom, weight: 9.8 lb, arm: 96.0 in }",
        "added[harness]: { id: harness, weight: 9.8 lb, arm: 96.0 in } -> null",
      ],
    },
    {
      what: "an entry moved and changed at once",
      from: placed("142.0 in"),
      text: placed("143 in", true),
      changes: ["placement[CHILLER].arm: 142.0 in -> 143 in"],
    },
  ])("$what", ({ from = clean, text, changes }) => {
    expect(changesOf(from, text)).toEqual(changes);
  });

  it("corners of a polygon in another order", () => {
    const airframe = records[demo.airframe]!;
    const swapped = airframe
      .replace("{ x: 18 in, y: 9 in }", "{ x: 0.1 in, y: 0.1 in }")
      .replace("{ x: 12 in, y: 14 in }", "{ x: 18 in, y: 9 in }")
      .replace("{ x: 0.1 in, y: 0.1 in }", "{ x: 12 in, y: 14 in }");
    expect(changesOf(airframe, swapped, "airframe")).toEqual([
      "panels[BAY-DOOR].outline.points[#3].x: 18 in -> 12 in",
      "panels[BAY-DOOR].outline.points[#3].y: 9 in -> 14 in",
      "panels[BAY-DOOR].outline.points[#4].x: 12 in -> 18 in",
      "panels[BAY-DOOR].outline.points[#4].y: 14 in -> 9 in",
    ]);
  });

  it.each([
    {
      what: "points that a drain runs through",
      before:
        "drains: [{ id: D1, points: [{ at: 0 in, water-line: 9 in }, { at: 20 in, water-line: 5 in }] }]\n",
      list: "drains[D1].points",
    },
    {
      what: "points that room is kept along",
      before: "keep-outs:\n  - { id: K1, along: [{ arm: 9 in }, { arm: 20 in }] }\n",
      list: "keep-outs[K1].along",
      kind: "airframe" as const,
    },
    {
      what: "points of a limit",
      before:
        "envelopes: [{ id: normal, aft: [{ weight: 9 lb, arm: 4 in }, { weight: 20 lb, arm: 4 in }] }]\n",
      list: "envelopes[normal].aft",
      kind: "airframe" as const,
    },
    {
      what: "stations in the order in which they run empty",
      before: "burn-order: [9, 20]\n",
      list: "burn-order",
      kind: "airframe" as const,
    },
    {
      what: "points of a fan's curve",
      before:
        "fans: [{ id: F1, curve: [{ flow: 9 cfm, pressure: 4 Pa }, { flow: 20 cfm, pressure: 4 Pa }] }]\n",
      list: "fans[F1].curve",
      kind: "kit" as const,
    },
  ])("$what in another order", ({ before, list, kind }) => {
    const after = before
      .replace(/\b9\b/, "#")
      .replace(/\b20\b/, "9")
      .replace("#", "20");
    const places = changesOf(before, after, kind).map((change) => change.slice(0, list.length + 4));
    expect(new Set(places)).toEqual(new Set([`${list}[#1]`, `${list}[#2]`]));
  });

  it("one point of a curve, the others left", () => {
    const airframe = records[demo.airframe]!;
    const text = replaceOnce(
      airframe,
      "{ speed: 2400 rpm, current: 62 A }",
      "{ speed: 2400 rpm, current: 60 A }",
    );
    expect(changesOf(airframe, text, "airframe")).toEqual([
      "electrical.sources[ALT1].output[#2].current: 62 A -> 60 A",
    ]);
  });
});
