/**
 * Work that waits for nothing but its turn: each record is done once however often it was asked for, and
 * messages from the client get in between two records.
 */
export class Schedule {
  private readonly waiting = new Set<string>();
  private isAwake = false;

  constructor(private readonly work: (id: string) => void) {}

  add(id: string): void {
    this.waiting.add(id);
    this.wake();
  }

  private wake(): void {
    if (this.isAwake || this.waiting.size === 0) return;
    this.isAwake = true;
    setImmediate(() => {
      this.isAwake = false;
      const [id] = this.waiting;
      if (id === undefined) return;
      this.waiting.delete(id);
      this.work(id);
      this.wake();
    });
  }
}
