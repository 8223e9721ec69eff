import type { Luminaire, Site } from "#engine";
import type { KeptStep } from "#job";
import type { EditStep, OpenJob } from "../contract.ts";
import { assignSteps, circuitOf } from "./assign.ts";

/** Luminaires on one proposed circuit. Common practice, no source: a short outage darkens few rooms, and drivers stay few for one breaker. */
export const mostLuminaires = 20;
/** Rated current of a proposed breaker; common practice for lighting, no source. [A] */
const rating = 10;
/** Section of a proposed cable; common practice for lighting, no source. [mm²] */
const section = 1.5;
/** Voltage where no board says otherwise. [V] */
const usualVoltage = 230;
/** Share of the rating that a proposal loads, and the power factor where none is declared. */
const loading = 0.8 * 0.8;

export interface Proposal {
  readonly site: readonly EditStep[];
  readonly kept: readonly KeptStep[];
  readonly circuits: number;
  readonly luminaires: number;
}

/**
 * Circuits for the luminaires that have none: one board for each storey without one, and so many circuits that none is large.
 *
 * Rooms that one detector switches stay on one circuit; rooms follow each other as in the job. Escape luminaires are left out: where
 * their line is taken is a person's decision. Breaker, section and readings are marked as assumed.
 *
 * @param job - The open job. @param words - Names for new boards and circuits, by number.
 * @returns Steps of one edit, and how much they propose; empty where every luminaire has a circuit.
 */
export function proposeCircuits(
  job: Pick<OpenJob, "site" | "kept" | "newId">,
  words: { readonly board: (number: number) => string; readonly circuit: (number: number) => string },
): Proposal {
  const { site, kept, newId } = job;
  const steps: KeptStep[] = [];
  const edits: EditStep[] = [];
  const names = new Set(kept.circuits.map(({ name }) => name.trim().toLowerCase()));
  let circuits = 0;
  let luminaires = 0;
  let boards = kept.boards.length;
  for (const storey of site.storeys) {
    const groups = groupsOn(site, storey.id, (one) => circuitOf(job, one) === undefined);
    if (groups.length === 0) continue;
    const there =
      kept.boards.find((board) => board.storey === storey.id) ??
      kept.boards.find((board) => board.storey === undefined) ??
      kept.boards[0];
    const board = there?.id ?? newId("boards");
    if (!there) {
      boards += 1;
      const name = words.board(boards);
      steps.push({
        do: "put",
        kind: "boards",
        record: { id: board, name, storey: storey.id, readings: "assumed" },
      });
    }
    for (const own of packed(groups, there?.voltage ?? usualVoltage)) {
      let number = 1;
      while (names.has(words.circuit(number).trim().toLowerCase())) number += 1;
      const name = words.circuit(number);
      names.add(name.trim().toLowerCase());
      const circuit = { id: newId("circuits"), name };
      steps.push({
        do: "put",
        kind: "circuits",
        record: {
          ...circuit,
          board,
          breaker: "C",
          rating,
          phases: "single-phase",
          cable: { section, cores: 3, material: "copper" },
          readings: "assumed",
        },
      });
      edits.push(...assignSteps([], own, circuit));
      circuits += 1;
      luminaires += own.length;
    }
  }
  return { site: edits, kept: steps, circuits, luminaires };
}

/** Luminaires without a circuit, by the rooms that are switched together. */
function groupsOn(
  site: Site,
  storey: string,
  wanted: (luminaire: Luminaire) => boolean,
): readonly (readonly Luminaire[])[] {
  const rooms = site.rooms.filter((room) => room.storey === storey).map(({ id }) => id);
  const leader = new Map(rooms.map((id) => [id, id]));
  const find = (id: string): string => {
    const next = leader.get(id) ?? id;
    return next === id ? id : find(next);
  };
  for (const { room, controls } of site.detectors) {
    const [first, ...others] = (controls.length > 0 ? controls : [room]).filter((id) => leader.has(id));
    for (const other of others) if (first) leader.set(find(other), find(first));
  }
  const groups = new Map<string, Luminaire[]>();
  for (const id of rooms) groups.set(find(id), groups.get(find(id)) ?? []);
  for (const room of rooms)
    for (const one of site.luminaires)
      if (one.room === room && one.emergency === undefined && wanted(one)) groups.get(find(room))?.push(one);
  return [...groups.values()].filter((group) => group.length > 0);
}

/** Groups in their order into circuits; a group that is too large for one is cut. */
function packed(
  groups: readonly (readonly Luminaire[])[],
  voltage: number,
): readonly (readonly Luminaire[])[] {
  const mostPower = loading * rating * voltage;
  const fits = (all: readonly Luminaire[]): boolean =>
    all.length <= mostLuminaires && all.reduce((sum, { power }) => sum + (power ?? 0), 0) <= mostPower;
  const circuits: Luminaire[][] = [];
  for (const group of groups) {
    const last = circuits.at(-1);
    if (last && fits([...last, ...group])) {
      last.push(...group);
      continue;
    }
    circuits.push([]);
    for (const one of group) {
      const own = circuits.at(-1) as Luminaire[];
      if (own.length === 0 || fits([...own, one])) own.push(one);
      else circuits.push([one]);
    }
  }
  return circuits;
}
