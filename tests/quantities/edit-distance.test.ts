import { expect, test } from "vitest";
import { editDistance } from "../../server/src/core/quantities/edit-distance";
import { fc } from "../support/random";

test.each<[string, string, number]>([
  ["", "", 0],
  ["", "psi", 3],
  ["psi", "psi", 0],
  ["spi", "psi", 1],
  ["pouds", "pounds", 1],
  ["kitten", "sitting", 3],
])("from %j to %j: %d", (a, b, distance) => {
  expect(editDistance(a, b)).toBe(distance);
});

test("is the same both ways, and zero only between equals", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 8 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const distance = editDistance(a, b);
      expect(distance).toBe(editDistance(b, a));
      expect(distance === 0).toBe(a === b);
      expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
    }),
  );
});
