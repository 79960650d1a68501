import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL(".", import.meta.url)),
    include: ["*.test.ts"],
    // A process of its own can end what it started when the run is broken off.
    pool: "forks",
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 180_000,
  },
});
