import { recordExample } from "../example-record";

/** A sound angle of 0.064 in sheet, 1.5 by 2 in, bent by 90 deg round 0.19 in; its keys changed or added. */
export function bracketExample(changes: Readonly<Record<string, string>> = {}): string {
  const keys: Readonly<Record<string, string>> = {
    id: "BK-1",
    material: "2024-T3",
    thickness: "0.064 in",
    legs: "[1.5 in, 2 in]",
    bends: "[{ radius: 0.19 in, angle: 90 deg }]",
    "least-radius": "0.19 in",
    data: "Brackenfell repair data B9-51",
    ...changes,
  };
  const written = Object.entries(keys).filter(([, value]) => value !== "");
  return recordExample({
    sections: `brackets:\n  - { ${written.map(([key, value]) => `${key}: ${value}`).join(", ")} }\n`,
  });
}
