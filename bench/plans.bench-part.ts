import { loadavg } from "node:os";
import { type Linework, readDxf } from "#exchange";
import { findRooms } from "../src/exchange/rooms-from-lines/find-rooms.ts";
import { largePlan } from "../src/exchange/rooms-from-lines/large-plan.fixture.ts";
import { seeded } from "../test/exchange/mutated.ts";
import type { BenchRow } from "./bench.ts";

/** Size of the drawing that is read. [bytes] */
const size = 50e6;

/** What a drawing of 50 MB may take at most: 15 s, and 1.5 GB of memory for the whole process. */
const goal = "under 15 s and 1500 MB";

/** Reading of a large drawing: walls, polylines with bulges, door arcs and texts, far from the origin. */
export async function rows(): Promise<readonly BenchRow[]> {
  const bytes = largeDrawing();
  const start = performance.now();
  const result = readDxf(bytes, { fileName: "large.dxf" });
  const seconds = (performance.now() - start) / 1000;
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  const megabytes = process.resourceUsage().maxRSS / 1000;
  const { lines, arcs, texts } = result.report;
  return [
    {
      what: `DXF drawing of ${Math.round(bytes.length / 1e6)} MB: ${lines} lines, ${arcs} arcs, ${texts} texts`,
      ours: `${seconds.toFixed(1)} s, ${megabytes.toFixed(0)} MB`,
      other: "–",
      ratio: `${(bytes.length / 1e6 / seconds).toFixed(1)} MB/s`,
      goal,
    },
    roomsRow("on one layer", largePlan(30, 23, 12)),
    roomsRow("on layers of which several choices are tried", onLayers(largePlan(30, 23, 12))),
  ];
}

/** Walls on a layer of their own, and furniture on two of which one is called as rooms are. */
function onLayers(plan: Linework): Linework {
  const names = ["Walls", "Offices", "0", "Doors"];
  const layerOf = plan.layerOf.map((layer, i) => {
    const [x1, y1, x2, y2] = plan.lines.subarray(4 * i, 4 * i + 4) as unknown as [
      number,
      number,
      number,
      number,
    ];
    if (plan.layers[layer]!.name === "doors") return 3;
    return Math.hypot(x2 - x1, y2 - y1) > 0.7 ? 0 : i % 3 === 0 ? 2 : 1;
  });
  const count = (layer: number): number => layerOf.reduce((sum, one) => sum + (one === layer ? 1 : 0), 0);
  return {
    ...plan,
    layerOf,
    layers: names.map((name, layer) => ({ name, shown: true, lines: count(layer) })),
  };
}

/** Rooms in a plan of 690 furnished rooms. */
function roomsRow(how: string, plan: Linework): BenchRow {
  const before = process.cpuUsage();
  const start = performance.now();
  const { rooms } = findRooms(plan);
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(before);
  return {
    what: `Rooms found in a plan of ${plan.layerOf.length} lines ${how}: ${rooms.length} of 690`,
    ours: `${seconds.toFixed(1)} s`,
    other: `load ${loadavg()[0]!.toFixed(1)}`,
    ratio: `${((user + system) / 1e6).toFixed(1)} s of processor`,
    goal: "under 10 s",
  };
}

const largeDrawing = (): Uint8Array => {
  const random = seeded(7);
  const parts = ["  0\nSECTION\n  2\nENTITIES\n"];
  let written = 0;
  while (written < size) {
    const [x, y] = [3_500_000 + random() * 2e5, 5_800_000 + random() * 1e5];
    const part = entityAt(x, y, random);
    parts.push(part);
    written += part.length;
  }
  parts.push("  0\nENDSEC\n  0\nEOF\n");
  return new TextEncoder().encode(parts.join(""));
};

const entityAt = (x: number, y: number, random: () => number): string => {
  const kind = random();
  const at = ` 10\n${x}\n 20\n${y}\n`;
  if (kind < 0.6) {
    const layer = `Walls ${Math.floor(random() * 40)}`;
    return `  0\nLINE\n  8\n${layer}\n${at} 30\n0.0\n 11\n${x + random() * 5000}\n 21\n${y + random() * 100}\n 31\n0.0\n`;
  }
  if (kind < 0.8) {
    const corners = [0, 0, 0.4142, 0, 0, 0].map(
      (bulge) => ` 10\n${x + random() * 500}\n 20\n${y + random() * 500}\n 42\n${bulge}\n`,
    );
    return `  0\nLWPOLYLINE\n  8\nFurniture\n 90\n6\n 70\n1\n${corners.join("")}`;
  }
  if (kind < 0.9) return `  0\nARC\n  8\nDoors\n${at} 40\n900.0\n 50\n0.0\n 51\n90.0\n`;
  return `  0\nTEXT\n  8\nNames\n${at} 40\n200.0\n  1\nRoom ${Math.floor(random() * 1000)}\n`;
};
