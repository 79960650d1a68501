/** Loss coefficients of openings and duct fittings. All of them rest on memory: they warn, and data go first. */
import type { Source } from "../source";
import { covered } from "./lookup";

export const lossSource: Source = {
  document: "Loss coefficients of duct fittings",
  standing: "memory",
  note: "record the coefficient from data where it is known",
};

/** On the velocity in the fitting's own segment; of a band the larger value. */
export const fittingLosses = {
  "sharp-entry": 0.5,
  "flanged-entry": 0.5,
  "bell-mouth": 0.05,
  "projecting-entry": 1.0,
  "bend-r1": 0.22,
  "bend-r1.5": 0.15,
  "bend-r2": 0.13,
  mitre: 1.2,
  "mitre-vaned": 0.3,
  "tee-straight": 0.2,
  "tee-branch": 1.0,
} as const;

/** Where air leaves into the open all of its velocity pressure is lost: derived, not from memory. */
export const exitLoss = covered(1, {
  document: "Fluid mechanics",
  standing: "derived",
  note: "the velocity pressure of a free jet is lost",
});
