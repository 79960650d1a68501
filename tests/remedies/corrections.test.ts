/** What was written wrongly is put right only where it is plain what was meant. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import { fixAllSafe } from "../../server/src/core/fix-all";
import { loadRecord } from "../../server/src/core/records/record";
import { recordExample, wireExample } from "../../server/src/core/rules/example-record";
import { sourceExample } from "../../server/src/core/rules/sources/source-example";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { alone, faultsIn, judge, remediesFor, titlesFor } from "./support";

it("a key that is misspelt is written as the one that is near", () => {
  const [remedy, ...more] = remediesFor(
    "key-unknown",
    wireExample({ gauge: undefined, guage: "8 AWG # heavy" }),
  );
  expect(more).toEqual([]);
  expect(remedy!.title).toBe("Write gauge");
  expect(remedy!.text).toContain("gauge: 8 AWG # heavy");
  expect(faultsIn(remedy!.text)).not.toContain("key-missing");
});

it("says how many faults come to light, instead of hiding the mend for them", () => {
  const text = circuitExample({ gauge: "22 AWG" }).replace("gauge: 22", "guage: 22");
  const [remedy] = remediesFor("key-unknown", text);
  expect(faultsIn(remedy!.text)).toContain("wire-over-ampacity");
  expect(remedy!.revealed).toBeGreaterThan(0);
});

it("a key that is near nothing is left alone", () => {
  expect(titlesFor("key-unknown", wireExample({ colour: "white" }))).toEqual([]);
});

it("works in a record that has no project", () => {
  const kit = "kit: { nunber: QSR-60, revision: C }\ncomponents: []\n";
  expect(titlesFor("key-unknown", kit, "test.kit.yaml")).toEqual(["Write number"]);
});

describe("a name that stands for nothing", () => {
  it("is written as the one that is near", () => {
    expect(titlesFor("reference-unknown", circuitExample().replace("to: RACK", "to: RAKC"))).toEqual([
      "Write RACK",
    ]);
  });

  it("is not guessed where a figure differs", () => {
    const text = circuitExample({ protection: ["{ id: CB-RACK, device: CB-25, mounted-on: MAIN }"] });
    expect(judge(text).findings.map(({ rule }) => rule)).toContain("reference-unknown");
    expect(titlesFor("reference-unknown", text)).toEqual([]);
  });
});

describe("a wire whose ends are the wrong way round", () => {
  const feed = "from: CB-RACK, to: RACK";
  const back = "from: RACK, to: GND-AFT";

  it("joins nothing, and is turned: a return that is written from its ground", () => {
    const text = sourceExample().replace(back, "from: GND-AFT, to: RACK");
    expect(faultsIn(text).toSorted()).toEqual([...faultsIn(sourceExample()), "reference-unknown"]);
    const [remedy, ...more] = remediesFor("reference-unknown", text);
    expect(more).toEqual([]);
    expect(remedy!.text).toBe(sourceExample());
  });

  it("so does a feed that is written from the load", () => {
    const text = sourceExample().replace(feed, "from: RACK, to: CB-RACK");
    expect(faultsIn(text).toSorted()).toEqual([...faultsIn(sourceExample()), "load-not-connected"]);
    expect(titlesFor("load-not-connected", text)).toEqual(["Swap 'from' and 'to' of wire P1"]);
  });
});

it("a word of a list is written as the list has it", () => {
  expect(titlesFor("value-not-in-list", wireExample({ material: "aluminum" }))).toEqual(["Write aluminium"]);
});

describe("a line that is indented with tabs", () => {
  const demo = readFileSync(
    new URL("../../client/demo/survey-rack-0417.install.yaml", import.meta.url),
    "utf8",
  );

  it("is indented with as many spaces as it is read with, and nothing else is touched", () => {
    const text = recordExample({
      document: "document:\n  number: HM-0412\n \t revision: A # first\n  status: draft",
    });
    const [remedy, ...more] = remediesFor("text-tab-indent", text);
    expect(more).toEqual([]);
    expect(remedy!.title).toBe("Put 2 spaces in place of the tab");
    expect(remedy!.text).toBe(text.replace(" \t revision", "  revision"));
  });

  it("is put right with all others of its record", () => {
    const wires = demo.slice(demo.indexOf("\nwires:"), demo.indexOf("\nbonds:"));
    const tabbed = demo.replace(wires, wires.replace(/(?<=\n) {2}(?=- )/g, "\t"));
    const lines = tabbed.split("\t").length - 1;
    expect(lines).toBeGreaterThan(5);
    const record = loadRecord("test.install.yaml", "install", tabbed);
    const { edits, titles } = fixAllSafe(record, alone);
    expect(titles).toEqual(Array(lines).fill("Put 2 spaces in place of the tab"));
    expect(applyEdits(tabbed, edits)).toBe(demo);
  });
});

describe("a unit", () => {
  it("is added where there is one only", () => {
    const text = recordExample({ sections: "bundles:\n  - { id: B1, wires: 4, loading: 40 }" });
    expect(titlesFor("quantity-unit-missing", text)).toEqual(["Write 40 %"]);
  });

  it("is a choice where there are several, the usual one first", () => {
    const titles = titlesFor("quantity-unit-missing", wireExample({ length: "14.5" }));
    expect(titles[0]).toBe("Write 14.5 ft");
    expect(titles).toContain("Write 14.5 m");
  });

  it("with a slip in it is written as those that are near", () => {
    expect(titlesFor("quantity-unit-unknown", wireExample({ length: "14.5 fet" }))).toContain(
      "Write 14.5 ft",
    );
  });
});

it("a wire is marked as its record has it, everywhere that it is named", () => {
  const wire = (id: string, to: string, gauge: string) =>
    `{ id: ${id}, from: CB-RACK, to: ${to}, length: 12 ft, rating: 150 degC, gauge: ${gauge} }`;
  const titleFor = (id: string, to: string, gauge: string) =>
    titlesFor("wire-identification-mismatch", circuitExample({ wires: [wire(id, to, gauge)] }));
  expect(titleFor("P101A12", "RACK", "10 AWG")).toEqual(["Mark wire P101A12 P101A10"]);
  expect(titleFor("P101A10N", "RACK", "10 AWG")).toEqual(["Mark wire P101A10N P101A10"]);
  expect(titleFor("P101A8", "RACK", "8 AWG, material: aluminium")).toEqual(["Mark wire P101A8 P101A8-ALUM"]);
  expect(titleFor("P101A8-ALUM", "RACK", "1/0 AWG")).toEqual(["Mark wire P101A8-ALUM P101A0"]);
});
