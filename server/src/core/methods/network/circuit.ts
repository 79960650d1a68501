import type { Condition } from "./model";
import { Nodal, type Pivots } from "./nodal";
import type { Plan } from "./plan";
import type { Reach } from "./reach";
import { startPositions, stepOf, type Tie } from "./ties";
import { zeros } from "./zeros";

/** A condition at work: the linear network, and where its sources stand. */
export class Circuit {
  readonly nodal: Nodal;
  /** By tie; see ties.ts. */
  readonly positions: Int32Array;
  /** The loads that can draw, and do so otherwise than by a resistance. */
  readonly drawing: readonly number[];
  /** Those of them that draw a constant power. */
  readonly power: readonly number[];
  /** By load: its constant current, and its constant power; 0 for one that draws otherwise. */
  readonly amps: Float64Array;
  readonly watts: Float64Array;
  private readonly start: Int32Array;
  private readonly firstLoad: number;
  private readonly mostVolts: number;

  constructor(
    { loads }: Condition,
    readonly plan: Plan,
    readonly ties: readonly Tie[],
    readonly reach: Reach,
  ) {
    this.nodal = new Nodal(plan, reach.floating);
    this.start = startPositions(ties);
    this.positions = this.start.slice();
    this.firstLoad = plan.elements.branchCount;
    const { amps, watts } = zeros({ amps: loads.length, watts: loads.length });
    this.amps = amps;
    this.watts = watts;
    const drawing: number[] = [];
    for (let index = 0; index < loads.length; index++) {
      const load = loads[index];
      if (load?.kind === "resistance") this.nodal.siemens[this.firstLoad + index] = 1 / load.ohms;
      else if (load && reach.alive[index]) {
        if (load.kind === "current") amps[index] = load.amps;
        else watts[index] = load.watts;
        if (amps[index]! > 0 || watts[index]! > 0) drawing.push(index);
      }
    }
    this.drawing = drawing;
    this.power = drawing.filter((load) => watts[load]! > 0);
    this.mostVolts = ties.reduce((most, { levels }) => Math.max(most, levels[0]!.volts), 0);
  }

  /** Those that are rigid join one unknown to itself, and carry what is found later. */
  setBranches(ohms: Float64Array): void {
    for (const branch of this.plan.resistive) this.nodal.siemens[branch] = 1 / ohms[branch]!;
  }

  restart(): void {
    this.positions.set(this.start);
  }

  /** Makes a load draw `amps` + `siemens` × its volts. */
  draw(load: number, amps: number, siemens = 0): void {
    this.nodal.amps[this.firstLoad + load] = amps;
    this.nodal.siemens[this.firstLoad + load] = siemens;
  }

  voltsAlong(load: number): number {
    return this.nodal.voltsAlong(this.firstLoad + load);
  }

  /** The part of the network that feeds a load; see reach.ts. */
  partOf(load: number): number | undefined {
    return this.reach.part[this.plan.from[this.firstLoad + load]!];
  }

  /** By tie, which way its position must move. Only after a solve that found voltages. */
  steps(): Int8Array {
    const { amps, noise } = this.nodal.tieAmps(this.ties, this.positions);
    const steps = new Int8Array(this.ties.length);
    for (let index = 0; index < steps.length; index++) {
      const tie = this.ties[index]!;
      const found = { volts: this.nodal.voltsAt(tie.at), amps: amps[index]! };
      const noiseVolts = rounding * Math.max(this.mostVolts, Math.abs(found.volts));
      const noiseInside = tie.ohms > 0 ? noiseVolts / tie.ohms : noise[index]!;
      steps[index] = stepOf(tie, this.positions[index]!, found, {
        volts: noiseVolts,
        amps: rounding * Math.abs(found.amps) + noiseInside,
      });
    }
    return steps;
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
