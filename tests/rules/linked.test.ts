/** What an example finds with its airframe and its kit written inline, it finds with each in a file of its own. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/src/core/edits/text-edit";
import { read } from "../../server/src/core/reading";
import { rules } from "../../server/src/core/rules";
import type { Example } from "../../server/src/core/rules/rule";
import { runExample } from "../../server/src/core/run-example";

const kinds = ["airframe", "kit"] as const;

/** The example with what is inline moved into files; undefined where nothing is, as a block. */
function linked(example: Example): Example | undefined {
  const reading = read(example.text);
  const moved = reading.root.entries.flatMap(({ key, value }) => {
    const kind = kinds.find((one) => one === key.text);
    const { start, end } = reading.spanOf(value);
    // The line of a block's first key starts with its indentation, and nothing else.
    const isBlock = kind && value.kind === "map" && /\n +$/.test(example.text.slice(0, start));
    return isBlock ? [{ kind, start, end }] : [];
  });
  if (moved.length === 0 || example.file?.endsWith(".install.yaml") === false) return undefined;
  const others = Object.fromEntries(
    moved.map(({ kind, start, end }) => [
      `x.${kind}.yaml`,
      `  ${example.text.slice(start, end)}\n`.replace(/^ {2}/gm, ""),
    ]),
  );
  const edits = moved.map(({ kind, start, end }) => ({ start, end, newText: `x.${kind}.yaml` }));
  return { ...example, text: applyEdits(example.text, edits), others: { ...example.others, ...others } };
}

/** What is about an install, its airframe and its kit together. */
const examples = rules
  .filter(({ check }) => check !== undefined)
  .flatMap(({ id, examples }) =>
    examples().flatMap((example) => {
      const apart = linked(example);
      return apart ? [{ id, title: example.title, example, apart }] : [];
    }),
  );

describe("with each record in a file of its own", () => {
  it.each(examples)("$id: $title", ({ id, example, apart }) => {
    const judged = runExample(apart);
    const own = judged.findings.filter(({ rule }) => rule === id);
    expect(own.map(({ what }) => what)).toEqual(
      runExample(example)
        .findings.filter(({ rule }) => rule === id)
        .map(({ what }) => what),
    );
    for (const { anchor } of judged.findings) expect(anchor.file).toBe(judged.record.file);
  });

  it("there are many", () => {
    expect(examples.length).toBeGreaterThan(400);
  });
});
