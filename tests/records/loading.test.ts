/** What is known of a record while it is typed is what a reading of its text alone would know. */
import { readFileSync } from "node:fs";
import Ajv from "ajv/dist/2020";
import { expect, it } from "vitest";
import type { Node } from "../../server/src/core/reading/tree";
import { type LoadedRecord, loadRecord } from "../../server/src/core/records/record";
import type { RecordKind } from "../../server/src/core/records/schema";
import { validators } from "../../server/src/core/records/validators.mjs";
import type { Whereabouts } from "../../server/src/core/records/whereabouts";
import { changesOfText, edited } from "../support/edited";
import { fc } from "../support/random";
import { demo, demoRecords } from "../support/workspace";

const records = demoRecords();
const examples: readonly (readonly [RecordKind, string])[] = [
  ["install", demo.faulty],
  ["kit", demo.kit],
  ["airframe", demo.airframe],
];

/** Each run edits a record several times. */
const numRuns = Number(process.env.LOADING_RUNS ?? 5);

const edits = fc.array(
  fc.record({ kind: fc.constantFrom(...changesOfText), at: fc.nat(100_000), other: fc.nat(100_000) }),
  { minLength: 1, maxLength: 12 },
);

/** Records as they come one after the other while somebody types, each with what a fresh reading makes of it. */
function* versions(
  [kind, file]: (typeof examples)[number],
  changes: ReturnType<typeof edits.generate>["value"],
): Generator<readonly [typed: LoadedRecord, fresh: LoadedRecord]> {
  let text = records[file]!;
  let record = loadRecord(file, kind, text);
  for (const { kind: change, at, other } of changes) {
    text = edited(text, change, at, other);
    record = loadRecord(file, kind, text, record);
    yield [record, loadRecord(file, kind, text)];
  }
}

it.each(examples)("%s: problems", (...example) => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(edits, (changes) => {
      for (const [typed, fresh] of versions(example, changes)) {
        expect(problemsIn(typed)).toEqual(problemsIn(fresh));
        for (const { rule } of typed.problems) seen.add(rule);
      }
    }),
    { numRuns },
  );
  expect(seen.size, "edits that break nothing would prove nothing").toBeGreaterThan(2);
});

function problemsIn({ reading, problems }: LoadedRecord) {
  return problems.map(({ place, ...rest }) => ({
    ...rest,
    ...("node" in place ? reading.spanOf(place.node) : place.span),
  }));
}

it.each(examples)("%s: the parts are judged as the whole would be", (...example) => {
  const whole = wholeValidators[example[0]];
  const { frame, entries } = validators[example[0]];
  let faults = 0;
  fc.assert(
    fc.property(edits, (changes) => {
      for (const [{ typing }] of versions(example, changes)) {
        const plain = typing.plain as Record<string, unknown>;
        whole(plain);
        const ofEntries = Object.entries(entries).flatMap(([key, validator]) => {
          const list = Array.isArray(plain[key]) ? plain[key] : [];
          return list.flatMap((one, index) => errorsOf(validator, one, `/${key}/${index}`));
        });
        const expected = told(whole.errors ?? [], "");
        expect([...errorsOf(frame, plain, ""), ...ofEntries].toSorted()).toEqual(expected.toSorted());
        faults += expected.length;
      }
    }),
    { numRuns },
  );
  expect(faults).toBeGreaterThan(20);
});

type Errors = NonNullable<(typeof validators)["kit"]["frame"]["errors"]>;

function errorsOf(validator: (typeof validators)["kit"]["frame"], data: unknown, at: string): string[] {
  return validator(data) ? [] : told(validator.errors ?? [], at);
}

function told(errors: Errors, at: string): string[] {
  return errors.map(({ keyword, instancePath, params }) =>
    JSON.stringify([keyword, at + instancePath, params]),
  );
}

const wholeValidators = (() => {
  const ajv = new Ajv({ allErrors: true, strict: false });
  for (const name of ["common", "airframe", "kit", "install"]) {
    const file = `${name}.schema.json`;
    const schema = JSON.parse(readFileSync(`schemas/${file}`, "utf8"), (_, part) =>
      part?.["x-quantity"] ? { type: "string" } : part,
    );
    ajv.addSchema({ ...schema, $id: file });
  }
  const of = (kind: RecordKind) =>
    ajv.getSchema(`${kind}.schema.json`) as unknown as typeof validators.kit.frame;
  return { airframe: of("airframe"), kit: of("kit"), install: of("install") };
})();

it.each(examples)("%s: places in words", (...example) => {
  fc.assert(
    fc.property(edits, (changes) => {
      for (const [{ reading, typing, locate }] of versions(example, changes)) {
        const owners = new Map(typing.declarations.map(({ node, kind, id }) => [node as Node, { kind, id }]));
        const walk = (node: Node, where: Whereabouts) => {
          const owner = owners.get(node);
          const here = owner ? { ownerKind: owner.kind, ownerId: owner.id.value, path: [] } : where;
          const below = (name: string) => ({ ...here, path: [...here.path, name] });
          expect(locate(node)).toEqual(here);
          if (node.kind === "list")
            for (const [index, one] of node.entries.entries()) walk(one, below(`#${index + 1}`));
          if (node.kind !== "map") return;
          for (const { key, value } of node.entries) {
            expect(locate(key)).toEqual(here);
            walk(value, below(key.text));
          }
        };
        walk(reading.root, { path: [] });
      }
    }),
    { numRuns },
  );
});

it("what is told again of the same place is the same problem", () => {
  const faulty = records[demo.clean]!.replace("gauge:", "gage:").replace(/length: [\d.]+ ft/, "length: 3");
  const before = loadRecord(demo.clean, "install", faulty);
  expect(before.problems.map(({ rule }) => rule)).toEqual(
    expect.arrayContaining(["key-unknown", "quantity-unit-missing"]),
  );
  const lastDigit = faulty.search(/\d\D*$/);
  const after = loadRecord(
    demo.clean,
    "install",
    `${faulty.slice(0, lastDigit)}7${faulty.slice(lastDigit + 1)}`,
    before,
  );
  expect(after).not.toBe(before);
  for (const problem of before.problems) expect(after.problems).toContain(problem);
});
