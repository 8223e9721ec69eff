import type { Problem } from "../../check/index.ts";
import type { Site } from "../../site/index.ts";
import type { CableSegment } from "../model.ts";
import { cableRoute } from "../routes/route.ts";
import { circuitTitle, open } from "./circuits-of.ts";
import type { FoundCircuit, FoundInstallation, WiringAssumption } from "./found.ts";
import type { FedLuminaire } from "./loads-of.ts";

/** Luminaires on one circuit beyond which their order along the cable is not searched for. */
const MOST_IN_ORDER = 60;

/**
 * The cables of every circuit whose section and length are on record.
 *
 * The length that somebody entered is shared among the luminaires in proportion to their ways on the plan, looped in and out along the
 * walls. Where the board has no place on their storey all of them stand at the far end: a drop that passes so passes as built.
 *
 * @param site - The site. @param found - Boards and circuits. @param fed - Luminaires on circuits.
 * @returns Segments; circuits with their luminaires at the far end; what was taken for granted; what is open.
 * @example Board at 0 m, luminaires at 3 m and 6 m, 12 m of cable entered: two segments of 6 m
 */
export function cablesOf(
  site: Site,
  found: FoundInstallation,
  fed: readonly FedLuminaire[],
): {
  readonly segments: readonly CableSegment[];
  readonly atFarEnd: readonly string[];
  readonly assumptions: readonly WiringAssumption[];
  readonly doubts: readonly Problem[];
} {
  const segments: CableSegment[] = [];
  const atFarEnd: string[] = [];
  const doubts: Problem[] = [];
  const assumed = { insulation: [] as string[], material: [] as string[], order: [] as string[] };
  for (const circuit of found.circuits) {
    const own = fed.filter((one) => one.circuit === circuit.id);
    const { section, length, cores } = circuit.cable ?? {};
    if (own.length === 0) continue;
    if (section === undefined || length === undefined) {
      doubts.push(
        open({
          name: circuitTitle(circuit),
          what: "its cable, of which section or length is not on record",
          missing: "section and length of the cable from the board to the last luminaire",
          records: [circuit.id],
        }),
      );
      continue;
    }
    const route = routeOf(site, found, circuit, own);
    const ways = route ?? lumped(circuit, own);
    if (route) assumed.order.push(circuit.id);
    else atFarEnd.push(circuit.id);
    if (circuit.cable?.insulation === undefined) assumed.insulation.push(circuit.id);
    if (circuit.cable?.material === undefined) assumed.material.push(circuit.id);
    const total = ways.reduce((sum, way) => sum + way.length, 0);
    segments.push(
      ...ways.map(({ from, to, length: way }) => ({
        id: `cable of ${circuit.id} to ${to}`,
        from,
        to,
        length: total === 0 ? length / ways.length : (way / total) * length,
        circuit: circuit.id,
        cores: cores ?? 3,
        ...cableData(circuit, section),
      })),
    );
  }
  const said = (text: string, records: readonly string[]): readonly WiringAssumption[] =>
    records.length === 0 ? [] : [{ text, records }];
  return {
    segments,
    atFarEnd,
    doubts,
    assumptions: [
      ...said("PVC insulation, which carries less, where nobody entered it", assumed.insulation),
      ...said("Copper where nobody entered the material", assumed.material),
      ...said(
        "The length entered is shared among the luminaires by their ways on the plan, looped in and out",
        assumed.order,
      ),
      ...said(
        "All luminaires at the far end of the cable, the worst case, since the board's place is unknown",
        atFarEnd,
      ),
    ],
  };
}

interface Way {
  readonly from: string;
  readonly to: string;
  readonly length: number;
}

/** Ways from the board through all luminaires; undefined where the board has no place beside them. */
function routeOf(
  site: Site,
  { boards }: FoundInstallation,
  circuit: FoundCircuit,
  own: readonly FedLuminaire[],
): readonly Way[] | undefined {
  const board = boards.find(({ id }) => id === circuit.board);
  const storeys = new Set(
    own.map(({ luminaire }) => site.rooms.find(({ id }) => id === luminaire.room)?.storey),
  );
  if (!board?.at || storeys.size !== 1 || !storeys.has(board.storey) || own.length > MOST_IN_ORDER)
    return undefined;
  return cableRoute(
    [{ id: board.id, at: board.at }, ...own.map(({ luminaire }) => ({ id: luminaire.id, at: luminaire.at }))],
    { style: "orthogonal", wiring: "loop" },
  ).cables;
}

/** The whole length to the first luminaire, and nothing from there on. */
const lumped = ({ board }: FoundCircuit, own: readonly FedLuminaire[]): readonly Way[] =>
  own.map(({ luminaire }, i) => ({
    from: own[i - 1]?.luminaire.id ?? board ?? "",
    to: luminaire.id,
    length: i === 0 ? 1 : 0,
  }));

function cableData(
  { cable = {} }: FoundCircuit,
  section: number,
): Omit<CableSegment, "id" | "circuit" | "from" | "to" | "length" | "cores"> {
  const { protective, method, ambient, grouping, inInsulation, concealed, withSignals } = cable;
  return {
    size: { kind: "metric", section, ...(protective === undefined ? {} : { protective }) },
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
