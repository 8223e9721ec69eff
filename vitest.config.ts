import { defineConfig } from "vitest/config";

/** One project for everything that needs no browser; the end-to-end suite has its own command. */
export default defineConfig({
  test: {
    include: ["src/**/*.test.ts", "src/**/*.test.tsx", "test/**/*.test.ts"],
    exclude: ["node_modules", "dist", "test/end-to-end/**"],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // Modules are loaded once a worker, not once a file: no test keeps state in one. Halves the time.
    isolate: false,
  },
});
