/** Change of the continuous load, in A, when equipment is taken out and other equipment is put in. */
export interface NetLoad {
  readonly removedAmps: number;
  readonly addedAmps: number;
  /** Added less removed: negative where the installation relieves the source. */
  readonly netAmps: number;
}

/**
 * Sums in plain doubles: exact to far below the last digit that any current is written with.
 * Source: definition. Example: "1.14 net load".
 */
export function netLoad(removed: readonly number[], added: readonly number[]): NetLoad {
  const removedAmps = sum(removed);
  const addedAmps = sum(added);
  return { removedAmps, addedAmps, netAmps: addedAmps - removedAmps };
}

function sum(amps: readonly number[]): number {
  return amps.reduce((total, each) => total + each, 0);
}
