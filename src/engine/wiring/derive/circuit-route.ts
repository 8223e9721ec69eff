import type { Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import { shortestChain } from "../routes/chain.ts";
import { type LengthAllowance, lengthAllowance } from "../routes/route.ts";
import { shortestTree } from "../routes/tree.ts";
import type { CablePlace, CableWay } from "./ceiling-ways.ts";

/** What a cable goes to. */
export interface RouteNode extends CablePlace {
  /** Id of the record, of the board or of a device. */
  readonly id: string;
  readonly kind: "board" | "detector" | "luminaire" | "button";
  readonly storey: string;
}

/** supply: line and neutral all the time · switched: after a contact · both: line and switched line side by side · button: line to a button and back. */
export type CableUse = "supply" | "switched" | "both" | "button";

/** One cable from node to node. */
export interface RouteCable {
  readonly from: string;
  readonly to: string;
  readonly storey: string;
  readonly use: CableUse;
  /** Conductors in it, the protective one included. */
  readonly cores: number;
  /** Corners on the plan, both ends included. [m] */
  readonly points: readonly Point[];
  /** As it lies, up and down included, without allowances. [m] */
  readonly length: Metres;
  readonly walls: CableWay["walls"];
}

/** The cables of one circuit as a tree from its board. */
export interface CircuitRoute {
  readonly circuit: string;
  readonly nodes: readonly RouteNode[];
  readonly cables: readonly RouteCable[];
  /** Nodes where more than two cables meet: each wants an accessible box and its minutes. */
  readonly boxes: readonly string[];
  /** Sum of the cables as they lie. [m] */
  readonly layLength: Metres;
  /** To buy: ends and waste included. [m] */
  readonly boughtLength: Metres;
  /** From the board to the node farthest along the cables, ends included. [m] */
  readonly toLast: Metres;
  /** Below this no cable connects the nodes if it branches at them alone. [m] */
  readonly least: Metres;
  /** True where every chain in it is proven the shortest. */
  readonly exact: boolean;
}

/** A part of a circuit on one storey: devices that get a line all the time, each with what hangs on its contact. */
export interface RoutePart {
  /** Where the supply comes from: the board, or the place above or below it. */
  readonly start: RouteNode;
  /** Vertical way from the board to the start's ceiling. [m] */
  readonly rise: Metres;
  readonly groups: readonly {
    /** Detectors on one switched line; none: luminaires that are always on. */
    readonly detectors: readonly RouteNode[];
    readonly luminaires: readonly RouteNode[];
  }[];
  /** Buttons with the detector that they speak to. */
  readonly buttons: readonly { readonly node: RouteNode; readonly detector: string; readonly fall: Metres }[];
  /** Line conductors of the circuit: 3 in a three-phase one; 1 if absent. */
  readonly lines?: number;
  readonly between: (from: CablePlace, to: CablePlace) => CableWay;
  /** How a cable lies where a person leads it past places. It does not decide the order: what is dragged aside stays between its devices. */
  readonly led?: ((from: RouteNode, to: RouteNode) => CableWay | undefined) | undefined;
}

/**
 * Cables of one circuit: looped from device to device, and behind each contact from luminaire to luminaire.
 *
 * The supply loops through the nearest detector of each group and through luminaires that are always on; from that detector one chain
 * goes through the rest of its group, with the line in it as far as its last detector. No joint lies anywhere else.
 *
 * @param circuit - Id. @param parts - Of each storey. @param allowance - Ends and waste.
 * @returns Cables, boxes and lengths.
 * @source HELD-KARP, DERIVED-HERE
 * @example Board, detector 3 m away, two luminaires at 2 m pitch behind it: 3 + 2 + 2 m, no box
 */
export function circuitRoute(
  circuit: string,
  parts: readonly RoutePart[],
  allowance: LengthAllowance = lengthAllowance,
): CircuitRoute {
  const chains = parts.flatMap(chainsOf);
  const cables = chains.flatMap((chain) => chain.cables);
  const nodes = new Map<string, RouteNode>();
  for (const { start, groups, buttons } of parts)
    for (const node of [
      start,
      ...groups.flatMap(({ detectors, luminaires }) => [...detectors, ...luminaires]),
      ...buttons.map((button) => button.node),
    ])
      if (!nodes.has(node.id)) nodes.set(node.id, node);
  const layLength = cables.reduce((sum, { length }) => sum + length, 0);
  const meeting = new Map<string, number>();
  for (const { from, to } of cables) for (const id of [from, to]) meeting.set(id, (meeting.get(id) ?? 0) + 1);
  return {
    circuit,
    nodes: [...nodes.values()],
    cables,
    boxes: [...meeting]
      .filter(([id, count]) => count > 2 && nodes.get(id)?.kind !== "board")
      .map(([id]) => id),
    layLength,
    boughtLength: (layLength + cables.length * 2 * allowance.end) * (1 + allowance.waste),
    toLast: farthest(cables, allowance.end),
    least: parts.reduce((sum, part) => sum + leastOf(part), 0),
    exact: chains.every(({ exact }) => exact),
  };
}

interface Chain {
  readonly cables: readonly RouteCable[];
  readonly exact: boolean;
}

function chainsOf(part: RoutePart): readonly Chain[] {
  const { start, rise, groups, buttons, between } = part;
  const ways = { between, led: part.led };
  const lines = part.lines ?? 1;
  const entries = groups.map(({ detectors, luminaires }) => {
    const [entry] = detectors.toSorted((a, b) => between(start, a).length - between(start, b).length);
    return { entry, others: detectors.filter((one) => one !== entry), luminaires };
  });
  const fed = entries.flatMap(({ entry, luminaires }) => (entry ? [entry] : luminaires));
  return [
    chain([start, ...fed], ways, (index) => ({
      use: "supply",
      cores: 2 + lines,
      extra: index === 0 ? rise : 0,
    })),
    ...entries.flatMap(({ entry, others, luminaires }) => {
      if (!entry) return [];
      const rest = new Set(others.map(({ id }) => id));
      return [
        chain([entry, ...others, ...luminaires], ways, (index, order) =>
          order.slice(index + 1).some(({ id }) => rest.has(id))
            ? { use: "both", cores: 3 + lines, extra: 0 }
            : { use: "switched", cores: 3, extra: 0 },
        ),
      ];
    }),
    ...buttons.flatMap(({ node, detector, fall }) => {
      const own = groups.flatMap(({ detectors }) => detectors).find(({ id }) => id === detector);
      return own ? [chain([own, node], ways, () => ({ use: "button", cores: 3, extra: fall }))] : [];
    }),
  ];
}

function chain(
  nodes: readonly RouteNode[],
  { between, led }: Pick<RoutePart, "between" | "led">,
  kind: (
    index: number,
    order: readonly RouteNode[],
  ) => { readonly use: CableUse; readonly cores: number; readonly extra: Metres },
): Chain {
  const lengths = lengthsOf(nodes, between);
  const { order, exact } = shortestChain(lengths);
  const inOrder = order.map((index) => nodes[index] as RouteNode);
  return {
    exact,
    cables: inOrder.slice(1).map((to, i): RouteCable => {
      const from = inOrder[i] as RouteNode;
      const way = led?.(from, to) ?? between(from, to);
      const { use, cores, extra } = kind(i, inOrder);
      return {
        from: from.id,
        to: to.id,
        storey: to.storey,
        use,
        cores,
        points: way.points,
        length: way.length + extra,
        walls: way.walls,
      };
    }),
  };
}

const lengthsOf = (
  nodes: readonly RouteNode[],
  between: RoutePart["between"],
): readonly (readonly Metres[])[] => {
  const lengths = nodes.map(() => new Array<Metres>(nodes.length).fill(0));
  for (const [i, from] of nodes.entries())
    for (const [j, to] of nodes.entries()) {
      if (j <= i) continue;
      const { length } = between(from, to);
      (lengths[i] as Metres[])[j] = length;
      (lengths[j] as Metres[])[i] = length;
    }
  return lengths;
};

function leastOf({ start, rise, groups, buttons, between }: RoutePart): Metres {
  const nodes = [
    start,
    ...groups.flatMap(({ detectors, luminaires }) => [...detectors, ...luminaires]),
    ...buttons.map(({ node }) => node),
  ];
  return (
    shortestTree(lengthsOf(nodes, between)).length + rise + buttons.reduce((sum, { fall }) => sum + fall, 0)
  );
}

/** Cables come parents first, since every chain starts at a node of one before it. */
function farthest(cables: readonly RouteCable[], end: Metres): Metres {
  const reached = new Map<string, Metres>();
  for (const { from, to, length } of cables) reached.set(to, (reached.get(from) ?? 0) + length + 2 * end);
  return Math.max(0, ...reached.values());
}
