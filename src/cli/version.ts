import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Version of the package that this program is part of: the nearest package.json of that name above it. */
export function programVersion(): string {
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; folder = dirname(folder)) {
    const file = join(folder, "package.json");
    const read: unknown = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined;
    if (isOurs(read)) return read.version;
    if (dirname(folder) === folder) return "of unknown version";
  }
}

const isOurs = (read: unknown): read is { readonly version: string } =>
  typeof read === "object" &&
  read !== null &&
  "name" in read &&
  read.name === "roomwake" &&
  "version" in read &&
  typeof read.version === "string";
