/** A bundle that is too full for one of its wires: every way out is tried by the whole model. */
import { describe, expect, it } from "vitest";
import { electricalOf } from "../../server/src/core/graph/derivations";
import { circuitExample } from "../../server/src/core/rules/wires/circuit-example";
import { bundledWire, faultsIn, fullBundle, judge, remediesFor, titlesFor } from "./support";

const bundlesIn = (text: string) => text.slice(text.indexOf("bundles:"), text.indexOf("protection:"));

describe("a wire that carries too much in its bundle", () => {
  it("is made thicker, run by itself, or taken into a second bundle, the smallest that is enough of each", () => {
    const remedies = remediesFor("wire-over-ampacity", fullBundle());
    expect(remedies.map(({ title }) => title)).toEqual([
      "Make wire P1 10 AWG",
      "Run wire P1 by itself, outside bundle B1",
      "Run P1 and P2 as a bundle B2 of their own",
    ]);
    for (const { text, revealed } of remedies) {
      expect(revealed).toBe(0);
      const about = judge(text).findings.filter(
        ({ rule, subject }) => rule === "wire-over-ampacity" && subject === "wire P1",
      );
      expect(about).toEqual([]);
    }
    const [, alone, split] = remedies;
    expect(bundlesIn(alone!.text)).toBe("bundles:\n  - { id: B1, wires: 3, loading: 60 % }\n");
    expect(alone!.text).toContain(
      "{ id: P1, from: CB-RACK, to: RACK, gauge: 12 AWG, length: 4 ft, rating: 150 degC }",
    );
    expect(bundlesIn(split!.text)).toBe(
      "bundles:\n  - { id: B1, wires: 2, loading: 60 % }\n  - { id: B2, wires: 2, loading: 60 % }\n",
    );
    expect(split!.text.match(/bundle: B2/g)).toHaveLength(2);
  });

  it("takes the ambient along, and a name that is free", () => {
    const text = fullBundle(
      "{ id: B1, wires: 4, loading: 60 %, ambient: 50 degC }\n  - { id: B2, wires: 1, loading: 20 % }",
    );
    const split = remediesFor("wire-over-ampacity", text).find(({ title }) => title.includes("of their own"));
    expect(bundlesIn(split!.text)).toContain("\n  - { id: B3, wires: 2, loading: 60 %, ambient: 50 degC }\n");
  });

  it("is told what stays a statement where wires of the bundle are in no record", () => {
    const titles = titlesFor("wire-over-ampacity", fullBundle("{ id: B1, wires: 6, loading: 60 % }"));
    expect(titles).toContain(
      "Run wire P1 by itself, outside bundle B1; the loading stated for B1 is kept, and is yours to confirm",
    );
  });

  it("states the loading anew where the split raises it", () => {
    const loadingIn = (text: string) =>
      electricalOf(judge(text).project!).bundles.map(
        ({ id, states }) => [id, states[0]!.loading.value] as const,
      );
    const text = fullBundle("{ id: B1, wires: 4, loading: 60 % }", "44 A");
    for (const remedy of remediesFor("wire-over-ampacity", text)) {
      expect(faultsIn(remedy.text)).not.toContain("bundle-loading-understated");
      for (const [, loading] of loadingIn(remedy.text)) expect(loading).toBeGreaterThan(0);
    }
  });
});

it("a breaker above its wire is mended by the same ways, or by a smaller one where it holds the load", () => {
  const text = fullBundle("{ id: B1, wires: 4, loading: 60 % }", "20 A").replace(
    "{ id: CB-5,",
    "{ id: CB-30, kind: breaker, rating: 30 A }, { id: CB-5,",
  );
  expect(titlesFor("protection-above-wire", text)).toEqual([
    "Take CB-30 for CB-RACK",
    "Make wire P1 10 AWG",
    "Run wire P1 by itself, outside bundle B1",
    "Run P1 and P2 as a bundle B2 of their own",
  ]);
});

describe("a bundle of more wires than is usual", () => {
  const many = (count: number, recorded: number) =>
    circuitExample({
      bundle: `{ id: B1, wires: ${count}, loading: 20 % }`,
      wires: Array.from({ length: recorded }, (_, index) => bundledWire(`P${index + 1}N`, "RACK", "GND-AFT")),
    });

  it("gives so many wires to a second one that both are usual", () => {
    const [remedy] = remediesFor("bundle-too-large", many(79, 10));
    expect(remedy!.title).toMatch(
      /^Run P7N, P8N, P9N and P10N as a bundle B2 of their own; the loading stated/,
    );
    expect(bundlesIn(remedy!.text)).toBe(
      "bundles:\n  - { id: B1, wires: 75, loading: 20 % }\n  - { id: B2, wires: 4, loading: 20 % }\n",
    );
  });

  it("can't, where too few of its wires are in the record", () => {
    expect(remediesFor("bundle-too-large", many(90, 10))).toEqual([]);
  });
});

it("what is stated of a bundle is made to agree with its wires", () => {
  expect(
    remediesFor("bundle-count-too-small", fullBundle("{ id: B1, wires: 2, loading: 60 % }"))[0],
  ).toMatchObject({
    title: "Count 4 wires in B1",
    edits: [{ newText: "4" }],
    revealed: expect.any(Number),
  });
  const [stated] = remediesFor(
    "bundle-loading-understated",
    fullBundle("{ id: B1, wires: 4, loading: 20 % }"),
  );
  expect(stated!.title).toMatch(/^State that B1 is loaded to \d+ %$/);
  expect(faultsIn(stated!.text)).not.toContain("bundle-loading-understated");
});

it("a wire in a bundle that no figure covers is brought to where one does", () => {
  const titles = titlesFor("wire-not-covered", fullBundle("{ id: B1, wires: 40, loading: 60 % }", "20 A"));
  expect(titles).toEqual([
    expect.stringMatching(/^Run wire P1 by itself, outside bundle B1; the loading stated/),
    expect.stringMatching(/^Run P1 and P2 as a bundle B2 of their own; the loading stated/),
  ]);
});
