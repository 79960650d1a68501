import { getHeapSpaceStatistics } from "node:v8";

/** Long enough for what an editor asks right after an answer, and shorter than the pause between two keystrokes. */
const quietMilliseconds = 20;

/**
 * In bytes: what several keystrokes make, and far below the room that the engine has for it. Collected after each
 * keystroke, what the last one made would soon count as lasting, and the dear collection of all come the sooner.
 */
const mostNew = 16 * 2 ** 20;

/**
 * Collects garbage while nobody waits. A keystroke makes megabytes that nothing needs after the next one: left to
 * itself, the engine collects what many have made in the middle of an answer.
 */
export class CleanUp {
  private waiting: NodeJS.Timeout | undefined;

  /**
   * @param collect left out where the engine was not started with `--expose-gc`: it then sees to it itself
   * @param newBytes how much was made since the last time
   */
  constructor(
    private readonly collect: NodeJS.GCFunction | undefined,
    private readonly newBytes = bytesOfNew,
  ) {}

  /** Once nothing has been done for a while. */
  soon(): void {
    clearTimeout(this.waiting);
    const { collect, newBytes } = this;
    if (!collect) return;
    const tidy = () => {
      if (newBytes() > mostNew) collect({ type: "minor" });
    };
    this.waiting = setTimeout(tidy, quietMilliseconds).unref();
  }
}

function bytesOfNew(): number {
  return getHeapSpaceStatistics().find((space) => space.space_name === "new_space")?.space_used_size ?? 0;
}
