/** What was made for the keys that were asked for last. A key is a few lists of bytes, each always of one length. */
export class Kept<T> {
  private readonly all: { readonly key: readonly Uint8Array[]; readonly made: T }[] = [];

  constructor(private readonly most: number) {}

  /** @param key no longer changed by the caller */
  recall(key: readonly Uint8Array[], make: () => T): T {
    for (const one of this.all) if (isSame(one.key, key)) return one.made;
    const made = make();
    this.all.push({ key, made });
    if (this.all.length > this.most) this.all.shift();
    return made;
  }
}

function isSame(one: readonly Uint8Array[], other: readonly Uint8Array[]): boolean {
  for (let list = 0; list < one.length; list++) {
    const [a, b] = [one[list]!, other[list]!];
    for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  }
  return true;
}
