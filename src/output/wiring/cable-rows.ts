import { joined, say, type Words } from "#engine";
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
export function conductorWords(conductors: readonly ConductorKind[], region: WiringRegion): Words {
  const colours = coloursInCable(conductors, region);
  return joined(
    conductors
      .toSorted((a, b) => conductorOrder.indexOf(a) - conductorOrder.indexOf(b))
      .map((kind) =>
        kind === "unknown" ? say`unknown` : joined([markings[kind], colours.get(kind) ?? ""], " "),
      ),
    ", ",
  );
}

export const sizeWords = (size: PlannedCable["size"]): Words =>
  size === undefined ? say`unknown` : size.from === "calculated" ? `≥ ${size.text}` : size.text;

export const lengthWords = (length: number | undefined): Words =>
  length === undefined ? say`measure` : length.toFixed(1);

export const groupCableColumns: readonly Column[] = [
  { head: say`Cable`, width: 26, align: "start" },
  { head: say`From`, width: 34, align: "start" },
  { head: say`To, looped in and out`, width: 92, align: "start" },
  { head: say`Conductors; mark L′, button and signal at both ends`, width: 176, align: "start" },
  { head: say`Section`, width: 24, align: "end" },
  { head: say`Length ≈ m`, width: 26, align: "end" },
];

/** The cables of a group for its drawing: a chain of equal cables is one row, its length the sum. */
export function groupCableRows(
  group: GroupPlan,
  names: Designations,
  region: WiringRegion,
): readonly (readonly Words[])[] {
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
export const nameOf = (id: string, names: Designations): Words => (id === "" ? say`unknown` : names.of(id));
