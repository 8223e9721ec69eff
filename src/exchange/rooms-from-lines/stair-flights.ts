import type { Metres, Point, Radians } from "#engine";
import { type Box, boxOf } from "../region.ts";
import { boxSearch, lineSearch } from "./box-index.ts";

/** Going of a step, front edge to front edge, as plans show it. [m] @source COMMON-PRACTICE */
const goings: readonly [Metres, Metres] = [0.2, 0.42];
/** Widths of a flight. [m] @source COMMON-PRACTICE */
const widths: readonly [Metres, Metres] = [0.6, 3];
/** Fewest front edges in a row that make a flight: fewer are shelves. */
const FEWEST = 4;
/** Goings of one flight differ by this much at most. [m] */
const UNEVEN: Metres = 0.03;
/** Front edges of one flight are parallel. [rad] */
const OFF: Radians = 0.03;
/** A front edge that a break line cuts short ends within the flight, by this much. [m] */
const BESIDE: Metres = 0.15;
/** A pair of break lines takes no more of a flight. [m] */
const BREAK: Metres = 1.2;
/** Flights of one stair are no farther apart: the well and its rails. [m] */
const WELL: Metres = 0.6;

/** A flight as the plan shows it, in its own frame: u along the way up or down, v across it. */
export interface StairFlight {
  /** Direction of u; both are counted from the origin of the plan. */
  readonly way: Point;
  /** Extent along u, first front edge to last, and along v. [m] */
  readonly along: readonly [Metres, Metres];
  readonly across: readonly [Metres, Metres];
}

/** What a plan shows of stairs. */
export interface Stairs {
  readonly flights: readonly StairFlight[];
  /** Whether a line of this middle and this direction lies on a flight: a front edge, a break line, an arrow. */
  readonly onFlight: (middle: Point, direction: Point) => boolean;
  /** Whether a place lies in a well between two flights side by side, or where a break line parts one flight in two. */
  readonly inWell: (at: Point) => boolean;
  /** Whether a place lies on a flight or right before its first or behind its last edge. */
  readonly atFlight: (at: Point) => boolean;
}

/**
 * Flights of stairs in the lines of a plan: four front edges and more, parallel, as wide as one another and evenly apart.
 *
 * @param lines - x1 y1 x2 y2 of each. [m]
 * @source DERIVED-HERE
 */
export function stairsIn(lines: Float64Array): Stairs {
  const flights = flightsIn(lines);
  const wells = wellsBetween(flights);
  const breaks = breaksBetween(flights);
  const grown = (flight: StairFlight, u: Metres, v: Metres): StairFlight => ({
    ...flight,
    along: [flight.along[0] - u, flight.along[1] + u],
    across: [flight.across[0] - v, flight.across[1] + v],
  });
  const onSteps = holding([...flights, ...breaks].map((flight) => grown(flight, ON_STEP, -ON_STEP)));
  const atSteps = holding(flights.map((flight) => grown(flight, BEFORE, BESIDE)));
  const inWells = holding([...wells, ...breaks]);
  return {
    flights,
    onFlight: (middle, [dx, dy]) =>
      // What runs along a flight is a rail, or a wall.
      onSteps(middle).some(({ way }) => Math.abs(dx * way[0] + dy * way[1]) < 0.95 * Math.hypot(dx, dy)),
    inWell: (at) => inWells(at).length > 0,
    atFlight: (at) => atSteps(at).length > 0,
  };
}

/** A line lies on a step when it is this close to the front edge. [m] */
const ON_STEP: Metres = 0.06;
/** Rails end before the first step and behind the last one. [m] */
const BEFORE: Metres = 0.45;

function flightsIn(lines: Float64Array): readonly StairFlight[] {
  const edges: number[] = [];
  for (let i = 0; i < lines.length / 4; i++) {
    const length = lengthOf(lines, i);
    if (length >= widths[0] / 2 && length <= widths[1]) edges.push(i);
  }
  if (edges.length < FEWEST) return [];
  const own = new Float64Array(4 * edges.length);
  edges.forEach((i, k) => {
    own.set(lines.subarray(4 * i, 4 * i + 4), 4 * k);
  });
  const search = lineSearch(own);
  const next = edges.map((_, i) => nextEdge(own, i, search));
  const before = new Set(next);
  const taken = new Set<number>();
  const flights: StairFlight[] = [];
  for (let start = 0; start < edges.length; start++) {
    // A row is followed from its first edge on.
    if (before.has(start) || taken.has(start)) continue;
    let row: number[] = [start];
    let going: Metres | undefined;
    const end = (): void => {
      const flight = row.length >= FEWEST ? flightOf(own, row) : undefined;
      if (flight) {
        flights.push(flight);
        for (const one of row) taken.add(one);
      }
    };
    const seen = new Set(row);
    for (let at = next[start]!; at >= 0 && !seen.has(at); at = next[at]!) {
      seen.add(at);
      const step = apart(own, row[row.length - 1]!, at);
      if (going !== undefined && Math.abs(step - going) > UNEVEN) {
        end();
        row = [row[row.length - 1]!];
      }
      going = step;
      row.push(at);
    }
    end();
  }
  return flights;
}

const lengthOf = (lines: Float64Array, i: number): Metres =>
  Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!);

/** Unit vector along a line that points to the right half of the plane, so that parallel lines have the same one. */
function direction(lines: Float64Array, i: number): Point {
  const length = lengthOf(lines, i);
  const [x, y] = [
    (lines[4 * i + 2]! - lines[4 * i]!) / length,
    (lines[4 * i + 3]! - lines[4 * i + 1]!) / length,
  ];
  return x > 1e-6 || (Math.abs(x) <= 1e-6 && y > 0) ? [x, y] : [-x, -y];
}

/** Places of a line's ends: u square to a direction, counted to its left, and v along it. */
function placesOf(
  lines: Float64Array,
  i: number,
  [x, y]: Point,
): { readonly u: Metres; readonly v: readonly [Metres, Metres] } {
  const at = (k: 0 | 2): Point => [lines[4 * i + k]!, lines[4 * i + k + 1]!];
  const [p, q] = [at(0), at(2)];
  const v = [p[0] * x + p[1] * y, q[0] * x + q[1] * y];
  return {
    u: (-(p[0] + q[0]) * y + (p[1] + q[1]) * x) / 2,
    v: [Math.min(...v), Math.max(...v)],
  };
}

const apart = (lines: Float64Array, i: number, j: number): Metres => {
  const d = direction(lines, i);
  return placesOf(lines, j, d).u - placesOf(lines, i, d).u;
};

/** The nearest front edge on the left of one; −1: none. */
function nextEdge(lines: Float64Array, i: number, search: (box: Box) => readonly number[]): number {
  const d = direction(lines, i);
  const here = placesOf(lines, i, d);
  const box = boxOf([
    [lines[4 * i]!, lines[4 * i + 1]!],
    [lines[4 * i + 2]!, lines[4 * i + 3]!],
  ]);
  let best = -1;
  let least: Metres = goings[1] + 1e-9;
  for (const j of search([box[0] - goings[1], box[1] - goings[1], box[2] + goings[1], box[3] + goings[1]])) {
    if (j === i) continue;
    const e = direction(lines, j);
    if (Math.abs(d[0] * e[1] - d[1] * e[0]) > OFF) continue;
    const there = placesOf(lines, j, d);
    const step = there.u - here.u;
    if (step < goings[0] - 1e-9 || step >= least) continue;
    const [short, long] =
      here.v[1] - here.v[0] < there.v[1] - there.v[0] ? [here.v, there.v] : [there.v, here.v];
    if (short[0] < long[0] - BESIDE || short[1] > long[1] + BESIDE) continue;
    best = j;
    least = step;
  }
  return best;
}

/** A row of front edges as a flight; undefined where it is narrower than one. */
function flightOf(lines: Float64Array, row: readonly number[]): StairFlight | undefined {
  const d = direction(lines, row[0]!);
  const places = row.map((i) => placesOf(lines, i, d));
  const lefts = places.map(({ v }) => v[0]).sort((a, b) => a - b);
  const rights = places.map(({ v }) => v[1]).sort((a, b) => a - b);
  // Edges that run on into the other flight, and those that a break line cuts, are few.
  const middle = row.length >> 1;
  const across: [Metres, Metres] = [lefts[middle]!, rights[middle]!];
  if (across[1] - across[0] < widths[0]) return undefined;
  return {
    way: [-d[1], d[0]],
    along: [places[0]!.u, places[row.length - 1]!.u],
    across: [-across[1], -across[0]],
  };
}

/** Place in the frame of a flight: u along its way, v to the left of it. */
const inFrame = ({ way }: StairFlight, [x, y]: Point): Point => [
  x * way[0] + y * way[1],
  -x * way[1] + y * way[0],
];

const cornersOf = ({ way, along, across }: StairFlight): readonly Point[] =>
  [along[0], along[1]].flatMap((u) =>
    [across[0], across[1]].map((v): Point => [u * way[0] - v * way[1], u * way[1] + v * way[0]]),
  );

function holding(flights: readonly StairFlight[]): (at: Point) => readonly StairFlight[] {
  const near = boxSearch(flights.map((flight) => boxOf(cornersOf(flight))));
  return (at) =>
    near([at[0], at[1], at[0], at[1]]).flatMap((index) => {
      const flight = flights[index]!;
      const [u, v] = inFrame(flight, at);
      const inside =
        u >= flight.along[0] && u <= flight.along[1] && v >= flight.across[0] && v <= flight.across[1];
      return inside ? [flight] : [];
    });
}

/** What lies between the two parts of a flight that a break line parts. */
function breaksBetween(flights: readonly StairFlight[]): readonly StairFlight[] {
  return flights.flatMap((one) =>
    flights.flatMap((other): StairFlight[] => {
      if (one === other || one.way[0] * other.way[0] + one.way[1] * other.way[1] < 1 - OFF * OFF) return [];
      const apart = other.along[0] - one.along[1];
      const aside = Math.max(
        Math.abs(one.across[0] - other.across[0]),
        Math.abs(one.across[1] - other.across[1]),
      );
      if (apart < -goings[1] || apart > BREAK || aside > BESIDE) return [];
      return [{ ...one, along: [one.along[1] - goings[1], other.along[0] + goings[1]] }];
    }),
  );
}

/** Places between two flights that run side by side. */
function wellsBetween(flights: readonly StairFlight[]): readonly StairFlight[] {
  return flights.flatMap((one, i) =>
    flights.slice(i + 1).flatMap((other): StairFlight[] => {
      if (Math.abs(one.way[0] * other.way[1] - one.way[1] * other.way[0]) > OFF) return [];
      const places = cornersOf(other).map((corner) => inFrame(one, corner));
      const along = [Math.min(...places.map(([u]) => u)), Math.max(...places.map(([u]) => u))] as const;
      const across = [Math.min(...places.map(([, v]) => v)), Math.max(...places.map(([, v]) => v))] as const;
      const shared = Math.min(one.along[1], along[1]) - Math.max(one.along[0], along[0]);
      if (shared < 0.3 * Math.min(one.along[1] - one.along[0], along[1] - along[0])) return [];
      const between: readonly [Metres, Metres] =
        across[0] > one.across[0] ? [one.across[1], across[0]] : [across[1], one.across[0]];
      if (between[1] - between[0] < 0 || between[1] - between[0] > WELL) return [];
      const most: readonly [Metres, Metres] = [
        Math.min(one.along[0], along[0]) - BEFORE,
        Math.max(one.along[1], along[1]) + BEFORE,
      ];
      return [{ ...one, along: most, across: between }];
    }),
  );
}
