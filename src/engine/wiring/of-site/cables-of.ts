import { type Problem, type Said, say } from "../../check/index.ts";
import type { Point } from "../../geometry/index.ts";
import type { Site } from "../../site/index.ts";
import type { CableSegment, ConductorSize } from "../model.ts";
import { routeLength } from "../routes/distances.ts";
import { cableRoute, type RoutePoint } from "../routes/route.ts";
import { circuitAtBoard, open } from "./circuits-of.ts";
import type { FoundCable, FoundCircuit, FoundInstallation, WiringAssumption } from "./found.ts";
import type { FedLuminaire } from "./loads-of.ts";

/** Luminaires on one circuit beyond which their order along the cable is not searched for. */
const MOST_IN_ORDER = 60;
/** A length and the way on the plan are the same within this. [m] */
const SAME_LENGTH = 0.01;

/** Cables of a site, with what had to be taken for granted and what is open. */
export interface SiteCables {
  readonly segments: readonly CableSegment[];
  readonly atFarEnd: readonly string[];
  readonly assumptions: readonly WiringAssumption[];
  readonly doubts: readonly Problem[];
}

/**
 * The cables of every circuit whose section and length are on record.
 *
 * Luminaires are looped in and out in the order of the shortest way, straight from one to the next, which no cable undercuts. What the
 * entered length exceeds these ways lies before the first luminaire, where it loses the most. Where the board has no place on
 * their storey, or the length is too short for a loop so that the cable must branch, all luminaires stand at the far end: a drop
 * that passes so passes as built. A circuit without luminaires has its cable too.
 *
 * @param site - The site. @param found - Boards and circuits. @param fed - Luminaires on circuits.
 * @returns Segments; circuits with their luminaires at the far end; what was taken for granted; what is open.
 * @example Board at 0 m, luminaires at 3 m and 6 m, 12 m of cable entered: 9 m to the first, 3 m to the second
 */
export function cablesOf(site: Site, found: FoundInstallation, fed: readonly FedLuminaire[]): SiteCables {
  const segments: CableSegment[] = [];
  const atFarEnd: string[] = [];
  const doubts: Problem[] = [];
  const inOrder: FoundCircuit[] = [];
  for (const circuit of found.circuits) {
    const own = fed.filter((one) => one.circuit === circuit.id);
    const about = { name: circuitAtBoard(found, circuit), records: [circuit.id] };
    const { length, section } = circuit.cable ?? {};
    const size = sizeOf(circuit.cable);
    if (!size || !isSize(length)) {
      // That a cable is missing altogether is what every check of the circuit says.
      if (section !== undefined && !isSize(section))
        doubts.push(
          open({
            ...about,
            what: say`its cable, of which a section of ${section} is entered`,
            missing: say`the section of its cable`,
          }),
        );
      if (length !== undefined && !isSize(length))
        doubts.push(
          open({
            ...about,
            what: say`its cable, of which a length of ${length} is entered`,
            missing: say`the length of its cable`,
          }),
        );
      continue;
    }
    if (own.length === 0) {
      const way = { from: circuit.board ?? "", to: `end of ${circuit.id}`, length };
      segments.push(segmentOf(circuit, { ...way, size }));
      continue;
    }
    const start = placeOfBoard(site, found, circuit, own);
    const least = start ? farthest(start.at, own) : 0;
    if (least > length + SAME_LENGTH)
      doubts.push(
        open({
          ...about,
          what: say`its cable, since ${round(length)} m are entered and the last luminaire is ${round(least)} m away`,
          missing: say`the length from the board to the last luminaire`,
        }),
      );
    const looped = start && waysBetween(start, own);
    const fits = looped && sum(looped) <= length + SAME_LENGTH;
    if (fits) inOrder.push(circuit);
    else atFarEnd.push(circuit.id);
    const ways = fits ? withSlack(looped, length) : lumped(circuit, own, Math.max(length, least));
    segments.push(...ways.map((way) => segmentOf(circuit, { ...way, size })));
  }
  return { segments, atFarEnd, doubts, assumptions: assumptionsOf(found, segments, { atFarEnd, inOrder }) };
}

const isSize = (value: number | undefined): value is number =>
  value !== undefined && Number.isFinite(value) && value > 0;
const round = (metres: number): number => Math.round(metres * 10) / 10;

interface Way {
  readonly from: string;
  readonly to: string;
  readonly length: number;
}

const sum = (ways: readonly Way[]): number => ways.reduce((all, { length }) => all + length, 0);

/** The board of a circuit, where it has a place on the storey of all of its luminaires. */
function placeOfBoard(
  site: Site,
  { boards }: FoundInstallation,
  circuit: FoundCircuit,
  own: readonly FedLuminaire[],
): RoutePoint | undefined {
  const board = boards.find(({ id }) => id === circuit.board);
  const storeys = new Set(
    own.map(({ luminaire }) => site.rooms.find(({ id }) => id === luminaire.room)?.storey),
  );
  return board?.at && storeys.size === 1 && storeys.has(board.storey)
    ? { id: board.id, at: board.at }
    : undefined;
}

const farthest = (from: Point, own: readonly FedLuminaire[]): number =>
  Math.max(...own.map(({ luminaire }) => routeLength(from, luminaire.at, "free")));

/** Straight ways from the board through all luminaires; undefined where there are too many to search for their order. */
const waysBetween = (start: RoutePoint, own: readonly FedLuminaire[]): readonly Way[] | undefined =>
  own.length > MOST_IN_ORDER
    ? undefined
    : cableRoute([start, ...own.map(({ luminaire }) => ({ id: luminaire.id, at: luminaire.at }))], {
        style: "free",
        wiring: "loop",
      }).cables;

/** The rest of the entered length before the first luminaire. */
function withSlack(ways: readonly Way[], length: number): readonly Way[] {
  const slack = Math.max(0, length - sum(ways));
  return ways.map((way, i) => (i === 0 ? { ...way, length: way.length + slack } : way));
}

/** The whole length to the first luminaire, and nothing from there on. */
const lumped = ({ board }: FoundCircuit, own: readonly FedLuminaire[], length: number): readonly Way[] =>
  own.map(({ luminaire }, i) => ({
    from: own[i - 1]?.luminaire.id ?? board ?? "",
    to: luminaire.id,
    length: i === 0 ? length : 0,
  }));

/** Size of a cable as entered. @param section - Of its line conductors [mm²], with gauge, form and protective conductor. @returns Gauge before section; undefined where neither is on record. @example 12 AWG: stranded if nobody said */
export function sizeOf({
  section,
  gauge,
  form,
  protective,
  protectiveGauge,
}: FoundCable = {}): ConductorSize | undefined {
  if (gauge !== undefined)
    return {
      kind: "gauge",
      gauge,
      form: form ?? "stranded",
      ...(protectiveGauge === undefined ? {} : { protective: protectiveGauge }),
    };
  return isSize(section)
    ? { kind: "metric", section, ...(protective === undefined ? {} : { protective }) }
    : undefined;
}

function segmentOf(
  { id, cable = {} }: FoundCircuit,
  { from, to, length, size }: Way & { readonly size: ConductorSize },
): CableSegment {
  const { method, ambient, grouping, inInsulation, concealed, withSignals, cores } = cable;
  return {
    id: `cable of ${id} to ${to}`,
    circuit: id,
    from,
    to,
    length,
    cores: cores ?? 3,
    size,
    material: cable.material ?? "copper",
    insulation: cable.insulation ?? "PVC",
    ...(method === undefined ? {} : { method }),
    ...(ambient === undefined ? {} : { ambient }),
    ...(grouping === undefined ? {} : { grouping }),
    ...(inInsulation === undefined ? {} : { inInsulation }),
    concealed: concealed ?? "unknown",
    withSignals: withSignals ?? "unknown",
  };
}

function assumptionsOf(
  found: FoundInstallation,
  segments: readonly CableSegment[],
  { atFarEnd, inOrder }: { readonly atFarEnd: readonly string[]; readonly inOrder: readonly FoundCircuit[] },
): readonly WiringAssumption[] {
  const laid = new Set(segments.map(({ circuit }) => circuit));
  const without = (field: keyof FoundCable): readonly string[] =>
    found.circuits
      .filter(({ id, cable }) => laid.has(id) && cable?.[field] === undefined)
      .map(({ id }) => id);
  const said = (text: Said, records: readonly string[]): readonly WiringAssumption[] =>
    records.length === 0 ? [] : [{ text, records }];
  return [
    ...said(say`PVC insulation, which carries less, where nobody entered it`, without("insulation")),
    ...said(say`Copper where nobody entered the material`, without("material")),
    ...said(
      say`A protective conductor as thick as the line conductors where nobody entered it`,
      without("protective"),
    ),
    ...said(
      say`Luminaires looped in and out in the order of the shortest way; what the entered length exceeds it lies before the first of them, the worst place`,
      inOrder.map(({ id }) => id),
    ),
    ...said(
      say`All luminaires at the far end of the cable, the worst case, since its way between them is unknown`,
      atFarEnd,
    ),
  ];
}
