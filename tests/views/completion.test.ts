/** What is offered at a cursor: by the schema, by the linked records, and by what a value would lead to. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { loadRecord } from "../../server/src/core/records/record";
import { recordKindOf } from "../../server/src/core/records/schema";
import { RecordShelf } from "../../server/src/core/shelf";
import { completionsAt, passing, tryValue } from "../../server/src/core/views/completion";
import { root } from "../support/programs";

const demo = join(root, "client/demo");
const sound = readFileSync(join(demo, "survey-rack-0417.install.yaml"), "utf8");
const file = "survey-rack-0417.install.yaml";

const shelf = new RecordShelf({
  resolve: (_from, path) => path,
  text: (name) => readFileSync(join(demo, name), "utf8"),
});

/** Completions where `|` stands in the text. */
function at(marked: string, name = file) {
  const offset = marked.indexOf("|");
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  const record = loadRecord(name, recordKindOf(name)!, text);
  return completionsAt(check(record, shelf), offset, (kind) => [`b.${kind}.yaml`]);
}

const labels = (marked: string, name?: string) => at(marked, name).map(({ label }) => label);

/** The sound demo with one text in place of another. */
function demoWith(old: string, now: string): string {
  expect(sound.split(old)).toHaveLength(2);
  return sound.replace(old, now);
}

describe("keys", () => {
  it("in an empty record: what it must have first, then its other sections", () => {
    const found = labels("|");
    expect(found.slice(0, 4)).toEqual(["document, airframe, kit", "document", "airframe", "kit"]);
    expect(found).toContain("wires");
  });

  it("only those that are missing, with meaning and example", () => {
    const found = at("document:\n  number: X\n  re|\n");
    expect(found.map(({ label }) => label)).not.toContain("number");
    expect(found.find(({ label }) => label === "revision")).toMatchObject({
      detail: "required",
      documentation: "Revision of this document.\n\nExample: `B`",
      insert: "revision: ",
    });
  });

  it.each([
    ["a half-typed line of a block", "wires:\n  - id: P1\n    ga|\n    length: 3 ft\n"],
    ["an empty line of a block", "wires:\n  - id: P1\n    |\n"],
    ["a dash", "wires:\n  - |\n"],
    ["braces", "wires:\n  - { id: P1, | }\n"],
    ["braces over several lines", "wires:\n  - {\n      id: P1,\n      |\n    }\n"],
    ["braces not closed yet", "wires:\n  - { id: P1, ga|"],
    ["a key with its colon", "wires:\n  - id: P1\n    ga|: 8 AWG\n"],
  ])("in %s", (_, marked) => {
    expect(labels(marked)).toContain("gauge");
  });

  it("beside a dash that is to come: a new entry", () => {
    const [entry] = at("spares:\n  |\n");
    expect(entry).toMatchObject({ label: "- spare", insert: "- " });
    expect(labels("spares:\n  - { device: F-10, count: 1 }\n  |\n")).toEqual(["- spare"]);
  });

  it("of a figure: those of its shape", () => {
    const found = labels("cutouts:\n  - id: C1\n    opening: { shape: circle, | }\n");
    expect(found).toContain("diameter");
    expect(found).not.toContain("corner-radius");
  });

  it("that are ids of the kit", () => {
    expect(labels(demoWith("{ RACK: standby, FANS: run }", "{ RACK: standby, | }"))).toEqual([
      "CHILLER",
      "FANS",
    ]);
  });

  it("none in a comment, in a quoted text, or where the schema ends", () => {
    expect(labels("# wi|\n")).toEqual([]);
    expect(labels('document:\n  title: "a|"\n')).toEqual([]);
    expect(labels("unknown:\n  |\n")).toEqual([]);
  });
});

describe("values", () => {
  it("words of an enumeration", () => {
    expect(labels("document:\n  status: |\n")).toEqual([
      "in-work",
      "draft",
      "in-review",
      "released",
      "superseded",
    ]);
    expect(at("document:\n  status:|\n")[0]?.insert).toBe(" in-work");
  });

  it("units after a number, those of the trade first", () => {
    const found = labels("placement:\n  - { component: RACK, arm: 121| }\n");
    expect(found[0]).toBe("121 in");
    expect(found).toContain("121 mm");
  });

  it("ids of the linked records, by what may stand there", () => {
    expect(labels(demoWith("panel: BAY-DOOR", "panel: |"))).toEqual(
      expect.arrayContaining(["AFT-FLOOR", "BAY-DOOR"]),
    );
    expect(labels(demoWith("panel: BAY-DOOR", "panel: |"))).not.toContain("RACK");
    const before = "\n  - component: CHILLER";
    const served = demoWith(`served-through: [BAY-DOOR]${before}`, `served-through: [|]${before}`);
    expect(labels(served)).toEqual(expect.arrayContaining(["AFT-FLOOR", "BAY-DOOR"]));
    expect(labels(demoWith("failed: [ALT1]", "failed: [|]"))).toEqual(["ALT1", "BAT", "GPU"]);
  });

  it("modes as the kit names them", () => {
    expect(labels(demoWith("{ RACK: standby, FANS: run }", "{ RACK: | }"))).toEqual(["standby", "survey"]);
  });

  it("paths of the workspace's records", () => {
    expect(labels("kit: |\n")).toEqual(["b.kit.yaml"]);
  });

  it("sizes of tubes and fasteners as the trade writes them", () => {
    expect(labels("lines:\n  - id: L1\n    outside-diameter: |\n")).toContain("5/16 in");
    const fastener = "mounts:\n  - { component: RACK, fastener: { kind: an-bolt, diameter: | } }\n";
    expect(labels(fastener).slice(0, 3)).toEqual(["3/32 in", "1/8 in", "5/32 in"]);
  });

  // FAA AC 43.13-1B (9/8/98), Table 4-9, p. 4-37: first column, and heads of the columns of rivets
  it("sheets and rivets of a doubler, as the tables of rivets have them", () => {
    const doubler = (keys: string) => `cutouts:\n  - id: C1\n    reinforcement: { kind: doubler, ${keys} }\n`;
    const sheets = labels(doubler("thickness: |"));
    expect(sheets).toHaveLength(12);
    expect([sheets[0], sheets[5], sheets[11]]).toEqual(["0.016 in", "0.040 in", "0.128 in"]);
    expect(labels(doubler("fasteners: { kind: 2117-rivet, diameter: | }"))).toEqual([
      "3/32 in",
      "1/8 in",
      "5/32 in",
      "3/16 in",
      "1/4 in",
    ]);
  });

  it("all sizes when one stands there whole, so that it can be exchanged", () => {
    const found = at(demoWith("    to: CHILLER\n    gauge: 8 AWG", "    to: CHILLER\n    gauge: 8 AWG|"));
    expect(found.length).toBeGreaterThan(10);
    expect(new Set(found.map(({ filter }) => filter))).toEqual(new Set(["8 AWG"]));
  });
});

describe("what a value would lead to", () => {
  const record = loadRecord(file, "install", sound);
  const start = sound.indexOf("8 AWG");
  const tried = ["14 AWG", "10 AWG", "8 AWG"].map((text) => ({
    text,
    trial: tryValue(record, { start, end: start + 5 }, text, shelf, {}),
  }));

  it("says the results at the place as a check gives them", () => {
    const { assessments } = check(record, shelf);
    const drop = assessments.find(
      ({ rule, subject }) => rule === "wire-voltage-drop" && subject.id === "CHILLER",
    )!;
    expect(drop.holds).toBe(true);
    const [first] = tried[2]!.trial.words;
    expect(first).toMatch(/^path drop .* \(\d+ %\)$/);
    expect(first).toContain(`path drop ${drop.value.value.toPrecision(3)} V of 1 V`);
  });

  it("of a wire is said what fails first, and the drop of its path though another wire drops more", () => {
    const feed = "    to: CHILLER\n    gauge: 8 AWG";
    const back = "from: CHILLER, to: GND-AFT, gauge: ";
    const wordsWith = (awg: number) => {
      const text = demoWith(feed, feed.replace("8 AWG", `${awg} AWG`));
      const at = text.indexOf(back) + back.length;
      const span = { start: at, end: at + "8 AWG".length };
      return ["6 AWG", "8 AWG"].map((size) =>
        tryValue(loadRecord(file, "install", text), span, size, shelf, {}),
      );
    };
    for (const { words } of wordsWith(8)) expect(words[0]).toMatch(/^path drop 0\.\d+ V of 1 V/);
    for (const { words, documentation } of wordsWith(12)) {
      expect(words[0]).toMatch(/^fails: /);
      expect(words).toContainEqual(expect.stringMatching(/^fails: path drop \d\.\d+ V of 1 V$/));
      expect(documentation).toMatch(/^With this value:\n- \*\*fails:\*\* /);
    }
  });

  it("of a wire is said what keeps its drop from being known, until the way back is written", () => {
    const wordsWith = (back: string) => {
      const text = demoWith(
        "from: CHILLER, to: GND-AFT, gauge: 8 AWG",
        `from: CHILLER, to: GND-AFT, gauge:${back}`,
      );
      const at = text.indexOf("gauge: 8 AWG") + "gauge: ".length;
      const span = { start: at, end: at + "8 AWG".length };
      return tryValue(loadRecord(file, "install", text), span, "8 AWG", shelf, {});
    };
    const { words, documentation } = wordsWith("");
    expect(words.at(-1)).toBe("path drop not known, as still blank: P102B8N (gauge)");
    expect(documentation).toContain("- path drop not known, as still blank: P102B8N (gauge)");
    const written = wordsWith(" 8 AWG").words.join("; ");
    expect(written).not.toContain("not known");
    expect(written).toContain("path drop 0.");
  });

  it("of a doubler is said for each sheet, the thinnest that passes being found", () => {
    const thickness = sound.indexOf("0.050 in", sound.indexOf("kind: doubler"));
    const sheets = ["0.020 in", "0.040 in", "0.051 in"].map((text) => ({
      text,
      trial: tryValue(record, { start: thickness, end: thickness + 8 }, text, shelf, {}),
    }));
    expect([...passing(sheets)].map(({ text }) => text)).toEqual(["0.051 in"]);
    expect(sheets[0]!.trial.own.join()).toContain("0.02 in");
  });

  it("the thinnest that passes is the demo's own", () => {
    expect([...passing(tried)].map(({ text }) => text)).toEqual(["8 AWG"]);
    expect(tried[0]!.trial.own.join()).toMatch(/14 AWG|allowed/);
  });
});
