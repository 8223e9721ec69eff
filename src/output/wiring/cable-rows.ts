import type { Column } from "../setting-out/table.ts";
import {
  type ConductorKind,
  coloursInCable,
  conductorOrder,
  markings,
  type WiringRegion,
} from "./conductors.ts";
import { type Designations, ranges } from "./designations.ts";
import type { GroupPlan, PlannedCable } from "./plan.ts";

/** "L1 brown, N blue, PE green-yellow", lines first. */
export function conductorWords(conductors: readonly ConductorKind[], region: WiringRegion): string {
  const colours = coloursInCable(conductors, region);
  return conductors
    .toSorted((a, b) => conductorOrder.indexOf(a) - conductorOrder.indexOf(b))
    .map((kind) => (kind === "unknown" ? "unknown" : `${markings[kind]} ${colours.get(kind)}`))
    .join(", ");
}

export const sizeWords = (size: PlannedCable["size"]): string =>
  size === undefined ? "unknown" : size.from === "calculated" ? `≥ ${size.text}` : size.text;

export const lengthWords = (length: number | undefined): string =>
  length === undefined ? "measure" : length.toFixed(1);

export const groupCableColumns: readonly Column[] = [
  { head: "Cable", width: 26, align: "start" },
  { head: "From", width: 34, align: "start" },
  { head: "To, looped in and out", width: 92, align: "start" },
  { head: "Conductors; mark L′, button and signal at both ends", width: 176, align: "start" },
  { head: "Section", width: 24, align: "end" },
  { head: "Length ≈ m", width: 26, align: "end" },
];

/** The cables of a group for its drawing: a chain of equal cables is one row, its length the sum. */
export function groupCableRows(
  group: GroupPlan,
  names: Designations,
  region: WiringRegion,
): readonly (readonly string[])[] {
  const chains: PlannedCable[][] = [];
  for (const cable of group.cables) {
    const last = chains.at(-1)?.at(-1);
    if (last && last.to === cable.from && String(last.conductors) === String(cable.conductors))
      chains.at(-1)!.push(cable);
    else chains.push([cable]);
  }
  return chains.map((chain) => {
    const [first] = chain;
    const known = chain.every(({ length }) => length !== undefined);
    return [
      ranges(chain.map(({ designation }) => designation)),
      nameOf(first!.from, names),
      names.ofAll(chain.map(({ to }) => to)),
      conductorWords(first!.conductors, region),
      sizeWords(first!.size),
      lengthWords(known ? chain.reduce((sum, { length }) => sum + (length ?? 0), 0) : undefined),
    ];
  });
}

/** An end of a cable; the circuit's own wiring where nobody entered the board. */
export const nameOf = (id: string, names: Designations): string => (id === "" ? "unknown" : names.of(id));
