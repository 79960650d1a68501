import type { Source } from "../source";
import { advisoryCircular } from "./electrical-documents";
import { groundReturnLimitOhms, groundReturnSource } from "./voltage-drop-limits";

/**
 * - `jumper-connection`: each connection of a bonding jumper
 * - `equipment-frame`: exposed conducting frame of equipment to structure
 * - `ground-return`: generator's or battery's ground point to a device's ground terminal
 * - `static-bond`: isolated conducting part that charges up, to structure
 */
export type Bond = "jumper-connection" | "equipment-frame" | "ground-return" | "static-bond";

export interface BondingLimit {
  readonly ohms: number;
  /** Whether the limit itself is allowed. */
  readonly isInclusive: boolean;
  readonly source: Source;
  /** What a reader of the number has to know besides its source. */
  readonly note?: string;
}

/** Largest resistance of a bond. */
export const bondingLimits: Readonly<Record<Bond, BondingLimit>> = {
  "jumper-connection": {
    ohms: 0.003,
    isInclusive: true,
    source: advisoryCircular("par. 11-189", "published"),
  },
  "equipment-frame": {
    ohms: 0.0025,
    isInclusive: false,
    source: advisoryCircular("par. 11-188f", "published"),
    note: "A ground wire to a built-in ground terminal suffices.",
  },
  "ground-return": { ohms: groundReturnLimitOhms, isInclusive: true, source: groundReturnSource },
  "static-bond": {
    ohms: 1e6,
    isInclusive: false,
    source: advisoryCircular(
      "par. 11-187c",
      "memory",
      "that such parts are bonded was read, the value was not",
    ),
  },
};

/** An isolated conducting part that is larger in both, and subject to charging, must be bonded. */
export const staticBondSize = {
  areaSquareInches: 3,
  lengthInches: 3,
  source: advisoryCircular("par. 11-187c", "published"),
} as const;

/** Hours after cleaning to bare metal in which a bond's surroundings must be refinished. */
export const refinishHours = {
  value: 24,
  source: advisoryCircular("par. 11-189a and b", "published"),
} as const;
