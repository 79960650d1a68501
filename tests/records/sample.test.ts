/** What a record is told to write where something is missing makes sense as it stands. */
import { expect, it } from "vitest";
import { sampleOf } from "../../server/src/core/records/sample";
import { recordSchemas, type Schema } from "../../server/src/core/records/schema";

/** Every schema below one, by its path. */
function* below(schema: Schema, path: string): Iterable<readonly [string, Schema]> {
  yield [path, schema];
  if (schema.items) yield* below(schema.items, `${path}[]`);
  for (const [key, one] of Object.entries(schema.properties ?? {})) yield* below(one, `${path}.${key}`);
}

it("no sample of a line, a row or a box runs from a point to itself", () => {
  const lines = Object.entries(recordSchemas).flatMap(([kind, root]) =>
    [...below(root, kind)].filter(([, { properties }]) => properties?.from && properties.to),
  );
  const paths = lines.map(([path]) => path);
  expect(paths).toEqual(
    expect.arrayContaining([
      "airframe.panels[].stiffeners[]",
      "airframe.panels[].fastener-rows[]",
      "install.cutouts[].reinforcement.fasteners.lines[]",
    ]),
  );
  const same = lines.filter(([, { properties }]) => {
    const from = sampleOf(properties?.from);
    return from !== undefined && from === sampleOf(properties?.to);
  });
  expect(same.map(([path]) => path)).toEqual([]);
});
