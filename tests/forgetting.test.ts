/** What was derived of an earlier version goes with it: hours of typing must not fill the memory. */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, it } from "vitest";
import { check } from "../server/src/core/check";
import { climateOf, electricalOf, weightsOf } from "../server/src/core/graph/derivations";
import { assumed, derive } from "../server/src/core/graph/value";
import { RecordShelf } from "../server/src/core/shelf";
import { demo, demoRecords } from "./support/workspace";

setFlagsFromString("--expose-gc");
const collectGarbage = runInNewContext("gc") as () => void;

/** Of each version one digit is another, and each time of another section. */
const edits = [
  /length: (\d)/,
  /altitude: (\d)/,
  /weight: (\d)/,
  /arm: (\d)/,
  /gauge: (\d)/,
  /duration: (\d)/,
];

it("nothing keeps an earlier version of a project alive", { timeout: 120_000 }, async () => {
  const texts = new Map(Object.entries(demoRecords()));
  const shelf = new RecordShelf({
    resolve: (_, path) => (texts.has(path) ? path : undefined),
    text: (file) => texts.get(file),
  });
  const clean = texts.get(demo.clean)!;
  const versions = [clean, ...edits.map((place) => edited(clean, place))];
  expect(new Set(versions).size).toBe(versions.length);

  const remembered: { readonly of: string; readonly reference: WeakRef<object> }[] = [];
  const judge = (text: string) => {
    texts.set(demo.clean, text);
    const { project } = check(shelf.load(demo.clean)!, shelf);
    const parts = { project, electrical: electricalOf(project!), network: electricalOf(project!).network };
    const more = { weights: weightsOf(project!), climate: climateOf(project!) };
    return Object.entries({ ...parts, ...more }).map(([of, thing]) => ({
      of,
      reference: new WeakRef(thing!),
    }));
  };
  for (const [index, text] of versions.entries()) {
    const references = judge(text);
    // A part that this version shares with the next is alive with good reason: the last ones are not asked for.
    if (index < versions.length - 1)
      remembered.push(...references.map((one) => ({ ...one, of: `${one.of} ${index}` })));
    await new Promise((resolve) => setTimeout(resolve)); // what a weak reference gave stays until the task ends
  }
  const last: unknown[] = judge(versions.at(-1)!).map(({ reference }) => reference.deref());
  await new Promise((resolve) => setTimeout(resolve));
  collectGarbage();
  const alive = remembered.filter(({ reference }) => {
    const thing = reference.deref();
    return thing !== undefined && !last.includes(thing);
  });
  expect(alive.map(({ of }) => of)).toEqual([]);
});

it("a value lets go what it was computed with, and not what it tells of itself", async () => {
  const { value, computedWith } = computed();
  await new Promise((resolve) => setTimeout(resolve));
  collectGarbage();
  expect(computedWith.deref()).toBeUndefined();
  expect([value?.value, value?.formula, value?.inputs.map(({ symbol }) => symbol)]).toEqual([1, "a", ["a"]]);
});

function computed() {
  const version = { factor: 1 };
  const value = derive({
    subject: { kind: "aircraft", id: "aircraft" },
    quantity: "load-current",
    unit: "1",
    formula: "a",
    operands: { a: assumed("one", 1, "1", "for the test") },
    compute: ({ a }) => a * version.factor,
  });
  return { value, computedWith: new WeakRef(version) };
}

function edited(text: string, place: RegExp): string {
  return text.replace(place, (whole, digit: string) => whole.replace(digit, String((Number(digit) % 9) + 1)));
}
