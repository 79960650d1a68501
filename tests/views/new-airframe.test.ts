/** A new airframe record: every section that one needs, as blanks that the checker lists, and nothing else. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { loadRecord } from "../../server/src/core/records/record";
import { recordSchemas } from "../../server/src/core/records/schema";
import { newAirframe } from "../../server/src/core/views/new-airframe";
import { blanksOf } from "../support/blanks";

describe("a new airframe record", () => {
  const text = newAirframe();
  const record = loadRecord("new.airframe.yaml", "airframe", text);

  it("every blank is found as missing, and nothing else", () => {
    const { findings } = check(record, { resolve: () => undefined, load: () => undefined });
    expect(findings.map(({ rule }) => rule)).toEqual(blanksOf(text).map(() => "value-missing"));
    expect(blanksOf(text).length).toBeGreaterThan(20);
  });

  it("names every section of the schema once, the ones that a record needs among those begun", () => {
    const begun = [...text.matchAll(/^([\w-]+):/gm)].map(([, key]) => key!);
    const named = [...text.matchAll(/^# - ([\w-]+):/gm)].map(([, key]) => key!);
    const all = Object.keys(recordSchemas.airframe.properties ?? {});
    expect([...begun, ...named].toSorted()).toEqual(all.toSorted());
    expect(begun).toEqual(expect.arrayContaining([...(recordSchemas.airframe.required ?? [])]));
  });
});
