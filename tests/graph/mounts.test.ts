/** Mounts in a record: which factors count, and how a component stands. */
import { describe, expect, it } from "vitest";
import { mountsOf } from "../../server/src/core/graph/derivations";
import type { QuantityName } from "../../server/src/core/graph/quantity-names";
import { mountExample } from "../../server/src/core/rules/mounts/mount-example";
import { judge } from "../remedies/support";

type Parts = Parameters<typeof mountExample>[0];

function mounts(parts: Parts) {
  return mountsOf(judge(mountExample(parts)).project!);
}

/** By direction, of the one mount; a shelf's value has none and stands under "". */
function valuesOf(quantity: QuantityName, parts: Parts): Record<string, number> {
  const values = mountsOf.values(judge(mountExample(parts)).project!);
  const found = values.filter((value) => value.quantity === quantity);
  return Object.fromEntries(found.map(({ condition, value }) => [condition ?? "", value]));
}

const stated = (kind: "limit" | "ultimate") => ({
  airframe: [
    `load-factors: [{ where: occupant-compartment, forward: 12 g, side: 3 g, up: 1 g, down: 4 g, aft: 1 g, stated: ${kind}, data: B9-53 }]`,
  ],
});

describe("load factors", () => {
  it("of an emergency landing are ultimate already; those of a manoeuvre are multiplied by 1.5 once", () => {
    const found = valuesOf("load-factor", {});
    // 23.561(b)(3) forward, side and up; down 1.5 times 3.8, and up 1.5 times 0.4 times 3.8 is less than 3.
    expect(found.forward).toBe(18);
    expect(found.side).toBe(4.5);
    expect(found.up).toBe(3);
    expect(found.down).toBeCloseTo(1.5 * 3.8, 12);
    expect(found.aft).toBeUndefined();
  });

  it("of the maker are multiplied where they are limit factors, and not where they are ultimate", () => {
    expect(valuesOf("load-factor", stated("ultimate")).forward).toBe(12);
    expect(valuesOf("load-factor", stated("limit")).forward).toBe(18);
    // The manoeuvre counts where it is greater.
    expect(valuesOf("load-factor", stated("ultimate")).down).toBeCloseTo(5.7, 12);
    expect(valuesOf("load-factor", stated("limit")).down).toBe(6);
  });

  it("of cargo-only aircraft are those of the manoeuvre", () => {
    const mount =
      "{ component: RACK, where: cargo-only, shelf: AFT-SHELF, fastener: { kind: an-bolt, diameter: 3/16 in } }";
    expect(Object.keys(valuesOf("load-factor", { mounts: [mount] }))).toEqual(["up", "down"]);
  });

  it("from memory make what is held against a recorded strength warn", () => {
    const fastener = "{ kind: other, diameter: 3/16 in, shear: 10 lbf, tension: 10 lbf, data: Screw sheet }";
    const severity = (parts: Parts) =>
      judge(mountExample({ fastener, ...parts })).findings.find(({ rule }) => rule === "fastener-over-shear")
        ?.severity;
    expect(severity({})).toBe("error");
    expect(severity({ category: "utility", document: ", load-factors: AC 43.13-2B" })).toBe("warning");
  });
});

describe("the fitting factor", () => {
  it("is in the load unless the mount was proven by test or rests on test data", () => {
    expect(valuesOf("mount-load", {}).forward).toBeCloseTo(15 * 18 * 1.15, 9);
    for (const fitting of ["proven-by-test", "test-data"]) {
      expect(valuesOf("mount-load", { keys: `, fitting: ${fitting}` }).forward).toBeCloseTo(15 * 18, 9);
    }
  });
});

// 14 CFR 25.561(c)(2): local attachments of items that are often taken out hold 1.33 times the load. 25.561(b)(3): 9 g.
describe("the factor of frequent removal", () => {
  const forward = (basis: string, isOften: boolean) =>
    valuesOf("mount-load", { basis, keys: `, frequently-removed: ${isOften}` }).forward;

  it("is in the load of a part 25 aircraft, beside the fitting factor", () => {
    expect(forward("14 CFR 25", true)).toBeCloseTo(15 * 9 * 1.15 * 1.33, 9);
    expect(forward("14 CFR 25", false)).toBeCloseTo(15 * 9 * 1.15, 9);
  });

  it("is not asked for by another basis", () => {
    expect(forward("14 CFR 23 before Amdt 23-64", true)).toBeCloseTo(15 * 18 * 1.15, 9);
  });
});

describe("the air's pull outside", () => {
  const outside = (airLoad: string, where = "external") => ({
    category: "utility",
    document: ", load-factors: AC 43.13-2B",
    mounts: [
      `{ component: RACK, where: ${where}, shelf: AFT-SHELF, fastener: { kind: an-bolt, diameter: 3/16 in }, edge-distance: 0.5 in${airLoad} }`,
    ],
  });
  const box =
    ", air-load: { kind: other, area: 0.5 ft2, airspeed: 200 mph, coefficient: 1.1, data: Drag test }";

  it("is the dynamic pressure of the airspeed on the area, as ultimate load, with the fitting factor", () => {
    // 0.00256 lbf/ft2 for each mph squared: 102.3 lbf/ft2 on half a square foot, times 1.1.
    const { aft } = valuesOf("air-load", outside(box));
    expect(Math.abs(aft! / (0.00256 * 200 ** 2 * 0.5 * 1.1) - 1)).toBeLessThan(0.002);
    expect(valuesOf("mount-load", outside(box)).aft).toBeCloseTo(1.5 * aft! * 1.15, 9);
    // Forward it is not counted: it would help.
    expect(valuesOf("mount-load", outside(box)).forward).toBeCloseTo(2 * 15 * 1.15, 9);
  });

  it("adds to what an inertia load pulls aft", () => {
    const airframe = [
      "load-factors: [{ where: external, forward: 2 g, aft: 3 g, stated: ultimate, data: B9-53 }]",
    ];
    const found = { ...outside(box), airframe };
    const { aft } = valuesOf("air-load", found);
    expect(valuesOf("mount-load", found).aft).toBeCloseTo((3 * 15 + 1.5 * aft!) * 1.15, 9);
  });

  it("is none inside, and asked for where it is not known", () => {
    expect(valuesOf("air-load", outside(box, "occupant-compartment"))).toEqual({});
    expect(mounts(outside("")).mounts[0]!.missing).toEqual(["air-load"]);
    const shapeless = ", air-load: { kind: other, area: 0.5 ft2, airspeed: 200 mph }";
    expect(mounts(outside(shapeless)).mounts[0]!.missing).toEqual(["air-load: coefficient"]);
    expect(valuesOf("air-load", outside(shapeless))).toEqual({});
  });

  it("of an antenna is by the circular's formula, from memory, so that what rests on it warns", () => {
    const load = (kind: string) => ({
      airframe: ["load-factors: [{ where: external, forward: 1 g, stated: ultimate, data: B9-53 }]"],
      mounts: [
        "{ component: RACK, where: external, shelf: AFT-SHELF, edge-distance: 0.5 in, " +
          "fastener: { kind: other, diameter: 3/16 in, shear: 10 lbf, tension: 10 lbf, data: Screw sheet }, " +
          `air-load: { kind: ${kind}, area: 2 ft2, airspeed: 250 mph } }`,
      ],
    });
    expect(valuesOf("air-load", load("antenna")).aft).toBeCloseTo(0.000327 * 2 * 250 ** 2, 9);
    const severities = (kind: string) =>
      judge(mountExample(load(kind)))
        .findings.filter(({ rule }) => rule === "fastener-over-shear")
        .map(({ severity }) => severity);
    expect(severities("antenna")).toEqual(["warning"]);
    expect(severities("other, coefficient: 1.1")).toEqual(["error"]);
  });
});

describe("how a component stands", () => {
  const long = { cg: "{ from-front: 5 in, from-left: 4.5 in, from-bottom: 4 in }" };
  // All factors alike, so that only the way it stands tells.
  const alike = {
    ...long,
    airframe: [
      "load-factors: [{ where: occupant-compartment, forward: 9 g, side: 9 g, up: 9 g, down: 9 g, aft: 9 g, stated: ultimate, data: B9-53 }]",
    ],
  };
  const placed = (keys: string) => ({ ...alike, placement: `{ component: RACK, arm: 142 in${keys} }` });

  it("matters for its forces, and where it is does not", () => {
    const straight = valuesOf("fastener-tension", placed(""));
    expect(valuesOf("fastener-tension", { ...alike, placement: "{ component: RACK, arm: 90 in }" })).toEqual(
      straight,
    );
    expect(valuesOf("fastener-tension", placed(", turn: 360 deg")).forward).toBeCloseTo(straight.forward!, 9);
    const turned = valuesOf("fastener-tension", placed(", turn: 180 deg"));
    expect(turned.forward).toBeCloseTo(straight.aft!, 9);
    expect(turned.aft).toBeCloseTo(straight.forward!, 9);
    const across = valuesOf("fastener-tension", placed(", turn: 90 deg"));
    expect(across.side).toBeCloseTo(Math.max(straight.forward!, straight.aft!), 9);
    expect(turned.side).toBeCloseTo(straight.side!, 9);
  });

  it("on its head, up pulls where down did", () => {
    const standing = valuesOf("fastener-tension", placed(""));
    const hanging = valuesOf("fastener-tension", placed(", up: bottom"));
    expect(hanging.down).toBeCloseTo(standing.up!, 9);
    expect(hanging.forward).toBeCloseTo(standing.forward!, 9);
  });
});

describe("a shelf", () => {
  it("carries the kit, what stays on it and what is said to be, and not what is taken out", () => {
    const airframe = [
      "equipment: [{ id: radio, weight: 8 lb, arm: 140 in, shelf: AFT-SHELF }, { id: tray, weight: 3 lb, arm: 140 in, shelf: AFT-SHELF }]",
    ];
    const shelf = "thickness: 0.05 in, load-limit: 60 lb, carried: 2 lb";
    const text = mountExample({ airframe, shelf });
    const loadOf = (record: string) => mountsOf(judge(record).project!).shelves[0]!.load!.value.value;
    expect(loadOf(text)).toBe(15 + 8 + 3 + 2);
    expect(loadOf(`${text}removed: [{ equipment: tray }]\n`)).toBe(15 + 8 + 2);
  });

  it("is not summed while a mount can't be read", () => {
    const mount =
      "{ component: RACK, where: occupant-compartment, shelf: AFT-SHELF, fastener: { kind: other, diameter: 1 in } }";
    const whole = mounts({ mounts: [mount] });
    const broken = mounts({ mounts: [mount, "12"] });
    expect(whole.shelves[0]!.load).toBeDefined();
    expect(broken.shelves[0]!.load).toBeUndefined();
  });
});
