/** Long enough for what an editor asks right after an answer, and shorter than the pause between two keystrokes. */
const quietMilliseconds = 20;

/**
 * Collects garbage while nobody waits. A keystroke makes megabytes that nothing needs after the next one: left to
 * itself, the engine collects what many have made in the middle of an answer.
 */
export class CleanUp {
  private waiting: NodeJS.Timeout | undefined;

  /** @param collect left out where the engine was not started with `--expose-gc`: it then sees to it itself */
  constructor(private readonly collect: NodeJS.GCFunction | undefined) {}

  /** Once nothing has been done for a while. */
  soon(): void {
    clearTimeout(this.waiting);
    if (this.collect) this.waiting = setTimeout(this.collect, quietMilliseconds, { type: "minor" }).unref();
  }
}
