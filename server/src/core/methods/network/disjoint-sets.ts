/** Sets of 0 … size − 1 that can be joined. */
export class DisjointSets {
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.parent = new Int32Array(size);
    for (let member = 0; member < size; member++) this.parent[member] = member;
  }

  /** The member that stands for the set of `member`. */
  find(member: number): number {
    const { parent } = this;
    let at = member;
    while (parent[at]! !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  }

  /** The lower of the two representatives stands for both. */
  join(a: number, b: number): void {
    const first = this.find(a);
    const second = this.find(b);
    this.parent[Math.max(first, second)] = Math.min(first, second);
  }
}
