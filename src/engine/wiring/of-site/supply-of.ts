import type { Board, Supply } from "../model.ts";
import { coveredSupplies } from "../supply.ts";
import type { FoundBoard, FoundInstallation, WiringAssumption } from "./found.ts";

/** Share by which a reading may lie beside the nominal voltage and still be meant. */
const NEAR_NOMINAL = 0.1;

/**
 * The supply of an installation by what its boards say.
 *
 * A reading within 10 % of a covered voltage stands for it. Boards that disagree leave the earthing system unknown, save that one IT system refuses the whole.
 *
 * @param found - Boards and circuits as entered.
 * @returns Supply, and what was taken for granted.
 * @example One board, TN-S, 228 V: 230 V, 50 Hz, TN-S
 */
export function supplyOf(found: FoundInstallation): {
  readonly supply: Supply;
  readonly assumptions: readonly WiringAssumption[];
} {
  const { boards } = found;
  const records = boards.map(({ id }) => id);
  const systems = new Set(boards.map(({ system }) => system));
  const voltages = new Set(
    boards.flatMap(({ voltage }) => (voltage === undefined ? [] : [nominal(voltage)])),
  );
  const [voltage = 230] = voltages;
  // Two voltages cannot be one supply: a figure that is covered nowhere has the calculation refused.
  const one = voltages.size > 1 ? 0 : voltage;
  const covered = coveredSupplies.find((known) => known.voltage === one);
  const networks = new Set(boards.map(({ network }) => network));
  const [network] = networks;
  return {
    supply: {
      region: covered?.region ?? "IEC",
      system: systems.has("IT") ? "IT" : systems.size === 1 ? ([...systems][0] ?? "unknown") : "unknown",
      voltage: one,
      frequency: covered?.frequency ?? 50,
      neutral: "unknown",
      network: networks.size === 1 && network === "private" ? "private" : "public",
      voltageFactor: 1,
    },
    assumptions: [
      ...(voltages.size === 0 ? [{ text: "230 V at 50 Hz; nobody entered the voltage", records }] : []),
      ...(systems.size > 1
        ? [{ text: "The boards have different earthing systems, so none is taken for known", records }]
        : []),
      ...(networks.size === 1 && network !== undefined
        ? []
        : [{ text: "Supplied from the public network, the stricter limit of the voltage drop", records }]),
      { text: "Voltage factor 1 in fault calculations; some countries ask for 0.95", records },
    ],
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
} => ({
  boards: found.boards.map(
    ({ storey: _, at: __, system: ___, voltage: ____, network: _____, readings: ______, ...board }) => board,
  ),
  assumptions: found.boards
    .filter(({ readings, ...board }) => readings !== "measured" && hasReadings(board))
    .map(({ id, name }) => ({ text: `Readings at ${name || "the board"} were not measured`, records: [id] })),
});

const hasReadings = ({
  loopImpedance,
  faultCurrent,
  dropUsed,
  earthResistance,
}: Omit<FoundBoard, "readings">): boolean =>
  [loopImpedance, faultCurrent, dropUsed, earthResistance].some((reading) => reading !== undefined);
