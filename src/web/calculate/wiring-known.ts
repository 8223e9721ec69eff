import {
  cableRoute,
  type Finding,
  type FoundBoard,
  type FoundInstallation,
  findingsOf,
  orderedFindings,
  type Point,
  reviewWiring,
  type Site,
  wiringOfSite,
} from "#engine";
import { shortestTree } from "./shortest-tree.ts";
import type { OnCircuit, Run, WiringKnown } from "./wire-protocol.ts";

/** What the screen shows of the wiring of a site. @param site - The site. @param found - Boards and circuits. @returns Review, findings with places, what hangs on each circuit, lines for the plan. */
export function wiringKnown(site: Site, found: FoundInstallation): WiringKnown {
  const review = reviewWiring(site, found);
  if (!review) return { review, findings: [], circuits: new Map(), runs: [] };
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
  const places = placesOf(site);
  const feeds = found.circuits.flatMap(({ id, board }): readonly Run[] => {
    const on = circuits.get(id) ?? { luminaires: [], detectors: [] };
    const start = found.boards.find((one) => one.id === board);
    const storeys = onStoreys(places, on.luminaires);
    const route = storeys.length === 1 && start?.storey === storeys[0]?.storey && looped(start, storeys[0]);
    if (route) {
      circuits.set(id, { ...on, length: route.length });
      return [{ kind: "feeds", circuit: id, storey: route.storey, lines: route.lines }];
    }
    return storeys.map(({ storey, points }) => {
      const own = start?.at && start.storey === storey ? [start.at] : [];
      return { kind: "feeds", circuit: id, storey, lines: shortestTree([...own, ...points]) };
    });
  });
  const switches = model.switchedLines.flatMap((line): readonly Run[] => {
    const detectors = model.detectors.filter(({ output }) => output === line.id);
    const loads = model.loads.filter(({ switchedLine }) => switchedLine === line.id);
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
  return { review, findings, circuits, runs: [...feeds, ...switches] };
}

/** Luminaires beyond which no way through all of them is sought. */
const mostLooped = 60;

/** The cable along the walls from a board through all points, in and out, with its length. */
function looped(
  board: FoundBoard | undefined,
  on: { readonly storey: string; readonly points: readonly Point[] } | undefined,
): { readonly storey: string; readonly lines: Run["lines"]; readonly length: number } | undefined {
  if (!board?.at || !on || on.points.length > mostLooped) return undefined;
  const all = [board.at, ...on.points];
  const { cables, boughtLength } = cableRoute(
    all.map((at, i) => ({ id: String(i), at })),
    { style: "orthogonal", wiring: "loop" },
  );
  return {
    storey: on.storey,
    length: boughtLength,
    lines: cables.map(({ from, to }) => {
      const [a, b] = [all[Number(from)]!, all[Number(to)]!];
      return a[0] === b[0] || a[1] === b[1] ? [a, b] : [a, [b[0], a[1]], b];
    }),
  };
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
