import { defineConfig } from "vitest/config";

/** What starts programs ends them and clears up file by file; what looks at the memory wants one of its own. */
const apart = [
  "tests/command-line/**/*.test.ts",
  "tests/protocol/**/*.test.ts",
  "tests/{parity,forgetting}.test.ts",
];

export default defineConfig({
  test: {
    // Ends what hangs, and nothing that is only slow.
    testTimeout: 180_000,
    // One for each processor: most of a test's time goes to programs that it starts.
    maxWorkers: "100%",
    reporters: ["default"],
    projects: [
      {
        extends: true,
        test: {
          name: "core",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/workbench/**", ...apart],
          // The core keeps nothing that one file could see of another, and loads once instead of a hundred times.
          isolate: false,
        },
      },
      { extends: true, test: { name: "programs", include: apart } },
    ],
  },
});
