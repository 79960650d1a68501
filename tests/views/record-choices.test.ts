/** Airframes to choose from tell whether the kit may go into them, and why not. */
import { expect, it } from "vitest";
import { loadRecord } from "../../server/src/core/records/record";
import { recordChoice } from "../../server/src/core/views/record-choices";

const kit = kitWith(`
eligibility:
  - type: Type 9
    serials: [{ from: B9-0300, to: B9-0499 }]
    modifications: [MOD-7]
    incompatible: [MOD-31]`);

function kitWith(sections: string) {
  return loadRecord(
    "k.kit.yaml",
    "kit",
    `kit: { number: QSR-60, revision: C, name: Survey rack }${sections}`,
  );
}

function airframe(serial: string, modifications: string) {
  const aircraft = `aircraft: { type: Type 9, serial: ${serial}, kind: aeroplane, certification-basis: CAR 3 }`;
  return loadRecord("a.airframe.yaml", "airframe", `${aircraft}\nmodifications: [${modifications}]`);
}

it("a kit is told by its number and name, an airframe by its type and serial number", () => {
  expect(recordChoice(kit)).toEqual({ title: "QSR-60, Survey rack" });
  expect(recordChoice(airframe("B9-0417", ""))).toEqual({ title: "Type 9, B9-0417" });
  expect(recordChoice(loadRecord("x.install.yaml", "install", ""))).toBeUndefined();
});

it.each([
  ["B9-0417", "{ id: MOD-7 }", "eligible", undefined],
  ["B9-0417", "", "lacks-something", "requires modification MOD-7, which B9-0417 does not have"],
  [
    "B9-0117",
    "{ id: MOD-7 }",
    "not-eligible",
    "is not for serial number B9-0117; it is for B9-0300 to B9-0499",
  ],
  ["B9-0417", "{ id: MOD-7 }, { id: MOD-31 }", "not-eligible", "does not go with modification MOD-31"],
  ["C-3", "{ id: MOD-7 }", "unknown", "can't be held against"],
])("%s with modifications [%s] is %s", (serial, modifications, standing, why) => {
  const choice = recordChoice(airframe(serial, modifications), kit);
  expect(choice?.standing).toBe(standing);
  if (why) expect(choice?.why).toContain(why);
  else expect(choice?.why).toBeUndefined();
});

it("a kit that names no aircraft leaves it open", () => {
  expect(recordChoice(airframe("B9-0417", ""), kitWith(""))?.standing).toBe("unknown");
  expect(recordChoice(loadRecord("a.airframe.yaml", "airframe", ": ["), kit)?.standing).toBe("unknown");
});

it.each([
  ["of 14 V", "nominal: 14 V", "not-eligible"],
  ["of 28 V", "nominal: 28 V", "eligible"],
  ["that is not recorded", "buses: [{ id: MAIN }]", "eligible"],
])("a system %s is held against what the kit's components need", (_what, electrical, standing) => {
  const needing24 =
    "\ncomponents: [{ id: RACK, weight: 31 lb, least-voltage: 24 V, draws: [{ mode: run, current: 18 A }] }]";
  const aircraft = airframe("B9-0417", "{ id: MOD-7 }");
  const text = `${aircraft.text}\nelectrical: { ${electrical} }`;
  const choice = (sections: string) =>
    recordChoice(loadRecord("a.airframe.yaml", "airframe", text), kitWith(sections));
  const named = choice(`\neligibility: [{ type: Type 9 }]${needing24}`);
  expect(named?.standing).toBe(standing);
  if (standing === "not-eligible") {
    expect(named?.why).toBe("RACK needs 24 V, but the system of B9-0417 has 14 V at most.");
    // It is known of a kit that names no aircraft, too.
    expect(choice(needing24)?.standing).toBe(standing);
  }
});
