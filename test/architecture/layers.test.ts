import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { importsOf, resolved, root, type SourceFile, sourceFiles } from "./source-files.ts";

/** What each room may import from other rooms. Type imports count. */
const rooms: Readonly<Record<string, readonly string[]>> = {
  engine: [],
  solver: ["engine"],
  job: ["engine"],
  exchange: ["engine"],
  output: ["engine"],
  server: ["job", "engine"],
  cli: ["server", "output", "exchange", "job", "solver", "engine"],
  web: ["output", "exchange", "job", "solver", "engine"],
};

/** What each folder of the engine may import. `quantity` is the floor. */
const engine: Readonly<Record<string, readonly string[]>> = {
  quantity: [],
  source: [],
  check: ["source", "quantity"],
  geometry: ["quantity"],
  detector: ["check", "geometry", "source", "quantity"],
  site: ["check", "source", "detector", "geometry", "quantity"],
  coverage: ["check", "source", "detector", "site", "geometry", "quantity"],
  placement: ["check", "source", "coverage", "detector", "site", "geometry", "quantity"],
  control: ["check", "source", "coverage", "detector", "site", "geometry", "quantity"],
  rules: ["check", "source", "coverage", "detector", "site", "geometry", "quantity"],
  settings: ["rules", "control", "check", "source", "coverage", "detector", "site", "geometry", "quantity"],
  energy: ["control", "check", "source", "quantity"],
  day: ["energy", "settings", "control", "check", "source", "detector", "site", "quantity"],
  wiring: ["check", "source", "coverage", "detector", "site", "geometry", "quantity"],
  "site-test": [
    "control",
    "settings",
    "wiring",
    "rules",
    "coverage",
    "check",
    "source",
    "detector",
    "site",
    "geometry",
    "quantity",
  ],
  care: ["site-test", "wiring", "check", "source", "site", "quantity"],
  handover: [
    "care",
    "review",
    "site-test",
    "wiring",
    "check",
    "source",
    "coverage",
    "detector",
    "site",
    "geometry",
    "quantity",
  ],
  review: [
    "settings",
    "rules",
    "check",
    "source",
    "placement",
    "wiring",
    "coverage",
    "detector",
    "site",
    "geometry",
    "quantity",
  ],
};

/** Packages that the engine may use: exact predicates, polygon booleans, a spatial index. */
const enginePackages = ["clipper2-ts", "robust-predicates", "flatbush"];

const roomOfSpecifier: Readonly<Record<string, string>> = {
  "#engine": "engine",
  "#solver": "solver",
  "#solver-in-browser": "solver",
  "#job": "job",
  "#exchange": "exchange",
  "#exchange-node": "exchange",
  "#output": "output",
  "#server": "server",
};

const folders = (path: string): string[] =>
  readdirSync(join(root, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();

/** Room that an import leads to; undefined for packages. */
function roomOf(file: SourceFile, specifier: string): string | undefined {
  if (specifier.startsWith("#")) return roomOfSpecifier[specifier] ?? `unknown ${specifier}`;
  if (!specifier.startsWith(".")) return undefined;
  const path = resolved(file, specifier);
  return path.startsWith("src/") ? path.split("/")[1] : `outside src: ${path}`;
}

test("[ARC-1] every room and every engine folder is in its table", () => {
  expect(folders("src")).toEqual(Object.keys(rooms).sort());
  expect(folders("src/engine")).toEqual(Object.keys(engine).sort());
});

test.each(Object.keys(rooms))("[ARC-2] room %s imports only what lies below it", (room) => {
  const wrong = sourceFiles(`src/${room}`).flatMap((file) =>
    importsOf(file)
      .map((specifier) => ({ specifier, target: roomOf(file, specifier) }))
      .filter(({ specifier }) => !/^\.\.?\/.*(examples|docs)\/.*\.json(\?.*)?$/.test(specifier))
      .filter(({ target }) => target !== undefined && target !== room && !rooms[room]!.includes(target))
      .map(({ specifier }) => `${file.path} → ${specifier}`),
  );
  expect(wrong).toEqual([]);
});

test.each(Object.keys(rooms).filter((room) => room !== "engine"))(
  "[ARC-3] room %s reaches other rooms through their doors only",
  (room) => {
    const wrong = sourceFiles(`src/${room}`).flatMap((file) =>
      importsOf(file)
        .filter((specifier) => specifier.startsWith("."))
        .filter((specifier) => {
          const path = resolved(file, specifier);
          return path.startsWith("src/") && path.split("/")[1] !== room;
        })
        .map((specifier) => `${file.path} → ${specifier}`),
    );
    expect(wrong).toEqual([]);
  },
);

test.each(Object.keys(engine))("[ARC-4] engine folder %s imports only what lies below it", (folder) => {
  const wrong = sourceFiles(`src/engine/${folder}`).flatMap((file) =>
    importsOf(file)
      .filter((specifier) => specifier.startsWith("."))
      .map((specifier) => ({ specifier, target: resolved(file, specifier).split("/")[2]! }))
      .filter(({ target }) => target !== folder && !engine[folder]!.includes(target))
      .map(({ specifier }) => `${file.path} → ${specifier}`),
  );
  expect(wrong).toEqual([]);
});

test("[ARC-5] the engine has no clock, no dice, no platform, no undeclared package", () => {
  const world =
    /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bperformance\.|\bprocess\.|\bcrypto\.|\bfetch\(|\bsetTimeout\b|\bglobalThis\b/g;
  const wrong = sourceFiles("src/engine").flatMap((file) => [
    ...(file.text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "").match(world) ?? []).map(
      (found) => `${file.path}: ${found}`,
    ),
    ...importsOf(file)
      .filter((specifier) => !specifier.startsWith(".") && !enginePackages.includes(specifier))
      .map((specifier) => `${file.path} → ${specifier}`),
  ]);
  expect(wrong).toEqual([]);
});

test("[ARC-6] only the solver room knows the solver's name", () => {
  const knowing = sourceFiles("src").filter((file) =>
    importsOf(file).some((specifier) => /^highs(\/|$)/.test(specifier)),
  );
  expect(knowing.map((file) => file.path.split("/")[1]).filter((room) => room !== "solver")).toEqual([]);
});

test("[ARC-7] files do not import in circles", () => {
  const graph = new Map(
    sourceFiles("src").map((file) => [
      file.path,
      importsOf(file)
        .filter((specifier) => specifier.startsWith("."))
        .map((specifier) => resolved(file, specifier)),
    ]),
  );
  const state = new Map<string, "open" | "done">();
  const circles: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === "done" || !graph.has(path)) return;
    if (state.get(path) === "open") {
      circles.push([...trail.slice(trail.indexOf(path)), path].join(" → "));
      return;
    }
    state.set(path, "open");
    for (const next of graph.get(path)!) visit(next, [...trail, path]);
    state.set(path, "done");
  };
  for (const path of graph.keys()) visit(path, []);
  expect(circles).toEqual([]);
});
