import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/workbench/**"],
    // Ends what hangs, and nothing that is only slow.
    testTimeout: 180_000,
    reporters: ["default"],
  },
});
