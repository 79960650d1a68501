/** A flood of messages may put work off for this many turns, and no longer; a turn is far below a millisecond. */
const mostGivenUp = 1000;

/**
 * Work that waits for nothing but its turn: each record is done once however often it was asked for, messages
 * from the client get in between two records, and while they keep coming the work they supersede is not begun.
 * What may come later waits until nothing else does.
 */
export class Schedule {
  private readonly waiting = new Set<string>();
  private readonly later = new Set<string>();
  private isAwake = false;
  /** Turns given up because more was asked for meanwhile. */
  private givenUp = 0;
  private hasMore = false;

  constructor(private readonly work: (id: string) => void) {}

  add(id: string): void {
    this.waiting.add(id);
    this.later.delete(id);
    this.hasMore = true;
    this.wake();
  }

  addLater(id: string): void {
    if (!this.waiting.has(id)) this.later.add(id);
    this.wake();
  }

  private wake(): void {
    if (this.isAwake || this.waiting.size + this.later.size === 0) return;
    this.isAwake = true;
    setImmediate(() => {
      this.isAwake = false;
      if (this.hasMore && this.givenUp++ < mostGivenUp) {
        this.hasMore = false;
        this.wake();
        return;
      }
      this.givenUp = 0;
      const [id] = this.waiting.size > 0 ? this.waiting : this.later;
      if (id === undefined) return;
      this.waiting.delete(id);
      this.later.delete(id);
      this.work(id);
      this.wake();
    });
  }
}
