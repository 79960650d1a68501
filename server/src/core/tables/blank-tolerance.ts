import { covered } from "./lookup";

/** How far a flat blank may be off where its drawing gives no tolerance, in inches. */
export const blankTolerance = covered(1 / 32, {
  document: "Layout of sheet parts",
  standing: "common-practice",
  note: "1/32 in where a drawing gives no tolerance",
});
