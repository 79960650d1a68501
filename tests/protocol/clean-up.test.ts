import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { CleanUp } from "../../server/src/language/clean-up";

describe("garbage is collected while nobody waits", () => {
  const collect = vi.fn();

  beforeEach(() => {
    vi.useFakeTimers();
    collect.mockClear();
  });

  afterEach(() => {
    vi.useRealTimers();
  });

  /** More than a few keystrokes make. */
  const much = () => 2 ** 30;

  it("once, when it has been quiet for a while", () => {
    new CleanUp(collect, much).soon();
    expect(collect).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1000);
    expect(collect.mock.calls).toEqual([[{ type: "minor" }]]);
  });

  it("never between two pieces of work that follow on each other", () => {
    const cleanUp = new CleanUp(collect, much);
    for (let piece = 0; piece < 50; piece++) {
      cleanUp.soon();
      vi.advanceTimersByTime(5);
    }
    expect(collect).not.toHaveBeenCalled();
  });

  it("not while there is little of it", () => {
    new CleanUp(collect, () => 2 ** 20).soon();
    vi.advanceTimersByTime(1000);
    expect(collect).not.toHaveBeenCalled();
  });

  it("not where the engine does not let it", () => {
    new CleanUp(undefined).soon();
    expect(vi.getTimerCount()).toBe(0);
  });
});
