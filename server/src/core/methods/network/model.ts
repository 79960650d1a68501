/**
 * What the solver is given and what it answers. Plain numbers: ohm, volt, ampere, watt.
 *
 * Nodes are 0 … nodeCount − 1, and `reference`. Branches, loads and sources are known by their index in the
 * topology; every list of a condition or an answer is in that order.
 */

/** The airframe ground, at 0 V. */
export const reference = -1;

export interface Terminals {
  readonly from: number;
  readonly to: number;
}

/** What is connected to what, whatever is switched on. */
export interface Topology {
  readonly nodeCount: number;
  /** Wires, contactors, shunts, breakers. Several may lie between the same nodes. */
  readonly branches: readonly Terminals[];
  /** `from` is the fed side: current is drawn there and comes back at `to`. */
  readonly loads: readonly Terminals[];
  /** Between `reference` and a node; a wired return of a source is a branch at the load's side. */
  readonly sources: readonly { readonly node: number }[];
}

/** What a load draws: a constant current (≥ 0), through a constant resistance (> 0), a constant power (≥ 0). */
export type Load =
  | { readonly kind: "current"; readonly amps: number }
  | { readonly kind: "resistance"; readonly ohms: number }
  | { readonly kind: "power"; readonly watts: number };

export interface Source {
  /** Regulated or open-circuit voltage, ≥ 0. */
  readonly volts: number;
  /** Internal resistance; 0 is stiff. */
  readonly ohms: number;
  /** At this current the source stops holding its voltage and gives just that current; none when left out. */
  readonly mostAmps?: number;
  /** Never absorbs current: an alternator, a battery that is not to be charged. */
  readonly oneWay: boolean;
}

/** One state of the network. */
export interface Condition {
  /** By branch: `leastOhms` or more; 0 is a rigid connection, Infinity is open. */
  readonly ohms: ArrayLike<number>;
  /** By load; undefined is switched off. */
  readonly loads: readonly (Load | undefined)[];
  /** By source; undefined is switched off or failed. */
  readonly sources: readonly (Source | undefined)[];
  /**
   * Resistance of a branch at a current's size, for wires that warm: `leastOhms` or more, and continuous.
   * Asked only for branches that are neither rigid nor open; `ohms` is then where the search starts.
   */
  readonly resistanceAt?: (branch: number, amps: number) => number;
}

/** `holding` its voltage (less the drop inside), `at-limit` of its current, `off`: giving nothing. */
export type SourceState = "holding" | "at-limit" | "off";

/** Nodes that belong together and that no source reaches, or from which no way leads back to one. */
export interface Island {
  readonly nodes: readonly number[];
  /** Loads that are switched on and stay dead because of it. */
  readonly loads: readonly number[];
  readonly lacks: "source" | "return";
}

/** Where a current or voltage is undetermined, the lists hold NaN. */
export interface Solved {
  readonly kind: "solved";
  /** Volts by node; undetermined where nothing ties the node to the reference. */
  readonly potentials: Float64Array;
  /** By branch, along `from` → `to`; undetermined in a loop of rigid connections, where anything is possible. */
  readonly branchAmps: Float64Array;
  /** By branch, as `resistanceAt` left them. */
  readonly branchOhms: Float64Array;
  /** By load, along `from` → `to`; 0 for a load that is off or dead. */
  readonly loadAmps: Float64Array;
  readonly loadVolts: Float64Array;
  /** By source, into the network; undetermined for stiff sources of one voltage rigidly in parallel. */
  readonly sourceAmps: Float64Array;
  readonly sourceStates: readonly SourceState[];
  readonly islands: readonly Island[];
  /** Linear systems solved. */
  readonly iterations: number;
  readonly residual: Residual;
}

/** How far the answer is from the equations. */
export interface Residual {
  /** The largest sum of currents at a node, which Kirchhoff wants to be 0. */
  readonly amps: number;
  /** The largest relative change of a resistance that `resistanceAt` still asks for. */
  readonly ohms: number;
}

export type NoSolution = { readonly kind: "no-solution" } & (
  | { readonly reason: "invalid-input"; readonly problems: readonly InputProblem[] }
  /** Stiff sources without a current limit, rigidly tied to ground or to another voltage. */
  | { readonly reason: "unlimited-current"; readonly sources: readonly number[] }
  /**
   * The loads ask for more than the resistances let through. `load` is the one with the lowest `ratio`: its
   * voltage with the currents that all ask for at the last iterate, over its voltage when only resistive
   * loads are on; 0 when it would be below. It ranks, and is no state that the network could be in.
   */
  | { readonly reason: "voltage-collapse"; readonly load: number; readonly ratio: number }
  /** Loads ask for more than these sources give at their limits, and no other source reaches them. */
  | { readonly reason: "overloaded"; readonly sources: readonly number[] }
  /** `residual` as it was left; not always a finite number. */
  | { readonly reason: "did-not-converge"; readonly iterations: number; readonly residual: Residual }
);

export type NetworkAnswer = Solved | NoSolution;

export type Part = "branch" | "load" | "source";

/** What is wrong with the input: facts, not sentences. */
export type InputProblem =
  | { readonly kind: "node-count-impossible"; readonly value: number }
  | { readonly kind: "node-unknown"; readonly of: Part; readonly index: number; readonly node: number }
  | { readonly kind: "count-differs"; readonly of: Part; readonly expected: number; readonly given: number }
  | {
      readonly kind: "figure-impossible";
      readonly of: Part;
      readonly index: number;
      readonly figure: "ohms" | "volts" | "amps" | "watts" | "mostAmps" | "resistanceAt";
      readonly value: number;
    };
