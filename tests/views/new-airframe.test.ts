/** A new airframe record: every section that one needs, as blanks that the checker lists, and nothing else. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { type LoadedRecord, loadRecord } from "../../server/src/core/records/record";
import { recordSchemas } from "../../server/src/core/records/schema";
import { newAirframe } from "../../server/src/core/views/new-airframe";
import { blanksOf } from "../support/blanks";

describe("a new airframe record", () => {
  const text = newAirframe();
  const record = loadRecord("new.airframe.yaml", "airframe", text);

  const found = (record: LoadedRecord) =>
    check(record, { resolve: () => undefined, load: () => undefined }).findings.map(({ rule }) => rule);

  it("every blank is found as one, and nothing else", () => {
    expect(found(record)).toEqual(blanksOf(text).map(() => "value-still-blank"));
    expect(blanksOf(text).length).toBeGreaterThan(20);
  });

  it("is not finished while it has blanks: they are errors once it is in use", () => {
    const inUse = loadRecord("new.airframe.yaml", "airframe", text.replace("in-work", "in-use"));
    expect(found(inUse)).toEqual(blanksOf(text).map(() => "value-missing"));
  });

  it("names every section of the schema once, the ones that a record needs among those begun", () => {
    const begun = [...text.matchAll(/^([\w-]+):/gm)].map(([, key]) => key!);
    const named = [...text.matchAll(/^# - ([\w-]+):/gm)].map(([, key]) => key!);
    const all = Object.keys(recordSchemas.airframe.properties ?? {});
    expect([...begun, ...named].toSorted()).toEqual(all.toSorted());
    expect(begun).toEqual(expect.arrayContaining([...(recordSchemas.airframe.required ?? [])]));
  });
});
