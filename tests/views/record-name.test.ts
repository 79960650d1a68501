import { expect, test } from "vitest";
import { recordName } from "../../client/src/record-name";

test.each([
  ["new.airframe.yaml", "new.airframe.yaml"],
  ["new.airframe.yml", "new.airframe.yml"],
  ["b9-0500", "b9-0500.airframe.yaml"],
  [" b9-0500 ", "b9-0500.airframe.yaml"],
  ["b9-0500.yaml", "b9-0500.airframe.yaml"],
  ["b9-0500.airframe", "b9-0500.airframe.yaml"],
  ["type 9.2", "type 9.2.airframe.yaml"],
  ["", undefined],
  [".airframe.yaml", undefined],
  ["rack.kit.yaml", undefined],
  ["rack.install", undefined],
  ["other/b9", undefined],
  ["..\\b9", undefined],
])("a new airframe that is called %j", (typed, name) => {
  expect(recordName(typed, "airframe")).toBe(name);
});
