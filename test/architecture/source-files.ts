import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

export interface SourceFile {
  /** Path from the root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Fixtures serve tests only; `vitest` in a contract suite likewise. */
const isTest = (path: string): boolean => /\.(test|fixture)\.tsx?$/.test(path);

/** Every TypeScript file under a folder of the project; tests left out unless asked for. */
export function sourceFiles(folder: string, kind: "code" | "tests" = "code"): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && isTest(name) === (kind === "tests"))
    .map((name) => ({
      path: join(folder, name).split(sep).join("/"),
      text: readFileSync(join(root, folder, name), "utf8"),
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Import specifiers of a file: static, type-only, re-exported, dynamic, and worker URLs. */
export function importsOf(file: SourceFile): string[] {
  const withoutComments = file.text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");
  const patterns = [
    /(?:^|[\s;}])(?:import|export)\s[^"'`;]*?from\s*["']([^"']+)["']/g,
    /(?:^|[\s;}])import\s*["']([^"']+)["']/g,
    /\bimport\s*\(\s*["']([^"']+)["']/g,
    /new URL\(\s*["'](\.[^"']+\.(?:ts|tsx|js|mjs))["']\s*,\s*import\.meta\.url/g,
  ];
  return patterns.flatMap((pattern) => [...withoutComments.matchAll(pattern)].map((match) => match[1]!));
}

/** Path from the root that a relative specifier of a file points to. */
export const resolved = (file: SourceFile, specifier: string): string =>
  relative(root, resolve(root, dirname(file.path), specifier))
    .split(sep)
    .join("/");
