import { type Said, say } from "../../check/index.ts";
import type { Board, Supply } from "../model.ts";
import { coveredSupplies } from "../supply.ts";
import type { FoundBoard, FoundInstallation, WiringAssumption } from "./found.ts";

/** Share by which a reading may lie beside the nominal voltage and still be meant. */
const NEAR_NOMINAL = 0.1;

/**
 * The supply of an installation by what its boards say.
 *
 * A reading within 10 % of a covered voltage stands for it. Each board has its own supply; that of most circuits is the installation's.
 *
 * @param found - Boards and circuits as entered.
 * @returns Supply, and what was taken for granted.
 * @example One board, TN-S, 228 V: 230 V, 50 Hz, TN-S
 */
export function supplyOf(found: FoundInstallation): {
  readonly supply: Supply;
  readonly assumptions: readonly WiringAssumption[];
} {
  const { boards, circuits } = found;
  const fed = ({ id }: FoundBoard): number => circuits.filter(({ board }) => board === id).length;
  const [main] = boards.toSorted((a, b) => fed(b) - fed(a));
  const several = new Set(boards.map((board) => JSON.stringify(supplyOfBoard(board)))).size > 1;
  const loose = circuits.filter(({ board }) => !boards.some(({ id }) => id === board));
  const said = (text: Said, those: readonly { readonly id: string }[]): readonly WiringAssumption[] =>
    those.length === 0 ? [] : [{ text, records: those.map(({ id }) => id) }];
  const silent = boards.filter(({ voltage }) => voltage === undefined);
  return {
    supply: supplyOfBoard(main),
    assumptions: [
      ...said(say`230 V at 50 Hz; nobody entered the voltage`, boards.length === 0 ? circuits : silent),
      ...said(
        say`Supplied from the public network, the stricter limit of the voltage drop`,
        boards.filter(({ network }) => network === undefined),
      ),
      ...said(
        say`Voltage factor 1 in fault calculations; some countries ask for 0.95`,
        boards.filter((board) => supplyOfBoard(board).region === "IEC"),
      ),
      ...said(say`The supply of most circuits, since their board is not on record`, several ? loose : []),
    ],
  };
}

function supplyOfBoard(board: FoundBoard | undefined): Supply {
  const voltage = board?.voltage === undefined ? 230 : nominal(board.voltage);
  const covered = coveredSupplies.find((known) => known.voltage === voltage);
  return {
    region: covered?.region ?? "IEC",
    system: board?.system ?? "unknown",
    voltage,
    frequency: covered?.frequency ?? 50,
    neutral: "unknown",
    network: board?.network === "private" ? "private" : "public",
    voltageFactor: 1,
  };
}

const nominal = (reading: number): number =>
  coveredSupplies
    .map(({ voltage }) => voltage)
    .filter((voltage) => Math.abs(reading - voltage) <= NEAR_NOMINAL * voltage)
    .toSorted((a, b) => Math.abs(reading - a) - Math.abs(reading - b))[0] ?? reading;

/** The boards for the calculation. @param found - As entered. @returns Boards without their place; readings that somebody only assumed are named. @example A loop of 0.35 Ω, assumed: listed */
export const boardsOf = (
  found: FoundInstallation,
): {
  readonly boards: readonly Board[];
  readonly assumptions: readonly WiringAssumption[];
} => {
  const usual = JSON.stringify(supplyOf(found).supply);
  return {
    boards: found.boards.map((board) => {
      const {
        storey: _,
        at: __,
        system: ___,
        voltage: ____,
        network: _____,
        readings: ______,
        ...rest
      } = board;
      const own = supplyOfBoard(board);
      return JSON.stringify(own) === usual ? rest : { ...rest, supply: own };
    }),
    assumptions: found.boards
      .filter(({ readings, ...board }) => readings !== "measured" && hasReadings(board))
      .map(({ id, name }) => ({
        text: name
          ? say`Readings at ${name} were not measured`
          : say`Readings at the board were not measured`,
        records: [id],
      })),
  };
};

const hasReadings = ({
  loopImpedance,
  faultCurrent,
  dropUsed,
  earthResistance,
}: Omit<FoundBoard, "readings">): boolean =>
  [loopImpedance, faultCurrent, dropUsed, earthResistance].some((reading) => reading !== undefined);
