import { placementExample } from "./placement-example";

/** What an example may want different about servicing; the rest is sound. */
interface ServiceParts {
  /** Keys of the panel's access. */
  readonly access?: string;
  /** Keys of the rack in the kit besides its weight. */
  readonly component?: string;
  /** Keys of the rack's placement besides its name and place. */
  readonly placement?: string;
}

/** The rack of the other examples, whose filter is changed at its left front through a door 20 in to the left. */
export function serviceExample(parts: ServiceParts = {}): string {
  const {
    access = "at: { arm: 140 in, butt-line: -20 in, water-line: 20 in }, reach: 18 in, data: B9-05",
    component = serviced("at: { from-front: 0 in, from-left: 0 in, from-bottom: 5 in }"),
    placement = ", served-through: [BAY-DOOR]",
  } = parts;
  const outline = "outline: { shape: rectangle, width: 16 in, height: 16 in, corner-radius: 1 in }";
  return placementExample({
    rack: `arm: 140 in, butt-line: 0 in, water-line: 20 in${placement}`,
    component,
    airframe: [
      "panels:",
      `  - { id: BAY-DOOR, ${outline}, access: { ${access} } }`,
      `  - { id: BELLY, ${outline}, access: { at: { arm: 130 in, butt-line: 0 in, water-line: 4 in }, reach: 16 in } }`,
    ],
  });
}

/** Keys of a rack of 20 by 12 by 10 in with one job. */
export function serviced(keys: string): string {
  return (
    "size: { length: 20 in, width: 12 in, height: 10 in }, cg: { from-front: 10 in, from-left: 6 in, from-bottom: 5 in }, " +
    `servicing: [{ what: change the filter, ${keys} }]`
  );
}
