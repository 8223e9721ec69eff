import type { Point } from "#engine";
import type { Run, WiringKnown } from "../calculate/wire-protocol.ts";
import type { Workbench } from "../shell/workbench.ts";
import { isSame, viaOf } from "./held-pin.ts";
import { roomsOn } from "./pick.ts";

/** What the plan shows of the wiring of one storey; the same object while nothing of it has changed. */
export interface Wires {
  readonly runs: readonly WireRun[];
  readonly boards: readonly { readonly name: string; readonly at: Point }[];
  /** Places that the cable of the circuit that one looks at passes, as a person chose them. */
  readonly pins: readonly Point[];
  /** Luminaires that are on no circuit. */
  readonly lost: readonly Point[];
}

export interface WireRun extends Pick<Run, "kind" | "lines"> {
  /** Breaks of the line, in pixels, that tell its circuit without colour. */
  readonly pattern: readonly number[];
  /** How far it is drawn beside where it lies, so that circuits on one way are told apart. [px] */
  readonly beside: number;
  /** Name of the circuit and of its breaker. */
  readonly label: string;
  /** chosen: one looks at this circuit · other: one looks at another. */
  readonly look: "chosen" | "other" | "plain";
}

/** Circuits on one way lie side by side, so many before they share a place, and so far apart. [px] */
const lanes = 5;
const laneWidth = 2.25;

/** The cables of a route on one storey, each with both of its ends. */
export const stretchesOn = (of: {
  readonly wiring: WiringKnown | undefined;
  readonly storey: string;
  readonly circuit: string;
}): NonNullable<Run["ends"]> =>
  (of.wiring?.runs ?? []).flatMap((run) =>
    run.storey === of.storey && run.circuit === of.circuit ? (run.ends ?? []) : [],
  );

/** Told apart without colour. [px] */
const patterns = [[], [12, 4], [12, 3, 2, 3], [5, 3], [14, 3, 2, 3, 2, 3], [2, 3]] as const;

/** Where among the circuits of one way a circuit is drawn. @param circuits - Of the job, in order. @param id - Of the circuit. @returns Its index, and how far beside the way it lies. [px] */
export function laneOf(
  circuits: readonly { readonly id: string }[],
  id: string | undefined,
): { readonly index: number; readonly beside: number } {
  const index = circuits.findIndex((one) => one.id === id);
  return { index, beside: ((Math.max(0, index) % lanes) - (lanes - 1) / 2) * laneWidth };
}

let last: { readonly inputs: readonly unknown[]; readonly wires: Wires } | undefined;

/** The wiring of the storey on show; undefined outside its stage. */
export function wiresOf(bench: Workbench): Wires | undefined {
  const { stage, wiring, storey, job, pin } = bench;
  if (stage !== "wire" || !wiring) return undefined;
  const chosen = chosenCircuit(bench, wiring);
  const inputs = [wiring, storey, chosen, pin, job.kept.boards, job.kept.circuits, job.site.luminaires];
  if (!last || inputs.some((one, i) => one !== last?.inputs[i]))
    last = { inputs, wires: made(bench, chosen) };
  return last.wires;
}

/** The circuit of the first selected thing that is on one, else the one that is open in the card. */
function chosenCircuit({ selection, circuit }: Workbench, { circuits }: WiringKnown): string | undefined {
  for (const { id } of selection)
    for (const [own, { luminaires, detectors }] of circuits)
      if (luminaires.includes(id) || detectors.includes(id)) return own;
  return circuit;
}

function made({ wiring, storey, job, pin }: Workbench, circuit: string | undefined): Wires {
  const { boards, circuits } = job.kept;
  const rooms = roomsOn(job.site, storey);
  const looked = circuits.find(({ id }) => id === circuit);
  const board = boards.find(({ id }) => id === looked?.board);
  const held = pin?.circuit === looked?.id ? pin : undefined;
  const fed = new Set([...(wiring?.circuits.values() ?? [])].flatMap(({ luminaires }) => luminaires));
  return {
    runs: (wiring?.runs ?? []).flatMap((run): readonly WireRun[] => {
      if (run.storey !== storey) return [];
      const { index, beside } = laneOf(circuits, run.circuit);
      const own = circuits[index];
      const breaker =
        own?.rating === undefined || own.breaker === "unknown"
          ? ""
          : own.breaker === "fuse-gG"
            ? ` gG ${own.rating}`
            : ` ${own.breaker}${own.rating}`;
      return [
        {
          kind: run.kind,
          lines: run.lines,
          pattern: patterns[Math.max(0, index) % patterns.length] ?? [],
          beside,
          label: own ? `${own.name || own.id}${breaker}` : "",
          look: circuit === undefined ? "plain" : run.circuit === circuit ? "chosen" : "other",
        },
      ];
    }),
    boards: boards.flatMap(({ name, at, storey: on }) => (at && on === storey ? [{ name, at }] : [])),
    pins: looked
      ? stretchesOn({ wiring, storey, circuit: looked.id }).flatMap(({ from, to }) => {
          const stretch = from === board?.id && board.storey === storey ? "first" : { from, to };
          return held && isSame(held.stretch, stretch) ? held.via : viaOf(looked, stretch);
        })
      : [],
    lost: job.site.luminaires.flatMap(({ id, room, at, emergency }) =>
      rooms.has(room) && emergency === undefined && !fed.has(id) ? [at] : [],
    ),
  };
}
