/** What is found in a record's shape: one fault gives one finding, about the thing that it is in. */
import { describe, expect, it } from "vitest";
import { judgeAlone, linkProject, type RecordSource } from "../../server/src/core/project";
import { loadRecord } from "../../server/src/core/records/record";
import { recordExample, wireExample } from "../../server/src/core/rules/example-record";

const alone: RecordSource = { resolve: () => undefined, load: () => undefined };

function problemsOf(text: string) {
  const record = loadRecord("example.install.yaml", "install", text);
  const { typed } = record.typing;
  const linked = typed.kind === "install" ? linkProject(record, typed.record, alone).problems : [];
  return [...record.problems, ...linked];
}

/** Rule, thing and place of each problem, in words. */
function found(text: string): string[] {
  return problemsOf(text).map(({ rule, subject, facts }) =>
    [
      rule,
      subject && `${subject.kind} ${subject.id}`,
      ...((facts.path as readonly string[]) ?? []),
      facts.key,
    ]
      .filter(Boolean)
      .join(" "),
  );
}

describe("one fault gives one finding", () => {
  it.each([
    { fault: "nothing", text: wireExample(), finds: [] },
    {
      fault: "a key misspelt",
      text: wireExample({ gauge: undefined, guage: "8 AWG" }),
      finds: ["key-unknown wire P101A8 guage"],
    },
    {
      fault: "a word of a list not written",
      text: recordExample({ document: "document: { number: HM-0412, revision: A, status: }" }),
      finds: ["value-missing document status"],
    },
    {
      fault: "a list in place of a word",
      text: recordExample({ document: "document: { number: HM-0412, revision: A, status: [draft] }" }),
      finds: ["value-wrong-kind document status"],
    },
    {
      fault: "a quantity without a unit",
      text: wireExample({ length: "14.5" }),
      finds: ["quantity-unit-missing wire P101A8 length"],
    },
    {
      fault: "a quantity not written",
      text: wireExample({ length: "" }),
      finds: ["value-missing wire P101A8 length"],
    },
    {
      fault: "a reference that is no id",
      text: wireExample({ to: "the rack" }),
      finds: ["reference-unknown wire P101A8 to"],
    },
    {
      fault: "a reference not written",
      text: wireExample({ to: "" }),
      finds: ["value-missing wire P101A8 to"],
    },
    {
      fault: "neither of two keys",
      text: recordExample({
        kit: "kit:\n  kit: { number: QSR-60, revision: C }\n  components: [{ id: RACK, weight: 31.2 lb, draws: [{ mode: survey }] }]",
      }),
      finds: ["key-choice component RACK draws #1"],
    },
    {
      fault: "a kit that is not written",
      text: recordExample({ kit: "kit:" }),
      finds: ["value-missing kit"],
    },
    {
      fault: "an airframe that is not there, whose ids can't be known",
      text: recordExample({
        airframe: "",
        sections:
          "wires:\n  - { id: P1, from: MAIN, to: RACK, gauge: 8 AWG, length: 14.5 ft, rating: 150 degC }",
      }),
      finds: ["key-missing airframe"],
    },
    {
      fault: "an entry that is a single word",
      text: `${wireExample()}junctions: [TB1]\n`,
      finds: ["value-wrong-kind junctions #1"],
    },
  ])("$fault", ({ text, finds }) => {
    expect(found(text)).toEqual(finds);
  });
});

describe("a text that could not be read as it was meant", () => {
  it("is not told what it lacks where it broke", () => {
    const text = recordExample({ sections: "wires:\n  - { id: P1, from: MAIN" });
    expect(found(text)).toEqual(["text-not-yaml"]);
  });

  it("is told what other parts of it lack", () => {
    const text = recordExample({
      sections: "wires:\n  - { id: P1, from: MAIN\njunctions:\n  - { location: aft }",
    });
    expect(found(text)).toEqual(["text-not-yaml", "key-missing junctions #1 id"]);
  });

  it("is not told what it lacks when nothing of it was read", () => {
    expect(found("- P101A8\n- P102A8\n")).toEqual(["text-feature-not-used"]);
    expect(found("")).toEqual(["key-missing document", "key-missing airframe", "key-missing kit"]);
  });

  it("is told of a tab, and of the rest what it would be told without it", () => {
    const wires = "wires:\n  - id: P1\n    from: MAIN\n\tgauge: 8 AWG\n    to: RACK\n    length: 14.5 ft";
    const text = recordExample({ sections: `${wires}\n  - id: P2\njunctions:\n  - { location: aft }` });
    const others = found(text.replace("\tgauge", "    gauge")).filter(
      (one) => !one.startsWith("key-missing wire P1"),
    );
    expect(others).toContain("key-missing wire P2 gauge");
    expect(found(text).toSorted()).toEqual(["text-tab-indent", ...others].toSorted());
  });

  it("is told of an alias without an anchor only once", () => {
    expect(found(wireExample({ gauge: "*g" }))).toEqual(["text-not-yaml"]);
  });
});

describe("two faults give two findings", () => {
  it("tells each key that is missing", () => {
    expect(found(wireExample({ gauge: undefined, length: undefined }))).toEqual([
      "key-missing wire P101A8 gauge",
      "key-missing wire P101A8 length",
    ]);
  });

  it("tells what a shape lacks and what it does not have", () => {
    const opening = "cutouts: [{ id: C1, panel: AFT-FLOOR, opening: { shape: circle, length: 3 in } }]";
    expect(found(recordExample({ sections: opening }))).toEqual([
      "key-missing cutout C1 opening diameter",
      "key-out-of-place cutout C1 opening length",
    ]);
  });

  it("does not take a key that is unlike for a slip", () => {
    expect(found(wireExample({ gauge: undefined, colour: "white" }))).toEqual([
      "key-missing wire P101A8 gauge",
      "key-unknown wire P101A8 colour",
    ]);
  });
});

describe("the facts of a finding", () => {
  const factsOf = (text: string) => problemsOf(text)[0]?.facts;

  it("take the example and the meaning from the key's own schema", () => {
    expect(factsOf(wireExample({ gauge: undefined }))).toMatchObject({
      key: "gauge",
      example: "8 AWG",
      meaning: "Wire gauge.",
    });
    expect(factsOf(wireExample({ rating: "150" }))).toMatchObject({ example: "150 degC", wrong: "150" });
  });

  it("name the part of a quantity that is wrong", () => {
    expect(factsOf(wireExample({ length: "14.5 fet" }))).toMatchObject({ text: "14.5 fet", wrong: "fet" });
  });

  it.each([
    { key: "one that is needed", text: wireExample({ length: "" }), isRequired: true },
    { key: "one that may be left out", text: wireExample({ bundle: "" }), isRequired: false },
    {
      key: "the only one of a choice",
      text: recordExample().replace(/empty: .*/, "empty:"),
      isRequired: true,
    },
    {
      key: "one of a choice that is made",
      text: recordExample().replace("current: 18 A", "current: 18 A, power:"),
      isRequired: false,
    },
  ])("tell whether a blank may be taken out: $key", ({ text, isRequired }) => {
    const blank = problemsOf(text).find(({ rule }) => rule === "value-missing");
    expect(blank?.facts).toMatchObject({ isRequired });
  });

  it("know a key that belongs further out", () => {
    const document = "document: { number: HM-0412, revision: A, status: draft, wires: [] }";
    expect(factsOf(recordExample({ document }))).toMatchObject({ key: "wires", belongsFurtherOut: true });
    expect(factsOf(wireExample({ colour: "white" }))).toMatchObject({ belongsFurtherOut: false });
  });
});

it("names things that are written in an airframe record by itself", () => {
  const text = "loadings: [{ id: solo, envelope: normal, load: [{ station: front, weight: 170 lb }] }]";
  const record = loadRecord("a.airframe.yaml", "airframe", text);
  const unknown = judgeAlone(record).map(({ rule, subject, facts }) => [rule, subject?.id, facts.path]);
  expect(unknown).toEqual([
    ["reference-unknown", "solo", ["envelope"]],
    ["reference-unknown", "solo", ["load", "#1", "station"]],
  ]);
});
