import type { Envelope, LimitPoint } from "../../server/src/core/methods/envelope";
import type { Loadable, LoadGroup, LoadStation } from "../../server/src/core/methods/loadable";
import { fc } from "../support/random";

/** Small whole numbers: many ties, limits that are just reached, and sums without rounding. */
const whole = (min: number, max: number) => fc.integer({ min, max });

const stationsOf = (count: number) =>
  fc.tuple(
    ...Array.from({ length: count }, (_, index) =>
      fc
        .tuple(whole(-20, 20), whole(0, 4), whole(0, 12))
        .map(([arm, least, more]): LoadStation => ({ id: `s${index}`, arm, least, most: least + more })),
    ),
  );

/** Groups of neighbours that halve again and again, some left out: always inside each other or apart. */
function groupsOf(stations: readonly LoadStation[]): fc.Arbitrary<LoadGroup[]> {
  const nested = (list: readonly LoadStation[]): LoadStation[][] => {
    if (list.length < 2) return [];
    const middle = Math.ceil(list.length / 2);
    return [[...list], ...nested(list.slice(0, middle)), ...nested(list.slice(middle))];
  };
  const group = (members: readonly LoadStation[]) => {
    const least = members.reduce((sum, station) => sum + station.least, 0);
    return whole(0, 20).map((room): LoadGroup => ({ ids: members.map(({ id }) => id), most: least + room }));
  };
  return fc.subarray(nested(stations)).chain((sets) => fc.tuple(...sets.map(group)));
}

/** An aircraft with one to four stations, in an order that says nothing about arms. */
export const loadable: fc.Arbitrary<Loadable> = whole(1, 4)
  .chain(stationsOf)
  .chain((stations) =>
    fc.record({
      fixed: fc.record({ weight: whole(5, 40), moment: whole(-400, 400) }),
      stations: fc.constant(stations),
      groups: groupsOf(stations),
    }),
  );

/** A limit given from far below to far above the weights of {@link loadable}, with bends and steps. */
const limit = (low: number, high: number): fc.Arbitrary<LimitPoint[]> =>
  fc
    .tuple(
      whole(low, high),
      fc.array(fc.tuple(whole(6, 110), whole(low, high)), { maxLength: 3 }),
      whole(low, high),
    )
    .map(([first, inside, last]) => [
      { weight: 1, arm: first, orLess: true },
      ...inside.toSorted(([a], [b]) => a - b).map(([weight, arm]) => ({ weight, arm })),
      { weight: 120, arm: last },
    ]);

export const envelope: fc.Arbitrary<Envelope> = fc.record({ forward: limit(-12, 4), aft: limit(-4, 12) });
