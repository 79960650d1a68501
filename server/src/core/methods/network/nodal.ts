/**
 * The numeric half: node voltages of a network of linear elements, by elimination in the planned order.
 *
 * An element carries `siemens` × (voltage along it) + `amps`. The matrix is kept as conductances between
 * unknowns and from each unknown to what is known, never as its diagonal. Then a pivot is a sum, not a
 * difference, as long as no conductance is negative: the factorisation (L D Lᵀ, D the pivots) loses no
 * digit however unlike the resistances are, and a network that nothing holds has a pivot of exactly 0.
 *
 * Sources: nodal analysis and star–mesh transformation, any text on circuit theory; the form without
 * subtractions is that of Grassmann, Taksar and Heyman for Markov chains (Operations Research 33, 1985;
 * from memory).
 */
import { reference } from "./model";
import type { Plan } from "./plan";
import { fixedAmps, holdingLevel, type Tie } from "./ties";
import { zeros } from "./zeros";

/**
 * `held`: the voltages are right. `unheld`: some part of the network has fixed currents only; its voltages
 * are far off, to the side where the balance of its currents drives them. `indefinite`: a pivot is not
 * positive though the part is held, which only negative conductances can do; there are no voltages.
 */
export type Pivots = "held" | "unheld" | "indefinite";

/** Far beyond any real voltage, and far from overflow. */
const runawayVolts = 1e30;

export interface TieAmps {
  readonly amps: Float64Array;
  readonly noise: Float64Array;
}

export class Nodal {
  /** By element; the caller sets them. */
  readonly siemens: Float64Array;
  readonly amps: Float64Array;
  /** By unknown. */
  readonly volts: Float64Array;
  factorisations = 0;

  /** By unknown: 1 where its voltage is known, the conductance to what is known, the current put in, the pivot. */
  private readonly known: Float64Array;
  private readonly toKnown: Float64Array;
  private readonly injected: Float64Array;
  private readonly pivots: Float64Array;
  /** By unknown: what its elements carry away, and the size of what was added up. */
  private readonly needs: Float64Array;
  private readonly sizes: Float64Array;
  /** By pair: the conductance, and its share in the pivot. */
  private readonly between: Float64Array;
  private readonly shares: Float64Array;

  /** @param floating by unknown, 1 where nothing ties it to the reference: it is left alone, at 0 V */
  constructor(
    private readonly plan: Plan,
    private readonly floating: Uint8Array,
  ) {
    const elements = plan.from.length;
    const { size, later } = plan.elimination;
    const pairs = later.length;
    const lists = zeros({
      siemens: elements,
      amps: elements,
      volts: size,
      known: size,
      toKnown: size,
      injected: size,
      pivots: size,
      needs: size,
      sizes: size,
      between: pairs,
      shares: pairs,
    });
    this.siemens = lists.siemens;
    this.amps = lists.amps;
    this.volts = lists.volts;
    this.known = lists.known;
    this.toKnown = lists.toKnown;
    this.injected = lists.injected;
    this.pivots = lists.pivots;
    this.needs = lists.needs;
    this.sizes = lists.sizes;
    this.between = lists.between;
    this.shares = lists.shares;
  }

  /** Voltages for the elements as they are and the ties at `positions`. */
  solve(ties: readonly Tie[], positions: Int32Array): Pivots {
    this.factorisations += 1;
    this.placeTies(ties, positions);
    this.placeElements();
    const pivots = this.eliminate();
    if (pivots !== "indefinite") this.substitute();
    return pivots;
  }

  voltsAt(unknown: number): number {
    return unknown === reference ? 0 : this.volts[unknown]!;
  }

  voltsAlong(element: number): number {
    return this.voltsAt(this.plan.from[element]!) - this.voltsAt(this.plan.to[element]!);
  }

  /** What each tie gives; a stiff one that holds gives whatever its unknown needs, with that sum's noise. */
  tieAmps(ties: readonly Tie[], positions: Int32Array): TieAmps {
    const { needs, sizes } = this;
    const amps = new Float64Array(ties.length);
    const noise = new Float64Array(ties.length);
    needs.fill(0);
    let hasStiff = false;
    for (let index = 0; index < ties.length; index++) {
      const tie = ties[index]!;
      const position = positions[index]!;
      const level = holdingLevel(tie, position);
      if (level && tie.ohms === 0) hasStiff = true;
      else {
        amps[index] = level ? (level.volts - this.voltsAt(tie.at)) / tie.ohms : fixedAmps(tie, position);
        if (tie.at !== reference) needs[tie.at]! -= amps[index]!;
      }
    }
    if (!hasStiff) return { amps, noise };
    this.addNeeds();
    for (let index = 0; index < ties.length; index++) {
      const tie = ties[index]!;
      if (tie.ohms > 0 || !holdingLevel(tie, positions[index]!)) continue;
      amps[index] = needs[tie.at]!;
      noise[index] = rounding * sizes[tie.at]!;
    }
    return { amps, noise };
  }

  /** Adds what the elements carry away from each unknown that is held to its needs, and how much was added. */
  private addNeeds(): void {
    const { known, siemens, amps, needs, sizes } = this;
    const { from, to } = this.plan;
    sizes.fill(0);
    for (let element = 0; element < from.length; element++) {
      const a = from[element]!;
      const b = to[element]!;
      const isHeldA = a !== reference && known[a] === 1;
      const isHeldB = b !== reference && known[b] === 1;
      if (a === b || !(isHeldA || isHeldB)) continue;
      const voltsA = this.voltsAt(a);
      const voltsB = this.voltsAt(b);
      const conductance = siemens[element]!;
      const fixed = amps[element]!;
      const carried = conductance * (voltsA - voltsB) + fixed;
      const size = Math.abs(conductance) * (Math.abs(voltsA) + Math.abs(voltsB)) + Math.abs(fixed);
      if (isHeldA) {
        needs[a]! += carried;
        sizes[a]! += size;
      }
      if (isHeldB) {
        needs[b]! -= carried;
        sizes[b]! += size;
      }
    }
  }

  private placeTies(ties: readonly Tie[], positions: Int32Array): void {
    const { known, toKnown, injected, volts } = this;
    known.set(this.floating);
    volts.fill(0);
    toKnown.fill(0);
    injected.fill(0);
    this.between.fill(0);
    for (let index = 0; index < ties.length; index++) {
      const tie = ties[index]!;
      if (tie.at === reference) continue;
      const position = positions[index]!;
      const level = holdingLevel(tie, position);
      if (!level) injected[tie.at]! += fixedAmps(tie, position);
      else if (tie.ohms > 0) {
        toKnown[tie.at]! += 1 / tie.ohms;
        injected[tie.at]! += level.volts / tie.ohms;
      } else {
        known[tie.at] = 1;
        volts[tie.at] = level.volts;
      }
    }
  }

  private placeElements(): void {
    const { siemens, amps, known, toKnown, injected, between, volts } = this;
    const { from, to, pair } = this.plan;
    for (let element = 0; element < from.length; element++) {
      const a = from[element]!;
      const b = to[element]!;
      const conductance = siemens[element]!;
      const fixed = amps[element]!;
      if ((conductance === 0 && fixed === 0) || a === b) continue;
      if (a !== reference) injected[a]! -= fixed;
      if (b !== reference) injected[b]! += fixed;
      const knownA = a === reference || known[a] === 1;
      const knownB = b === reference || known[b] === 1;
      if (!knownA && !knownB) between[pair[element]!]! += conductance;
      else if (!knownA) {
        toKnown[a]! += conductance;
        injected[a]! += conductance * (b === reference ? 0 : volts[b]!);
      } else if (!knownB) {
        toKnown[b]! += conductance;
        injected[b]! += conductance * (a === reference ? 0 : volts[a]!);
      }
    }
  }

  private eliminate(): Pivots {
    const { known, toKnown, injected, pivots, between, shares } = this;
    const { size, start, later, mesh } = this.plan.elimination;
    let answer: Pivots = "held";
    let corner = 0;
    for (let step = 0; step < size; step++) {
      const first = start[step]!;
      const end = start[step + 1]!;
      if (known[step]) {
        // Nothing leads to it: its neighbours count their conductance to it as one to what is known.
        const count = end - first;
        corner += (count * (count - 1)) / 2;
        continue;
      }
      let pivot = toKnown[step]!;
      for (let pair = first; pair < end; pair++) pivot += between[pair]!;
      pivots[step] = pivot;
      if (pivot === 0) answer = "unheld";
      else if (!(pivot > 0)) return "indefinite";
      for (let pair = first; pair < end; pair++) {
        const share = pivot === 0 ? 0 : between[pair]! / pivot;
        shares[pair] = share;
        const neighbour = later[pair]!;
        toKnown[neighbour]! += share * toKnown[step]!;
        injected[neighbour]! += share * injected[step]!;
        for (let other = pair + 1; other < end; other++) between[mesh[corner++]!]! += share * between[other]!;
      }
    }
    return answer;
  }

  private substitute(): void {
    const { known, injected, pivots, shares, volts } = this;
    const { size, start, later } = this.plan.elimination;
    for (let step = size - 1; step >= 0; step--) {
      if (known[step]) continue;
      const pivot = pivots[step]!;
      let sum = injected[step]! / pivot;
      // Without anything to hold it and without current a part waits for a source, as if it lacked current.
      if (pivot === 0) sum = injected[step]! > 0 ? runawayVolts : -runawayVolts;
      for (let pair = start[step]!; pair < start[step + 1]!; pair++)
        sum += shares[pair]! * volts[later[pair]!]!;
      volts[step] = sum;
    }
  }
}

/** Of the size of the terms, what a sum of a few hundred of them may lose to rounding. */
const rounding = 1e-13;
