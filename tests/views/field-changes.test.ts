/** What counts as a change of a record, and what does not. */
import { describe, expect, it } from "vitest";
import { loadRecord } from "../../server/src/core/records/record";
import { fieldChanges } from "../../server/src/core/views/field-changes";
import { demo, demoRecords, replaceOnce } from "../support/workspace";

const records = demoRecords();
const clean = records[demo.clean]!;

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
    { what: "more digits", text: replaceOnce(clean, "arm: 142.0 in", "arm: 142 in") },
    { what: "quotes", text: replaceOnce(clean, "revision: B", 'revision: "B"') },
    {
      what: "another order of keys",
      text: replaceOnce(clean, "gauge: 8 AWG\n    length: 14.5 ft", "length: 14.5 ft\n    gauge: 8 AWG"),
    },
    {
      what: "another order of entries with ids",
      text: replaceOnce(
        clean,
        "  - { component: RACK, arm: 121.0 in }\n  - { component: CHILLER, arm: 142.0 in }\n",
        "  - { component: CHILLER, arm: 142.0 in }\n  - { component: RACK, arm: 121.0 in }\n",
      ),
    },
    {
      what: "a block moved to another place",
      text: `${clean.slice(0, clean.indexOf("spares:"))}${clean.slice(clean.indexOf("cutouts:"))}${clean.slice(
        clean.indexOf("spares:"),
        clean.indexOf("cutouts:"),
      )}`,
    },
    { what: "comments and blank lines", text: `# new\n\n${clean.replaceAll("\n\n", "\n\n\n")}` },
  ])("$what", ({ text }) => {
    expect(changesOf(clean, text)).toEqual([]);
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
      text: replaceOnce(clean, "{ id: harness, part", "{ id: loom, part"),
      changes: [
        "added[loom]: null -> { id: loom, part: HM-0412-20 harness, weight: 9.8 lb, arm: 96.0 in }",
        "added[harness]: { id: harness, part: HM-0412-20 harness, weight: 9.8 lb, arm: 96.0 in } -> null",
      ],
    },
    {
      what: "an entry moved and changed at once",
      text: replaceOnce(
        clean,
        "  - { component: RACK, arm: 121.0 in }\n  - { component: CHILLER, arm: 142.0 in }\n",
        "  - { component: CHILLER, arm: 143 in }\n  - { component: RACK, arm: 121.0 in }\n",
      ),
      changes: ["placement[CHILLER].arm: 142.0 in -> 143 in"],
    },
  ])("$what", ({ text, changes }) => {
    expect(changesOf(clean, text)).toEqual(changes);
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
