/** A list of nothing, the same one each time: who compares it with the one before sees no change. */
export const none: readonly never[] = [];
