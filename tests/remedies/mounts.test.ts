/** A fastener becomes no larger, and a component goes no farther, than it takes. */
import { describe, expect, it } from "vitest";
import { mountExample } from "../../server/src/core/rules/mounts/mount-example";
import { cableExample, placementExample } from "../../server/src/core/rules/placement/placement-example";
import { faultsIn, remediesFor, titlesFor } from "./support";

describe("a mount", () => {
  // 600 lb forward at 18 g and 1.15 is 12,420 lbf on four bolts: 3105 lbf each. AN3 holds 2126, AN4 3682.
  const heavy = {
    weight: "600 lb",
    cg: "{ from-front: 6 in, from-left: 4 in, from-bottom: 0 in }",
    shelf: "thickness: 0.125 in, bearing-strength: 120 ksi, data: B9-53",
    keys: ", edge-distance: 1 in",
    size: "",
  };

  it("gets the next size of bolts that holds", () => {
    const [remedy] = remediesFor("fastener-over-shear", mountExample(heavy));
    expect(remedy!.title).toBe("Fasten RACK with 1/4 in fasteners");
    expect(faultsIn(remedy!.text)).not.toContain("fastener-over-shear");
  });

  it("gets none where larger bolts would be too thick for the sheet", () => {
    const thin = { ...heavy, shelf: "thickness: 0.040 in, bearing-strength: 900 ksi, data: B9-53" };
    expect(titlesFor("fastener-over-shear", mountExample(thin))).toEqual([]);
  });

  it("gets none where the strength is that of the old fastener", () => {
    const fastener = "{ kind: an-bolt, diameter: 3/16 in, shear: 2000 lbf, data: Bolt sheet }";
    expect(titlesFor("fastener-over-shear", mountExample({ ...heavy, fastener }))).toEqual([]);
  });

  it("gets the edge distance that is needed, rounded up in its own unit", () => {
    const near = mountExample({ keys: ", edge-distance: 8 mm" });
    // Two diameters of 3/16 in are 9.525 mm.
    const [remedy] = remediesFor("mount-edge-distance", near);
    expect(remedy!.title).toBe("Keep the fasteners of RACK 10 mm from the edge");
    expect(faultsIn(remedy!.text)).not.toContain("mount-edge-distance");
  });
});

describe("a component", () => {
  it("goes the shortest way out of what must be kept free, with the distance that is asked for", () => {
    const remedies = remediesFor("keep-out-entered", placementExample({ airframe: [cableExample("4 in")] }));
    // The rack ends at 6 in, the cable with its radius begins at 3.5 in, and 1 in must be kept.
    expect(remedies[0]!.title).toBe("Move RACK 3.5 in to the left, to -3.5 in");
    for (const { text } of remedies) expect(faultsIn(text)).not.toContain("keep-out-entered");
    for (const { text } of remedies) expect(faultsIn(text)).not.toContain("clearance-too-small");
  });

  it("is rounded away from what it has to keep clear of, in whole millimetres where these are written", () => {
    const rack = "arm: 3556 mm, butt-line: 0 mm, water-line: 508 mm";
    const text = placementExample({ rack, airframe: [cableExample("7 in")] });
    // Half an inch is short: 12.7 mm.
    expect(titlesFor("clearance-too-small", text)[0]).toBe("Move RACK 12.7 mm to the left, to -13 mm");
  });

  it("parts from another, and is moved nowhere where something else stands", () => {
    const text = placementExample({
      box: "arm: 152 in, butt-line: 0 in, water-line: 20 in",
      airframe: [
        "keep-outs: [{ id: DOOR, kind: door, box: { from: { arm: 155.5 in, butt-line: -40 in, water-line: 0 in }, to: { arm: 170 in, butt-line: 40 in, water-line: 60 in } }, clearance: 0.25 in, data: 52-10 }]",
      ],
    });
    const titles = titlesFor("components-overlap", text);
    expect(titles.length).toBeGreaterThan(0);
    expect(titles.join()).not.toContain("aft");
    expect(titles[0]).toMatch(/^Move BOX \S+ in (up|down), to /);
  });
});
