import {
  type CircuitRoute,
  deriveWiring,
  type Finding,
  findingsOf,
  orderedFindings,
  type Point,
  reviewWiring,
  type Site,
  wiringOfSite,
} from "#engine";
import { shortestTree } from "./shortest-tree.ts";
import type { OnCircuit, Run, WireQuestion, WiringKnown } from "./wire-protocol.ts";

/** What the screen shows of the wiring of a site. @param site - The site. @param found - Boards and circuits. @returns Review, findings with places, what hangs on each circuit; with routes also what follows for cables, and lines for the plan. */
export function wiringKnown({ site, found, routes }: WireQuestion): WiringKnown {
  const review = reviewWiring(site, found);
  if (!review) return { review, findings: [], circuits: new Map(), runs: [], groups: [] };
  const { model } = wiringOfSite(site, found);
  const circuits = new Map<string, OnCircuit>(
    found.circuits.map(({ id }) => [
      id,
      {
        luminaires: model.loads.filter((load) => load.circuit === id).map((load) => load.id),
        detectors: model.detectors
          .filter(({ line }) => line.kind === "line" && line.circuit === id)
          .map((detector) => detector.id),
      },
    ]),
  );
  const findings = orderedFindings(site, findingsOf(review.problems)).map((finding) =>
    placed(site, finding, circuits),
  );
  if (!routes) return { review, findings, circuits, runs: [], groups: [] };
  const places = placesOf(site);
  const derived = deriveWiring(site, found);
  const routed = new Set<string>();
  const feeds = found.circuits.flatMap(({ id }): readonly Run[] => {
    const on = circuits.get(id) ?? { luminaires: [], detectors: [] };
    const own = derived.circuits.find((one) => one.id === id);
    circuits.set(id, { ...on, derived: { section: own?.section, toLast: own?.route?.toLast } });
    if (own?.route) {
      routed.add(id);
      return routeRuns(id, own.route.cables);
    }
    // Without a place of the board it is only told what belongs together.
    return onStoreys(places, on.luminaires).map(({ storey, points }) => ({
      kind: "feeds",
      circuit: id,
      storey,
      lines: shortestTree(points),
    }));
  });
  const switches = model.switchedLines.flatMap((line): readonly Run[] => {
    const detectors = model.detectors.filter(({ output }) => output === line.id);
    const loads = model.loads.filter(({ switchedLine }) => switchedLine === line.id);
    if (loads.some(({ circuit }) => routed.has(circuit))) return [];
    return onStoreys(
      places,
      [...detectors, ...loads].map(({ id }) => id),
    ).map(({ storey, points }) => ({
      kind: "switches",
      circuit: loads[0]?.circuit,
      storey,
      lines: shortestTree(points),
    }));
  });
  return { review, findings, circuits, runs: [...feeds, ...switches], groups: derived.groups };
}

/** The cables of a route, by what is in them: what is switched is told from what has a line all the time. */
function routeRuns(circuit: string, cables: CircuitRoute["cables"]): readonly Run[] {
  const storeys = [...new Set(cables.map(({ storey }) => storey))];
  const kinds = { feeds: ["supply", "both"], switches: ["switched", "button"] } as const;
  return storeys.flatMap((storey) =>
    (["feeds", "switches"] as const).flatMap((kind): readonly Run[] => {
      const own = cables.filter((one) => one.storey === storey && kinds[kind].some((use) => use === one.use));
      return own.length === 0
        ? []
        : [
            {
              kind,
              circuit,
              storey,
              lines: own.map(({ points }) => points),
              ends: own.map(({ from, to }) => ({ from, to })),
            },
          ];
    }),
  );
}

interface Place {
  readonly at: Point;
  readonly room: string;
  readonly storey: string;
}

function placesOf(site: Site): ReadonlyMap<string, Place> {
  const storeys = new Map(site.rooms.map(({ id, storey }) => [id, storey]));
  return new Map(
    [...site.luminaires, ...site.detectors].flatMap(({ id, at, room }) => {
      const storey = storeys.get(room);
      return storey === undefined ? [] : [[id, { at, room, storey }] as const];
    }),
  );
}

/** Things by the storey that they hang on. */
function onStoreys(
  places: ReadonlyMap<string, Place>,
  ids: readonly string[],
): readonly { readonly storey: string; readonly points: readonly Point[] }[] {
  const found = new Map<string, Point[]>();
  for (const id of ids) {
    const place = places.get(id);
    if (place) found.set(place.storey, [...(found.get(place.storey) ?? []), place.at]);
  }
  return [...found].map(([storey, points]) => ({ storey, points }));
}

/** A finding about a circuit speaks of what hangs on it as well, and has a place: what it is about nearest to the middle of them. */
function placed(site: Site, finding: Finding, circuits: ReadonlyMap<string, OnCircuit>): Finding {
  const records = [
    ...new Set(
      finding.records.flatMap((id) => {
        const on = circuits.get(id);
        return on ? [id, ...on.luminaires, ...(on.luminaires.length === 0 ? on.detectors : [])] : [id];
      }),
    ),
  ];
  if (finding.at) return { ...finding, records };
  const places = placesOf(site);
  const all = records.flatMap((id) => places.get(id) ?? []);
  const own = all.filter(({ room }) => finding.room === undefined || room === finding.room);
  const near = middlemost(own);
  return near
    ? { ...finding, records, at: near.at, room: finding.room ?? near.room }
    : { ...finding, records };
}

function middlemost(all: readonly Place[]): Place | undefined {
  const x = all.reduce((sum, { at }) => sum + at[0], 0) / all.length;
  const y = all.reduce((sum, { at }) => sum + at[1], 0) / all.length;
  const away = ({ at }: Place): number => Math.hypot(at[0] - x, at[1] - y);
  return all.reduce<Place | undefined>(
    (best, next) => (best === undefined || away(next) < away(best) ? next : best),
    undefined,
  );
}
