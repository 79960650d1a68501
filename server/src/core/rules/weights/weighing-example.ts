import { everyLoadingExample } from "./every-loading-example";

/** An airframe whose weighing comes to its empty weight statement: 2412 lb at 87.0 in, unless a part differs. */
export function weighingExample(parts: { readonly nose?: string; readonly oil?: string } = {}): string {
  const { nose = "reading: 486.4 lb, tare: 4 lb", oil = "on-board: false" } = parts;
  return everyLoadingExample({
    airframe: [
      "  weighing:",
      "    dated: 2026-03-12",
      "    reference: 40 in",
      "    scales:",
      `      - { id: NOSE, ${nose}, arm: 17.0 in }`,
      "      - { id: LEFT-MAIN, reading: 970.8 lb, tare: 6 lb, offset: 64.5 in }",
      "      - { id: RIGHT-MAIN, reading: 970.8 lb, tare: 6 lb, offset: 64.5 in }",
      "    items:",
      `      - { id: oil, what: drainable-oil, ${oil}, weight: 15 lb, arm: -20 in }`,
    ].join("\n"),
  });
}
