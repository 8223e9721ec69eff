import {
  deriveWiring,
  type FoundInstallation,
  reviewWiring,
  type Site,
  settingsOfSite,
  shippedPacks,
} from "#engine";
import { demoModels, emptyJob, installationOf, type JobFile, readRecord, settingsOfJob, siteOf } from "#job";
import type { BenchRow } from "./bench.ts";

/** As many rooms as the office of the other part has, on as many storeys. */
const ROOMS = 82;
const STOREYS = 4;
/** Luminaires in each row of a room, and rooms on each circuit. */
const [ALONG, ACROSS, ROOMS_ON_CIRCUIT] = [4, 2, 2];

/** A whole building's wiring, reviewed and derived, with the settings of all of its devices. */
export async function rows(): Promise<readonly BenchRow[]> {
  const job = building();
  const { site } = siteOf(job);
  const found = installationOf(job);
  const [review, derived, settings] = [
    await timed(() => reviewWiring(site, found)),
    await timed(() => deriveWiring(site, found)),
    await timed(() => settingsOfSite(site, settingsOfJob(job, shippedPacks).choices)),
  ];
  const checks = review.result?.circuits.reduce((sum, circuit) => sum + circuit.checks.length, 0) ?? 0;
  const unproven = derived.result.circuits.filter(({ route }) => !route).length;
  if (checks === 0 || unproven > 0)
    throw new Error("The bench's building has circuits that nothing was said of.");
  const seconds = review.seconds + derived.seconds + settings.seconds;
  return [
    {
      what: `Wiring and settings of ${ROOMS} rooms, ${site.luminaires.length} luminaires, ${found.circuits.length} circuits`,
      ours: `${seconds.toFixed(2)} s`,
      other: `${checks} checks of circuits, ${lengthOf(derived.result)} km of cable`,
      ratio: `review ${review.seconds.toFixed(2)} s, routes and sections ${derived.seconds.toFixed(2)} s, settings ${settings.seconds.toFixed(2)} s`,
      goal: "under 5 s",
    },
    await evenly(site, found),
  ];
}

/** All loops of all circuits against the shortest trees between the same devices, which no wiring without free joints undercuts. */
async function evenly(site: Site, found: FoundInstallation): Promise<BenchRow> {
  const { circuits } = deriveWiring(site, found);
  const lay = circuits.reduce((sum, { route }) => sum + (route?.layLength ?? 0), 0);
  const least = circuits.reduce((sum, { route }) => sum + (route?.least ?? 0), 0);
  return {
    what: "Length of its loops against the shortest trees that branch at devices",
    ours: `${(lay / 1000).toFixed(2)} km, ${circuits.reduce((sum, { route }) => sum + (route?.boxes.length ?? 0), 0)} boxes`,
    other: `${(least / 1000).toFixed(2)} km, a bound`,
    ratio: `${(lay / least).toFixed(2)} times the bound`,
    goal: "at most 1.3",
  };
}

const lengthOf = ({ circuits }: ReturnType<typeof deriveWiring>): string =>
  (circuits.reduce((sum, { route }) => sum + (route?.boughtLength ?? 0), 0) / 1000).toFixed(1);

async function timed<Result>(
  work: () => Result,
): Promise<{ readonly result: Result; readonly seconds: number }> {
  const start = performance.now();
  const result = work();
  return { result, seconds: (performance.now() - start) / 1000 };
}

/** Rooms of 7 m by 5 m on both sides of a corridor on each storey, two rows of luminaires and a detector in each. */
export function building(): JobFile {
  const perStorey = Math.ceil(ROOMS / STOREYS) - 1;
  const storeys = Array.from({ length: STOREYS }, (_, s) => ({
    id: `s${s}`,
    name: `Storey ${s}`,
    elevation: 3.4 * s,
  }));
  const boxes = storeys.flatMap(({ id }, s) => {
    const wanted = Math.min(perStorey, ROOMS - STOREYS - s * perStorey);
    const long = 7 * Math.ceil(wanted / 2);
    return [
      { id: `${id}-corridor`, storey: id, use: "passing", at: [0, 5.1, long, 7.1] as const },
      ...Array.from({ length: wanted }, (_, i) => {
        const left = 7 * Math.floor(i / 2);
        const bottom = i % 2 === 0 ? 0 : 7.2;
        return {
          id: `${id}-r${i}`,
          storey: id,
          use: "sitting",
          at: [left, bottom, left + 6.9, bottom + 5] as const,
        };
      }),
    ];
  });
  const circuitOf = (index: number): string => `c${Math.floor(index / ROOMS_ON_CIRCUIT)}`;
  const circuits = [...new Set(boxes.map((_, index) => circuitOf(index)))];
  const records = {
    storeys,
    rooms: boxes.map(({ id, storey, use, at: [left, bottom, right, top] }) => ({
      id,
      storey,
      use,
      name: id,
      outline: [
        [left, bottom],
        [right, bottom],
        [right, top],
        [left, top],
      ],
    })),
    openings: boxes
      .filter(({ use }) => use === "sitting")
      .map(({ id, storey, at: [left, bottom] }) => ({
        id: `door of ${id}`,
        rooms: [id, `${storey}-corridor`],
        from: [left + 1, bottom === 0 ? 5 : 7.2],
        to: [left + 1.9, bottom === 0 ? 5 : 7.2],
        thickness: 0.1,
      })),
    luminaires: boxes.flatMap(({ id, at: [left, bottom, right, top] }, index) =>
      Array.from({ length: ALONG * ACROSS }, (_, i) => ({
        id: `${id}-e${i}`,
        room: id,
        name: "Panel",
        at: [
          left + ((right - left) * ((i % ALONG) + 0.5)) / ALONG,
          bottom + ((top - bottom) * (Math.floor(i / ALONG) + 0.5)) / ACROSS,
        ],
        power: 32,
        drivers: 1,
        powerFactor: 0.95,
        inrush: { peak: 26, width: 0.00018 },
        leakage: 0.0005,
        protectionClass: "I",
        circuit: circuitOf(index),
      })),
    ),
    detectors: boxes.map(({ id, at: [left, bottom, right, top] }, index) => ({
      id: `d${index}`,
      tag: `B${index}`,
      room: id,
      model: "demo-round-10-desk",
      at: [(left + right) / 2, (bottom + top) / 2],
      height: 2.7,
    })),
    boards: storeys.map(({ id }) => ({
      id: `board-${id}`,
      name: `Board ${id}`,
      storey: id,
      at: [0.1, 6],
      system: "TN-S",
      voltage: 230,
      loopImpedance: 0.3,
      faultCurrent: 1500,
      readings: "measured",
    })),
    circuits: circuits.map((id) => ({
      id,
      name: id,
      board: `board-${boxes[circuits.indexOf(id) * ROOMS_ON_CIRCUIT]?.storey}`,
      breaker: "B",
      rating: 10,
      rcd: "yes",
      residualCurrent: 0.03,
      rcdName: id,
    })),
  } as const;
  const job = emptyJob("Bench");
  const read = Object.fromEntries(
    Object.entries(records).map(([kind, list]) => [
      kind,
      list.map((record) => {
        const { record: own, problems } = readRecord(kind as "rooms", record as never);
        if (!own) throw new Error(`${kind}: ${JSON.stringify(problems)}`);
        return own;
      }),
    ]),
  );
  return { ...job, ...read, models: demoModels } as JobFile;
}
