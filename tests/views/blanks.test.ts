/** A blank must not make a record look better than it is: no margin is shown that it may have hidden. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { check, type Judgement } from "../../server/src/core/check";
import { loadRecord } from "../../server/src/core/records/record";
import { RecordShelf } from "../../server/src/core/shelf";
import { fleetRow } from "../../server/src/core/views/fleet";
import { hintsOf } from "../../server/src/core/views/hints";
import { root } from "../support/programs";

const demo = join(root, "client/demo");
const file = "survey-rack-0417.install.yaml";
const sound = readFileSync(join(demo, file), "utf8");
const shelf = new RecordShelf({
  resolve: (_from, path) => path,
  text: (name) => readFileSync(join(demo, name), "utf8"),
});

/** The sound demo with one text in place of another. */
function demoWith(old: string, now: string): Judgement {
  expect(sound.split(old)).toHaveLength(2);
  return check(loadRecord(file, "install", sound.replace(old, now)), shelf);
}

/** Text of the hint behind the entry that starts with `id`. */
function hintBehind(judgement: Judgement, id: string): string | undefined {
  const { text, reading } = judgement.record;
  const start = text.indexOf(`{ id: ${id},`);
  return hintsOf(judgement).find(({ node }) => reading.spanOf(node).start === start)?.text;
}

const gauge = "    to: CHILLER\n    gauge: 8 AWG\n";

it("a hint says of what its margin is", () => {
  expect(hintBehind(demoWith(gauge, gauge), "CB-CHILLER")).toMatch(/, margin \d+ % \(device current\)$/);
});

it.each([
  ["without its line", "    to: CHILLER\n"],
  ["with nothing after the key", "    to: CHILLER\n    gauge:\n"],
])("a gauge that is missing, %s, leaves the margin before it unknown, and no other", (_, now) => {
  const judgement = demoWith(gauge, now);
  expect(hintBehind(judgement, "CB-CHILLER")).toMatch(/margin unknown$/);
  expect(hintBehind(judgement, "CB-RACK")).toMatch(/margin \d+ %/);
});

it.each([
  ["a gauge that is missing", gauge, "    to: CHILLER\n"],
  ["a length without a unit", "length: 14.5 ft", "length: 14.5"],
  ["an arm that is blank", "component: RACK\n    arm: 121.0 in", "component: RACK\n    arm:"],
])("%s leaves the record without a least margin", (_, old, now) => {
  expect(fleetRow(demoWith(old, old))).toMatchObject({ electrical: {}, balance: {} });
  const row = fleetRow(demoWith(old, now))!;
  expect(row.counts.error).toBeGreaterThan(0);
  expect([row.electrical, row.balance]).toEqual([undefined, undefined]);
});
