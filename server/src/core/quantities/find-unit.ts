import { editDistance } from "./edit-distance";
import { longWords, spell } from "./spelling";
import { allDimensions, type Dimension, definitionOf, isUnitOf, type UnitSymbol, unitsOf } from "./units";

export interface FoundUnit {
  readonly dimension: Dimension;
  readonly unit: UnitSymbol;
}

/** Longer than any spelling of a unit; longer text is not looked at, so that looking up takes no time. */
const longestSpelling = 48;

/** Spelled symbols and aliases of each dimension. */
const spellings: ReadonlyMap<Dimension, ReadonlyMap<string, UnitSymbol>> = new Map(
  allDimensions.map((dimension) => [dimension, spellingsOf(dimension)]),
);

function spellingsOf(dimension: Dimension): Map<string, UnitSymbol> {
  const result = new Map<string, UnitSymbol>();
  for (const unit of unitsOf(dimension)) {
    for (const text of [unit, ...definitionOf(dimension, unit).aliases]) result.set(spell(text), unit);
  }
  return result;
}

/** The unit that a text names: one of `preferred` if any, else the first of the table that it fits. */
export function findUnit(text: string, preferred: Dimension): FoundUnit | undefined {
  if (isUnitOf(preferred, text)) return { dimension: preferred, unit: text };
  if (text.length > longestSpelling) return undefined;
  const key = spell(text);
  for (const dimension of [preferred, ...allDimensions]) {
    const unit = spellings.get(dimension)!.get(key);
    if (unit !== undefined) return { dimension, unit };
  }
  return undefined;
}

/** Units of the dimension that a text may have meant, the likeliest first; at most three, often none. */
export function nearestUnits(text: string, dimension: Dimension): UnitSymbol[] {
  if (text.length > longestSpelling) return [];
  const key = spell(text);
  const distances = new Map<UnitSymbol, number>();
  for (const [spelling, unit] of nearMissesOf(dimension)) {
    const distance = distanceBetween(key, spelling);
    if (distance > slipsIn(spelling)) continue;
    distances.set(unit, Math.min(distance, distances.get(unit) ?? distance));
  }
  return [...distances]
    .sort(([, a], [, b]) => a - b)
    .slice(0, 3)
    .map(([unit]) => unit);
}

/** What a slip may have been aimed at: the spellings of each unit, long words included. */
function nearMissesOf(dimension: Dimension): (readonly [string, UnitSymbol])[] {
  const known = spellings.get(dimension)!;
  const long = [...longWords].flatMap(([word, short]) => {
    const unit = known.get(short);
    return unit === undefined ? [] : [[word, unit] as const];
  });
  return [...known, ...long];
}

/** A difference of case alone counts for little, but it decides between milli and mega. */
function distanceBetween(key: string, spelling: string): number {
  const sameCase = key.startsWith("M") === spelling.startsWith("M");
  return editDistance(key.toLowerCase(), spelling.toLowerCase()) + (sameCase ? 0 : 0.5);
}

/** How many slips a word survives: one in three letters, and none if there is only one. */
function slipsIn(spelling: string): number {
  return spelling.length === 1 ? 0 : Math.max(1, Math.floor(spelling.length / 3));
}
