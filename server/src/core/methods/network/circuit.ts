import type { Condition, Topology } from "./model";
import { Nodal, type Pivots } from "./nodal";
import type { Plan } from "./plan";
import type { Reach } from "./reach";
import { startPositions, stepOf, type Tie } from "./ties";

/** A load that can draw a current which does not follow from a resistance. */
export interface Drawing {
  readonly load: number;
  readonly element: number;
  /** Constant current; 0 for a load of constant power. */
  readonly amps: number;
  /** Constant power; 0 for a load of constant current. */
  readonly watts: number;
}

/** A condition at work: the linear network, and where its sources stand. */
export class Circuit {
  readonly nodal: Nodal;
  /** By tie; see ties.ts. */
  readonly positions: Int32Array;
  readonly drawing: readonly Drawing[];
  readonly power: readonly Drawing[];
  private readonly mostVolts: number;

  constructor(
    topology: Topology,
    condition: Condition,
    readonly plan: Plan,
    readonly ties: readonly Tie[],
    readonly reach: Reach,
  ) {
    this.nodal = new Nodal(plan, reach.floating);
    this.positions = startPositions(ties);
    const drawing: Drawing[] = [];
    condition.loads.forEach((load, index) => {
      const element = topology.branches.length + index;
      if (load?.kind === "resistance") this.nodal.siemens[element] = 1 / load.ohms;
      else if (!load || !reach.alive[index]) return;
      else if (load.kind === "current") drawing.push({ load: index, element, amps: load.amps, watts: 0 });
      else drawing.push({ load: index, element, amps: 0, watts: load.watts });
    });
    this.drawing = drawing.filter(({ amps, watts }) => amps > 0 || watts > 0);
    this.power = this.drawing.filter(({ watts }) => watts > 0);
    this.mostVolts = ties.reduce((most, { levels }) => Math.max(most, levels[0]!.volts), 0);
  }

  setBranches(ohms: ArrayLike<number>): void {
    for (let branch = 0; branch < ohms.length; branch++) {
      // A rigid branch joins one unknown to itself, and carries what is found later.
      this.nodal.siemens[branch] = ohms[branch] === 0 ? 0 : 1 / ohms[branch]!;
    }
  }

  restart(): void {
    this.positions.set(startPositions(this.ties));
  }

  /** Makes a load draw `amps` + `siemens` × its volts. */
  draw({ element }: Drawing, amps: number, siemens = 0): void {
    this.nodal.amps[element] = amps;
    this.nodal.siemens[element] = siemens;
  }

  voltsAlong({ element }: Drawing): number {
    return this.nodal.voltsAlong(element);
  }

  /** By tie, which way its position must move. Only after a solve that found voltages. */
  steps(): Int8Array {
    const { amps, noise } = this.nodal.tieAmps(this.ties, this.positions);
    return Int8Array.from(this.ties, (tie, index) => {
      const found = { volts: this.nodal.voltsAt(tie.at), amps: amps[index]! };
      const noiseVolts = rounding * Math.max(this.mostVolts, Math.abs(found.volts));
      const noiseInside = tie.ohms > 0 ? noiseVolts / tie.ohms : noise[index]!;
      return stepOf(tie, this.positions[index]!, found, {
        volts: noiseVolts,
        amps: rounding * Math.abs(found.amps) + noiseInside,
      });
    });
  }

  /**
   * Moves the ties until each stands where its voltage and current want it, for loads that draw linearly.
   *
   * All that stand wrong move at once. When that does not make them fewer for a while, only the first of
   * them moves, which can't go round in circles: the network is a P-matrix. Source: block principal
   * pivoting with Murty's least-index rule (Júdice and Pires, Computers & Operations Research 21, 1994;
   * from memory).
   */
  settle(): Pivots | "unsettled" {
    let fewest = Number.POSITIVE_INFINITY;
    let patience = blockMoves;
    for (let move = 0; move < mostMoves; move++) {
      const pivots = this.nodal.solve(this.ties, this.positions);
      if (pivots === "indefinite") return pivots;
      const steps = this.steps();
      const wrong = steps.reduce((count, step) => count + (step === 0 ? 0 : 1), 0);
      if (wrong === 0) return pivots;
      if (wrong < fewest) {
        fewest = wrong;
        patience = blockMoves;
      } else patience -= 1;
      const moving = patience > 0 ? steps : steps.fill(0, steps.findIndex((step) => step !== 0) + 1);
      moving.forEach((step, index) => {
        this.positions[index]! += step;
      });
    }
    return "unsettled";
  }
}

const blockMoves = 4;
const mostMoves = 200;

/** Of the voltages in play, what counts as noise where a source stands at a corner. */
const rounding = 1e-12;
