/** A new install record: what can be known is filled in, and the checker lists exactly the rest. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { loadRecord } from "../../server/src/core/records/record";
import type { AirframeRecord, KitRecord } from "../../server/src/core/records/types";
import { RecordShelf } from "../../server/src/core/shelf";
import { newInstall } from "../../server/src/core/views/new-install";
import { blanksOf } from "../support/blanks";
import { root } from "../support/programs";

const demo = join(root, "client/demo");
const shelf = new RecordShelf({
  resolve: (_from, path) => path,
  text: (name) => readFileSync(join(demo, name), "utf8"),
});
const kitPath = "survey-rack.kit.yaml";
const airframePath = "brackenfell-0417.airframe.yaml";

function begin(kit = recordOf(kitPath) as KitRecord, airframe = recordOf(airframePath) as AirframeRecord) {
  return newInstall({ kit, airframe, kitPath, airframePath });
}

function recordOf(path: string) {
  return shelf.load(path)!.typing.typed.record;
}

describe("a new install record of the demo's kit and airframe", () => {
  const text = begin();
  const { findings, assessments } = check(loadRecord("new.install.yaml", "install", text), shelf);

  it("every blank is found as missing, and no other error", () => {
    const rulesOf = (wanted: string) =>
      findings.filter(({ severity }) => severity === wanted).map(({ rule }) => rule);
    expect(rulesOf("warning")).toEqual(blanksOf(text).map(() => "value-still-blank"));
    // Whether what the kit requires is done before or together with it is for the engineer to say.
    expect(rulesOf("error")).toEqual(["modification-required"]);
    expect(blanksOf(text).length).toBeGreaterThan(20);
  });

  it("the same blanks are errors once the record says that it is more than in work", () => {
    const draft = text.replace(/status: in-work.*/, "status: draft");
    const errors = check(loadRecord("new.install.yaml", "install", draft), shelf).findings;
    expect(errors.filter(({ rule }) => rule === "value-missing")).toHaveLength(blanksOf(text).length);
    expect(errors.filter(({ rule }) => rule === "value-still-blank")).toEqual([]);
  });

  it("loads that run and that no wire leads to yet are not taken for none", () => {
    expect(assessments.filter(({ value }) => value.quantity.startsWith("source-demand"))).toEqual([]);
  });

  it("what the kit and the airframe say is filled in", () => {
    expect(text).toContain("title: QSR-60 in B9-0417");
    expect(text).toContain("failed: [ALT1]");
    expect(text).toContain("device: CB-30"); // 24 A, the rack's largest draw
    expect(text).toContain("device: CB-50"); // 1100 W at 28 V less the drop that is allowed: 40.7 A
    expect(text).toContain("id: F-FANS"); // a fuse
    expect(text).toContain("to: GND-AFT");
    expect(text).toContain("mounted-on:  # MAIN or AUX");
    expect(text).toContain("RACK:  # standby or survey");
  });
});

it("an empty kit and an empty airframe give a record that asks for the rest", () => {
  const empty = (kind: "kit" | "airframe") => loadRecord(`x.${kind}.yaml`, kind, "").typing.typed.record;
  const text = begin(empty("kit") as KitRecord, empty("airframe") as AirframeRecord);
  expect(text).not.toMatch(/undefined|null/);
  expect(blanksOf(text)).toHaveLength(3);
});
