import { defineConfig } from "vitest/config";

/** What looks at the memory wants one of its own. */
const apart = ["tests/forgetting.test.ts"];

export default defineConfig({
  test: {
    // Ends what hangs, and nothing that is only slow.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // One for each processor: most of a test's time goes to programs that it starts.
    maxWorkers: "100%",
    reporters: ["default"],
    projects: [
      {
        extends: true,
        test: {
          name: "all",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/workbench/**", ...apart],
          setupFiles: ["tests/support/clear-up.ts"],
          // One load of the core in place of a hundred: it keeps nothing that one file could see of another.
          isolate: false,
        },
      },
      { extends: true, test: { name: "apart", include: apart } },
    ],
  },
});
