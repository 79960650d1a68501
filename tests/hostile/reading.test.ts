import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { limits } from "../../server/src/core/limits";
import { read } from "../../server/src/core/reading";
import { withoutTabs } from "../../server/src/core/reading/tabs";
import { brief, nodesIn } from "../reading/outline";
import { fc } from "../support/random";

describe("text that can end the process inside of the YAML library", () => {
  let folder: string;
  let bundle: string;

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "reading-"));
    bundle = join(folder, "reading.cjs");
    buildSync({
      entryPoints: [join(import.meta.dirname, "../../server/src/core/reading/index.ts")],
      outfile: bundle,
      bundle: true,
      platform: "node",
      format: "cjs",
    });
  });

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** Runs code in a process of its own, with `read` defined, and gives what it printed. */
  function run(code: string): string {
    const script = join(folder, "script.cjs");
    writeFileSync(script, `const { read } = require(${JSON.stringify(bundle)});\n${code}`);
    return execFileSync(process.execPath, [script], { encoding: "utf8", timeout: 25_000 });
  }

  /** Rules of the problems of each text, one text after the other in one process. */
  function rulesOf(...texts: string[]): string[] {
    const printed = run(
      `const texts = [${texts.join(", ")}];
      const rules = texts.map((text) => [...new Set(read(text).problems.map(({ rule }) => rule))].join(" "));
      console.log(JSON.stringify(rules));`,
    );
    return JSON.parse(printed);
  }

  test("a thousand, then ten thousand brackets that are not closed", () => {
    expect(rulesOf(`"[".repeat(1000)`, `"[".repeat(10_000)`)).toEqual(["text-too-deep", "text-too-deep"]);
  });

  test("the same below a key, in a list, and with braces", () => {
    expect(
      rulesOf(
        `"a: " + "[".repeat(10_000)`,
        `"a:\\n  - " + "[".repeat(10_000) + "\\n  - b"`,
        `"a: " + "{b: ".repeat(10_000)`,
        `"a: " + "[{".repeat(10_000)`,
      ),
    ).toEqual(["text-too-deep", "text-too-deep", "text-too-deep", "text-too-deep"]);
  });

  test("five thousand explicit keys in each other", () => {
    expect(rulesOf(`"? ".repeat(5000)`)).toEqual(["text-feature-not-used text-too-deep"]);
  });

  test("twenty thousand dashes, keys and colons in each other", () => {
    expect(
      rulesOf(
        `"a:\\n" + "- ".repeat(20_000) + "x\\nb: 1"`,
        `Array.from({ length: 2000 }, (_, level) => " ".repeat(level) + "a:").join("\\n")`,
      ),
    ).toEqual(["text-too-deep", "text-too-deep"]);
  });

  test("half a million brackets", () => {
    expect(rulesOf(`"[".repeat(500_000)`)).toEqual(["text-too-deep"]);
  });
});

describe("what is deep, next to what is not", () => {
  const deep = "[".repeat(500);

  test("takes nothing else down", () => {
    const text = `a: 1\nb: ${deep}\n  more: [\n\nc: 2\nw:\n  - d: 3\n  - e: {f: ${deep}\n    g: 1\n  - h: 4\nz: 5\n`;
    expect(brief(read(text).root)).toBe("{a: 1, b: ~, c: 2, w: [{d: 3}, ~, {h: 4}], z: 5}");
  });

  test("in the key, leaves its entry out", () => {
    expect(brief(read(`a: 1\n? ${"- ".repeat(100)}x\n: 2\nb: 3\n`).root)).toBe("{a: 1, b: 3}");
  });

  test("with block scalars, comments and quotes inside, ends where its item ends", () => {
    const inner = `${"- ".repeat(100)}|\n      text\n\n   # comment\n   x: "y\n   "\n   - >\n     z`;
    const reading = read(`w:\n - ${inner}\n - ok\nb: 1\n`);
    expect(brief(reading.root)).toBe("{w: [~, ok], b: 1}");
  });
});

describe("aliases that multiply", () => {
  const levels = [..."abcdefghij"];
  const laughs = levels
    .map((name, index) => {
      const inner = index === 0 ? "lol" : `*${levels[index - 1]}`;
      return `${name}: &${name} [${new Array(9).fill(inner).join(", ")}]`;
    })
    .join("\n");

  test("stop at the cap, and each one after it says so", () => {
    const reading = read(laughs);
    const nodes = [...nodesIn(reading.root)];
    expect(nodes.length).toBeLessThan(2 * limits.aliasNodes);
    expect(new Set(reading.problems.map(({ rule }) => rule))).toEqual(new Set(["text-alias-limit"]));
    expect(reading.problems[0]!.facts).toMatchObject({ limit: limits.aliasNodes });
    expect(brief(reading.root)).toContain("c: [[[lol, lol");
  });

  test("do not count what is only repeated a few times", () => {
    expect(read(laughs.split("\n").slice(0, 3).join("\n")).problems).toEqual([]);
  });
});

describe("very many of one thing", () => {
  test("twenty thousand keys in one map", () => {
    const keys = Array.from({ length: 20_000 }, (_, index) => `k${index}: ${index}`);
    const block = read(`m:\n  ${keys.join("\n  ")}\n  k7: again\n`);
    expect(block.root.entries[0]!.value).toMatchObject({ entries: { length: 20_001 } });
    expect(block.problems.map(({ rule, facts }) => ({ rule, facts }))).toEqual([
      { rule: "key-duplicate", facts: { key: "k7", line: 9 } },
    ]);
    expect(read(`m: {${keys.join(", ")}}\n`).problems).toEqual([]);
    expect(read(`${keys.join("\n")}\n`).root.entries).toHaveLength(20_000);
  });

  test.each([
    ["line breaks", "\n".repeat(300_000)],
    ["carriage returns", "\r".repeat(300_000)],
    ["tabs", "\t".repeat(300_000)],
    ["tabs, one a line", "a:\n\tb: 1\n".repeat(10_000)],
    ["comments", "# c\n".repeat(15_000)],
    ["quotes", '"\n'.repeat(30_000)],
    ["quotes below keys", "a: '\n".repeat(30_000)],
    ["escapes", `a: "${"\\".repeat(100_000)}`],
    ["closing brackets", "a: ]]]]\n".repeat(15_000)],
    ["commas", `a: [${",".repeat(100_000)}`],
    ["colons", "a: ".repeat(30_000)],
    ["words on lines of their own", "word\n".repeat(30_000)],
    ["dashes", "-\n".repeat(30_000)],
    ["document markers", "---\na: 1\n".repeat(5_000)],
    ["conflict markers", "<<<<<<< a\n=======\n>>>>>>> b\n".repeat(30_000)],
    ["anchors and aliases", "a: &a [b]\nc: *a\n".repeat(30_000)],
    ["tags", `a: ${"!t ".repeat(30_000)}`],
    ["null characters", "\0".repeat(200_000)],
    ["halves of pairs", "\ud800".repeat(200_000)],
    ["deep items", `w:\n${`  - ${"[".repeat(70)}\n`.repeat(3000)}`],
    ["words on one line", `a: ${"x ".repeat(200_000)}`],
  ])("%s", (_what, text) => {
    const reading = read(text);
    expect(reading.text).toBe(text);
    for (const rule of new Set(reading.problems.map((problem) => problem.rule))) {
      const ofRule = reading.problems.filter((problem) => problem.rule === rule);
      expect(ofRule.length).toBeLessThanOrEqual(limits.findingsPerRule);
    }
  });
});

test("no text at all makes it throw", () => {
  const characters = fc.constantFrom(..."ab:-?[]{},#&*!|>'\"%@`<= \t\n\r\\0~.\0\uFEFF\ud800\u2028");
  fc.assert(
    fc.property(fc.string({ unit: characters, maxLength: 60 }), (text) => {
      const reading = read(text);
      expect(reading.text).toBe(text);
      // What is read item by item is the whole text, with the tabs of indentations laid out as spaces.
      const isUnread = reading.problems.some(({ rule }) => rule === "text-encoding-wrong");
      const laidOut = isUnread ? undefined : withoutTabs(text);
      expect(reading.items.map((item) => item.text).join("")).toBe(laidOut?.text ?? text);
      for (const node of nodesIn(reading.root)) expect(reading.spanOf(node).start).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 3000 },
  );
});
