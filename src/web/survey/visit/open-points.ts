import type { OpenJob } from "../../contract.ts";
import type { TextKey } from "../../texts/visit.ts";

/** Something of the installation that nobody knows yet. */
export interface OpenPoint {
  /** Board or circuit that it belongs to; absent: the house as a whole. */
  readonly of:
    | { readonly kind: "boards" | "circuits"; readonly id: string; readonly name: string }
    | undefined;
  readonly word: TextKey;
}

/** Every point that is still open: unknown is never taken for no, and what is only assumed or to be measured is no reading. */
export function openPoints({ kept }: Pick<OpenJob, "kept">): readonly OpenPoint[] {
  const points: OpenPoint[] = [];
  if (asbestosIsOpen(kept.visit)) points.push({ of: undefined, word: "visit.open.asbestos" });
  if (kept.boards.length === 0) points.push({ of: undefined, word: "visit.open.no-board" });
  if (kept.circuits.length === 0) points.push({ of: undefined, word: "visit.open.no-circuit" });
  for (const board of kept.boards) {
    const of = { kind: "boards", id: board.id, name: board.name } as const;
    const open = (word: TextKey, is: boolean): void => {
      if (is) points.push({ of, word });
    };
    open("visit.board.system", board.system === "unknown");
    open("visit.board.voltage", board.voltage === undefined);
    open("visit.board.loop", board.loopImpedance === undefined);
    open("visit.board.fault", board.faultCurrent === undefined);
    open("visit.board.drop", board.dropUsed === undefined);
    open(
      `visit.open.readings-${board.readings === "assumed" ? "assumed" : "unmeasured"}`,
      board.readings !== "measured",
    );
  }
  for (const circuit of kept.circuits) {
    const of = { kind: "circuits", id: circuit.id, name: circuit.name } as const;
    const open = (word: TextKey, is: boolean): void => {
      if (is) points.push({ of, word });
    };
    open("visit.circuit.board", !kept.boards.some(({ id }) => id === circuit.board));
    open("visit.circuit.breaker", circuit.breaker === "unknown");
    open("visit.circuit.rating", circuit.rating === undefined);
    open("visit.circuit.residual", circuit.rcd === "yes" && circuit.residualCurrent === undefined);
    for (const known of knownPoints) open(`visit.circuit.${known}`, circuit[known] === "unknown");
  }
  return points;
}

/** What is yes, no, or not known of a circuit. */
export const knownPoints = [
  "rcd",
  "protectiveConductor",
  "neutralAtSwitch",
  "twoWay",
  "sharedNeutral",
  "oldColours",
  "driversKnown",
] as const;

/** Until somebody saw the register, or knows that there is none, nobody should drill. */
export const asbestosIsOpen = ({ asbestosRegister }: OpenJob["kept"]["visit"]): boolean =>
  asbestosRegister === undefined || asbestosRegister === "not-seen";
