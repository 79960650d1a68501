import type { Surroundings } from "./surroundings";

/** Fewer records are done before anybody has read how many there are. */
const worthShowing = 50;
const barWidth = 30;

/** How far a long check is, on the error stream of a terminal; nothing elsewhere. */
export class Progress {
  private readonly isShown: boolean;
  private done = 0;
  private shownAt = Number.NEGATIVE_INFINITY;

  constructor(
    private readonly total: number,
    private readonly around: Pick<Surroundings, "isWatched" | "showProgress">,
  ) {
    this.isShown = around.isWatched && total >= worthShowing;
  }

  step(): void {
    this.done++;
    if (!this.isShown) return;
    const now = performance.now();
    if (now - this.shownAt < 100) return;
    this.shownAt = now;
    const full = Math.round((barWidth * this.done) / this.total);
    const bar = "#".repeat(full).padEnd(barWidth, ".");
    this.around.showProgress(`checking [${bar}] ${this.done} of ${this.total} records`);
  }

  /** Leaves the line to others; it is shown again with the next step. */
  clear(): void {
    if (this.isShown && this.shownAt > 0) this.around.showProgress("");
    this.shownAt = Number.NEGATIVE_INFINITY;
  }
}
