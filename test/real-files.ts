import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

/**
 * Folder of real test files that are kept apart from the project, or undefined where they are not at hand.
 * Tests over them are skipped, and counted as skipped, in that case.
 */
export function realFiles(topic: string): string | undefined {
  const root =
    process.env.ROOMWAKE_TEST_FILES ?? fileURLToPath(new URL("../../shared/data", import.meta.url));
  const folder = `${root}/${topic}`;
  return existsSync(folder) ? folder : undefined;
}
