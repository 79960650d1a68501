/**
 * Nearer than this share of the larger shape's size, two boundaries touch: the distance is then zero, and so
 * is an overlap of no more than that. It stands far above rounding (about 1e-15) and far below any length
 * that a shop can hold.
 */
export const touchTolerance = 1e-9;

export const withinTouch = (...sizes: readonly number[]): number => touchTolerance * Math.max(...sizes);
