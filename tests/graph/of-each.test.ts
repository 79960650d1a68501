/** What is done with each thing of a list is done once, for as long as an edit leaves the thing where it is. */
import { expect, it } from "vitest";
import { ofEach } from "../../server/src/core/graph/recall";
import type { Project } from "../../server/src/core/project";

interface Thing {
  readonly name: string;
}

const [a, b, c, d] = ["a", "b", "c", "d"].map((name): Thing => ({ name }));

/** Gives each thing twice, and notes which it was given. */
function session() {
  let shown: readonly Thing[] = [];
  let prefix = "";
  const done: string[] = [];
  const each = ofEach(
    () => shown,
    ({ name }, before) => {
      done.push(name);
      return name === "d" ? [] : [`${before}${name}`, `${before}${name}`];
    },
    () => prefix,
  );
  return (things: readonly (Thing | undefined)[], shared = "") => {
    shown = things as readonly Thing[];
    prefix = shared;
    const results = each({} as Project);
    return { results, done: done.splice(0) };
  };
}

it.each([
  ["the same things", [a, b, c], []],
  ["another in place of one", [a, d, c], ["d"]],
  ["one more in front", [d, a, b, c], ["d"]],
  ["one more between", [a, d, b, c], ["d"]],
  ["one more behind", [a, b, c, d], ["d"]],
  ["one less in front", [b, c], []],
  ["one less between", [a, c], []],
  ["one less behind", [a, b], []],
  ["none", [], []],
  ["the same thing twice", [a, a, b, c], []],
])("%s", (_, things, done) => {
  const act = session();
  expect(act([a, b, c])).toEqual({ results: ["a", "a", "b", "b", "c", "c"], done: ["a", "b", "c"] });
  const fresh = session()(things).results;
  expect(act(things)).toEqual({ results: fresh, done });
});

it("does all again with something else that they share", () => {
  const act = session();
  act([a, b]);
  expect(act([a, b], "-")).toEqual({ results: ["-a", "-a", "-b", "-b"], done: ["a", "b"] });
});
