import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseJob, siteOf } from "../index.ts";
import { jobVersion } from "../schema/job-file.ts";
import { type Migration, migrated, migrations } from "./migrate.ts";

const versions = Array.from({ length: jobVersion }, (_, index) => index + 1);
const fixture = (version: number): URL => new URL(`version-${version}.job.json`, import.meta.url);
const contentOf = (version: number): Record<string, unknown> =>
  JSON.parse(readFileSync(fixture(version), "utf8"));

/** Every value of `before` that `after` does not hold any more, by path. */
function lost(before: unknown, after: unknown, path = ""): readonly string[] {
  if (typeof before !== "object" || before === null) return Object.is(before, after) ? [] : [path];
  return Object.entries(before).flatMap(([name, value]) =>
    lost(value, (after as Record<string, unknown> | undefined)?.[name], `${path}/${name}`),
  );
}

describe("the history of the file", () => {
  test("has one migration for each version after the first, in order", () => {
    expect(migrations.map((step) => step.to)).toEqual(versions.slice(1));
  });

  test.each(versions)(
    "version %i has a file that was written by it, which still reads and makes a whole site",
    (version) => {
      expect(existsSync(fixture(version))).toBe(true);
      expect(contentOf(version).version).toBe(version);
      const read = parseJob(contentOf(version));
      expect(read.problems).toBeUndefined();
      expect(read.job!.version).toBe(jobVersion);
      expect(siteOf(read.job!).problems).toEqual([]);
      expect(siteOf(read.job!).site.rooms.length).toBeGreaterThan(0);
    },
  );

  test.each(versions)(
    "what stands in a file of version %i is still there after all migrations",
    (version) => {
      const { version: _, ...content } = contentOf(version);
      expect(lost(content, migrated(contentOf(version)))).toEqual([]);
    },
  );

  test("steps run in order from the version of the file, and not at all on a newer one", () => {
    const history: readonly Migration[] = [
      { to: 2, adds: "a", change: (file) => ({ ...file, a: 1 }) },
      { to: 3, adds: "b", change: (file) => ({ ...file, b: (file.a as number) + 1 }) },
    ];
    expect(migrated({ version: 1 }, history)).toEqual({ version: 3, a: 1, b: 2 });
    expect(migrated({ version: 2, a: 5 }, history)).toEqual({ version: 3, a: 5, b: 6 });
    expect(migrated({ version: 4 }, history)).toEqual({ version: 4 });
    expect(lost({ a: { b: 1 }, c: [1, 2] }, { a: {}, c: [1, 2, 3] })).toEqual(["/a/b"]);
  });
});
