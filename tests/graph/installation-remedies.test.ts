/** Where one change cures a fault of a line, a drain or a space, it is offered; and it is the smallest that does. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/src/core/check";
import { proveRemedy } from "../../server/src/core/remedies";
import { climateExample } from "../../server/src/core/rules/climate/climate-example";
import { drainExample, lineExample } from "../../server/src/core/rules/lines/line-example";
import { RecordShelf } from "../../server/src/core/shelf";

const file = "example.install.yaml";

function remedyOf(text: string, rule: string): string | undefined {
  const shelf = new RecordShelf({ resolve: () => undefined, text: () => text });
  const judgement = check(shelf.load(file)!, shelf);
  const finding = judgement.findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(`no finding of ${rule}`);
  return proveRemedy(finding, judgement, shelf)?.title;
}

const tube = "kind: tube, fluid: water, dash: 6, material: steel";
const nut = "table: NAVEDTRA 14018 Table 5-9, column: steel-tube";

describe("a proven remedy", () => {
  it.each([
    {
      rule: "line-bend-too-tight",
      text: lineExample({ line: `${tube}, bends: [{ radius: 20 mm }, { radius: 1 in }, { radius: 3 in }]` }),
      title: "Bend line L1 to no less than 34 mm",
    },
    {
      rule: "line-support-spacing",
      text: lineExample({ line: `${tube}, support-spacing: 60 cm` }),
      title: "Support line L1 every 50.8 cm",
    },
    {
      rule: "hose-slack",
      text: lineExample({ line: "kind: hose, fluid: water, dash: 6, length: 41 in, way: 40 in" }),
      title: "Make hose L1 42 in long",
    },
    {
      rule: "flare-nut-torque",
      text: lineExample({ line: `${tube}, fittings: [{ id: N1, torque: 20 N m, ${nut} }]` }),
      title: "Tighten flare nut N1 to 24.3 N m",
    },
    {
      rule: "flare-nut-torque",
      text: lineExample({ line: `${tube}, fittings: [{ id: N1, torque: 300 in lb, ${nut} }]` }),
      title: "Tighten flare nut N1 to 245 in lb",
    },
    {
      rule: "pass-through-fill",
      text: lineExample({
        line: tube,
        sections: ["pass-throughs: [{ id: PT1, hole: 0.4 in, grommet: true, lines: [L1] }]"],
      }),
      title: "Make the hole of PT1 0.5 in",
    },
    {
      rule: "drain-holds-water",
      text: drainExample([
        "at: pan, water-line: 20 in, arm: 100 in",
        "at: elbow, water-line: 18 in, arm: 104 in",
        "at: frame, water-line: 18.5 in, arm: 116 in",
        "at: outlet, water-line: 12 in, arm: 120 in",
      ]),
      // A quarter of an inch for the foot of run, and a little for rounding.
      title: "Lower 'frame' to 17.7 in",
    },
    {
      rule: "drain-slope-shallow",
      text: drainExample([
        "at: pan, water-line: 20 in, arm: 100 in",
        "at: outlet, water-line: 19.9 in, arm: 124 in",
      ]),
      title: "Lower 'outlet' to 19.4 in",
    },
    {
      rule: "cooling-capacity-short",
      text: climateExample({
        conditioning: "{ mode: run, does: cool, capacity: 1000 W }",
        keys: ["shades: [{ glazing: WINDOW, passes: 30 % }]"],
        climateCase: "outside: 35 degC, sun: 900 W/m2, shades: stowed",
      }),
      title: "Fit the shades of BAY in taxi",
    },
  ])("$rule: $title", ({ rule, text, title }) => {
    expect(remedyOf(text, rule)).toBe(title);
  });

  it("is not offered where the shades are not enough", () => {
    const text = climateExample({
      conditioning: "{ mode: run, does: cool, capacity: 500 W }",
      keys: ["shades: [{ glazing: WINDOW, passes: 30 % }]"],
      climateCase: "outside: 35 degC, sun: 900 W/m2, shades: stowed",
    });
    expect(remedyOf(text, "cooling-capacity-short")).toBeUndefined();
  });
});
