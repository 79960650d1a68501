/** Random connected networks of sizes that aircraft have. */

import type { Load, Source } from "../../server/src/core/methods/network";
import { fc } from "../support/random";
import { ground, type Network } from "./support";

export const runs = (numRuns: number): fc.Parameters<unknown> => ({
  numRuns,
  endOnFailure: true,
});

/** Of a fine grid: what a record could say, without the numbers near 0 that only a computer knows. */
const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 100_000 }).map((step) => min + ((max - min) * step) / 100_000);

/** A milliohm to half an ohm, evenly by decade. */
const ohms = real(-3, -0.3).map((decade) => 10 ** decade);

const loads = {
  current: real(0, 6).map((amps): Load => ({ kind: "current", amps })),
  resistance: real(3, 60).map((ohms): Load => ({ kind: "resistance", ohms })),
  power: real(0, 400).map((watts): Load => ({ kind: "power", watts })),
};

/** Holds its voltage in both directions and without limit. */
const plainSource: fc.Arbitrary<Source> = fc.record({
  volts: real(24, 28.5),
  ohms: fc.oneof(fc.constant(0), real(0.001, 0.2)),
  oneWay: fc.constant(false),
});

const limitedSource: fc.Arbitrary<Source> = fc
  .record({
    volts: real(24, 28.5),
    ohms: fc.oneof(fc.constant(0), real(0.001, 0.2)),
    oneWay: fc.boolean(),
    mostAmps: fc.oneof(fc.constant(undefined), real(1, 25)),
  })
  .map(({ mostAmps, ...source }) => ({ ...source, ...(mostAmps !== undefined && { mostAmps }) }));

export interface Wanted {
  readonly nodes: number;
  readonly kinds: readonly Load["kind"][];
  /** Sources with limits and one-way sources too. */
  readonly limited?: boolean;
  /** At most so many sources; 3 when left out. */
  readonly mostSources?: number;
  /** Some connections are rigid: those of the tree only, so that their currents are determined. */
  readonly rigid?: boolean;
}

/**
 * A tree over all nodes with more branches across it and to ground; loads return to ground, some by nodes that
 * are wired to it. A node has at most one source, and none is rigidly tied to another.
 */
export function anyNetwork({
  nodes,
  kinds,
  limited = false,
  rigid = false,
  mostSources = 3,
}: Wanted): fc.Arbitrary<Network> {
  const source = limited ? limitedSource : plainSource;
  const load = fc.oneof(...kinds.map((kind) => loads[kind]));
  const link = fc.oneof({ weight: rigid ? 1 : 0, arbitrary: fc.constant(0) }, { weight: 3, arbitrary: ohms });
  return fc
    .record({ fed: fc.integer({ min: 1, max: Math.ceil(nodes * 0.75) }), share: real(0, 1) })
    .chain(({ fed, share }) => {
      const returns = Math.min(nodes - fed, Math.floor((share * fed) / 3));
      const node = fc.integer({ min: 0, max: fed - 1 });
      const back = fc
        .integer({ min: fed, max: fed + returns })
        .map((at) => (at === fed + returns ? ground : at));
      const across = fc.record({ from: node, to: node, ohms });
      const leak = fc.record({ from: node, to: fc.constant(ground), ohms: real(1, 100) });
      return fc
        .record({
          links: fc.array(fc.record({ share: real(0, 0.999), ohms: link }), {
            minLength: fed - 1,
            maxLength: fed - 1,
          }),
          across: fc.array(fc.oneof({ weight: 3, arbitrary: across }, { weight: 1, arbitrary: leak }), {
            maxLength: Math.ceil(fed / 4),
          }),
          grounding: fc.array(link, { minLength: returns, maxLength: returns }),
          loads: fc.array(fc.record({ from: node, to: back, load }), { minLength: 1, maxLength: fed }),
          sources: fc.uniqueArray(fc.record({ node, source }), {
            minLength: 1,
            maxLength: mostSources,
            selector: (one) => one.node,
          }),
        })
        .map((parts) => {
          const hasSource = (at: number) => parts.sources.some((one) => one.node === at);
          const tree = parts.links.map((one, index) => {
            const from = Math.floor(one.share * (index + 1));
            const bare = one.ohms === 0 && (hasSource(from) || hasSource(index + 1));
            return { from, to: index + 1, ohms: bare ? 0.01 : one.ohms };
          });
          const grounding = parts.grounding.map((ohms, index) => ({ from: fed + index, to: ground, ohms }));
          return {
            nodeCount: fed + returns,
            branches: [...tree, ...grounding, ...parts.across],
            loads: parts.loads,
            sources: parts.sources,
          };
        });
    });
}
