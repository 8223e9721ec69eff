import { beforeAll, describe, expect, test } from "vitest";
import {
  areaOf,
  type DerivedWiring,
  deriveWiring,
  deviceZone,
  intersection,
  type Point,
  poleOf,
  type Region,
  type Room,
  type Site,
} from "#engine";
import { type Linework, readDxf, surveyPlan } from "#exchange";
import { demoJob, installationOf, siteOf } from "#job";
import { type DeviceZone, storeyDxf } from "#output";

const demo = siteOf(demoJob()).site;
/** The demo job with a detector more in every room and every second room without a number: a tag must not become one. */
const site: Site = {
  ...demo,
  rooms: demo.rooms.map((room, index) => (index % 2 === 0 ? { ...room, number: "" } : room)),
  detectors: [
    ...demo.detectors,
    ...demo.rooms.map((room, index) => ({
      ...demo.detectors[0]!,
      id: `more-${room.id}`,
      tag: `B9.${index + 10}`,
      room: room.id,
      controls: [room.id],
      at: poleOf({ outline: room.outline, holes: room.holes }).at,
    })),
  ],
};
/** What the pack draws beside the storey: zones, cables, boards. */
const found = installationOf(demoJob());
const wiring: DerivedWiring = deriveWiring(demo, found);
const cables = wiring.circuits.flatMap(({ route }) => route?.cables ?? []);
const zones = demo.detectors.flatMap((detector): readonly DeviceZone[] =>
  (["seated", "towards"] as const).map((kind) => ({
    device: detector.id,
    kind,
    region: deviceZone(demo, { device: detector.id, kind, doors: "closed" }),
  })),
);
const beside = { zones, cables, boards: found.boards };
const regionOf = ({ outline, holes }: Room): Region => [{ outline, holes: [...holes] }];
const overlap = (a: Room, b: Room): number => {
  const [first, second] = [regionOf(a), regionOf(b)];
  const both = areaOf(intersection(first, second));
  return both / (areaOf(first) + areaOf(second) - both);
};

async function readAgain(of: Site, storey: string) {
  const bytes = new TextEncoder().encode(storeyDxf(of, storey, beside));
  const read = await surveyPlan({ bytes, fileName: "storey.dxf", limits: {} }, {}, () => undefined);
  if ("problems" in read) throw new Error(read.problems.map(({ code }) => code).join());
  return read;
}

/** A wide door that opens outwards is shut at its leaf: the depth of its wall then counts to the room, 0.3 × 2 m at the entrance. */
const sameRoom = 0.98;

test.each(site.storeys.filter(({ id }) => site.rooms.some(({ storey }) => storey === id)))(
  "Rooms of storey $name written to DXF and read again are the same rooms, with their doors",
  async ({ id }) => {
    const rooms = site.rooms.filter(({ storey }) => storey === id);
    const { survey, plan } = await readAgain(site, id);
    expect(plan.metres).toBe(1);
    const partners = rooms.map((room) => {
      const best = survey.rooms
        .map((found) => ({ found, share: overlap(room, found) }))
        .sort((a, b) => b.share - a.share)[0];
      return {
        room: `${room.number} ${room.name}`,
        share: best?.share ?? 0,
        named: `${best?.found.number} ${best?.found.name}`,
      };
    });
    expect(partners.filter(({ share }) => share < sameRoom)).toEqual([]);
    expect(partners.filter(({ room, named }) => room.trim() !== named.trim())).toEqual([]);
    expect(survey.rooms).toHaveLength(rooms.length);
  },
);

test("The same storey gives the same bytes", () => {
  const storey = site.storeys[0]?.id ?? "";
  expect(storeyDxf(site, storey, beside)).toBe(storeyDxf(site, storey, beside));
});

describe("Detectors, zones and cables of a storey written to DXF", () => {
  const storey = demo.storeys.find(({ id }) => demo.rooms.some((room) => room.storey === id))!.id;
  const inStorey = new Set(demo.rooms.filter((room) => room.storey === storey).map(({ id }) => id));
  const detectors = demo.detectors.filter(({ room }) => inStorey.has(room));
  const text = storeyDxf(demo, storey, beside);
  const settled = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
  const ours = detectors
    .map(({ tag, model, at, turn }) => ({
      tag,
      block: `DETECTOR ${model}`,
      at: at.map(settled),
      turn: Math.round((turn * 180) / Math.PI) % 360,
    }))
    .toSorted((a, b) => (a.tag < b.tag ? -1 : 1));
  let lines: Linework;
  beforeAll(() => {
    const read = readDxf(new TextEncoder().encode(text), { fileName: "storey.dxf" });
    if ("problems" in read) throw new Error(read.problems.map(({ code }) => code).join());
    lines = read.linework;
  });

  test("are read back by our reader with tag, model, place and turn of every detector", () => {
    const read = lines.blocks.map(({ name, at, turn, attributes }) => ({
      tag: attributes.TAG,
      block: name,
      at: at.map(settled),
      turn: Math.round((turn * 180) / Math.PI + 360) % 360,
    }));
    expect(read.toSorted((a, b) => (a.tag! < b.tag! ? -1 : 1))).toEqual(ours);
  });

  test("are found by a reader of pairs that shares no code with ours", () => {
    const pairs = text.split(/\r?\n/);
    const records: Record<string, string>[] = [];
    for (let i = 0; i + 1 < pairs.length; i += 2) {
      const [code, value] = [pairs[i]!.trim(), pairs[i + 1]!.trim()];
      if (code === "0") records.push({ "0": value });
      // The first value of a code is the one that counts in the records looked at here.
      else records.at(-1)![code] ??= value;
    }
    const placed = records.flatMap((record, i) => {
      const next = records[i + 1];
      if (record["0"] !== "INSERT" || next?.["0"] !== "ATTRIB") return [];
      return [
        {
          tag: next["1"]!,
          block: record["2"]!,
          at: [Number(record["10"]), Number(record["20"])],
          turn: Math.round(Number(record["50"] ?? 0)) % 360,
        },
      ];
    });
    expect(placed.toSorted((a, b) => (a.tag < b.tag ? -1 : 1))).toEqual(ours);
    const declared = new Set(records.filter(({ "0": type }) => type === "LAYER").map((one) => one["2"]));
    const used = new Set(records.flatMap((one) => one["8"] ?? []));
    expect([...used].filter((layer) => layer !== "0" && !declared.has(layer))).toEqual([]);
  });

  test("have each kind of zone and cable on a layer of its own, at full length", () => {
    const drawn = new Map<string, number>();
    lines.layers.forEach(({ name }, layer) => {
      let length = 0;
      lines.layerOf.forEach((of, i) => {
        const [x1, y1, x2, y2] = lines.lines.subarray(4 * i, 4 * i + 4) as unknown as [
          number,
          number,
          number,
          number,
        ];
        if (of === layer) length += Math.hypot(x2 - x1, y2 - y1);
      });
      drawn.set(name, length);
    });
    const along = (points: readonly Point[], closed: "closed" | "open"): number =>
      points.reduce((sum, [x, y], i) => {
        const next = points[i + 1] ?? (closed === "closed" ? points[0] : undefined);
        return next === undefined ? sum : sum + Math.hypot(next[0] - x, next[1] - y);
      }, 0);
    const ids = new Set(detectors.map(({ id }) => id));
    for (const kind of ["seated", "towards"] as const) {
      const edges = zones
        .filter((zone) => zone.kind === kind && ids.has(zone.device))
        .flatMap(({ region }) => region.flatMap((piece) => [piece.outline, ...piece.holes]))
        .reduce((sum, outline) => sum + along(outline, "closed"), 0);
      expect(edges).toBeGreaterThan(10);
      expect(drawn.get(`DETECTOR ZONES ${kind.toUpperCase()}`)).toBeCloseTo(edges, 0);
    }
    for (const use of ["supply", "switched", "both", "button"] as const) {
      const length = cables
        .filter((cable) => cable.use === use && cable.storey === storey)
        .reduce((sum, { points }) => sum + along(points, "open"), 0);
      expect(drawn.get(`CABLES ${use.toUpperCase()}`) ?? 0).toBeCloseTo(length, 1);
    }
    expect(cables.filter((cable) => cable.storey === storey).length).toBeGreaterThan(5);
  });
});
