import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/workbench/**"],
    // Ends what hangs, and nothing that is only slow.
    testTimeout: 180_000,
    // One for each processor: most of a test's time goes to programs that it starts.
    maxWorkers: "100%",
    reporters: ["default"],
  },
});
