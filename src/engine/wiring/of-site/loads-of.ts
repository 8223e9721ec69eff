import { type Problem, type Said, say } from "../../check/index.ts";
import { type Luminaire, roomTitle, type Site } from "../../site/index.ts";
import type { Load } from "../model.ts";
import { circuitNamed, open } from "./circuits-of.ts";
import type { FoundInstallation, WiringAssumption } from "./found.ts";

/** A luminaire with the circuit that it is on; undefined where nobody knows. */
export interface PlacedLuminaire {
  readonly luminaire: Luminaire;
  readonly circuit: string | undefined;
}

/** Luminaires with their circuits. @param site - The site. @param found - Boards and circuits. @returns One for each luminaire. @example "Lighting 1" twice among the circuits: undefined */
export const placedLuminaires = (site: Site, found: FoundInstallation): readonly PlacedLuminaire[] =>
  site.luminaires.map((luminaire) => ({ luminaire, circuit: circuitNamed(found, luminaire.circuit)?.id }));

/** A luminaire on its circuit and on the conductor that switches it. */
export interface FedLuminaire {
  readonly luminaire: Luminaire;
  readonly circuit: string;
  readonly switchedLine: string | undefined;
}

/**
 * Loads of the model, one for each luminaire whose circuit is known or taken for granted.
 *
 * @param site - The site. @param found - Boards and circuits. @param fed - Luminaires with what feeds them.
 * @returns Loads, and what was taken for granted.
 * @example A luminaire without a kind: "led", said once for all
 */
export function loadsOf(
  site: Site,
  found: FoundInstallation,
  fed: readonly FedLuminaire[],
): { readonly loads: readonly Load[]; readonly assumptions: readonly WiringAssumption[] } {
  const grounded = new Map(found.circuits.map(({ id, protectiveConductor }) => [id, protectiveConductor]));
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const said = (text: Said, those: readonly FedLuminaire[]): readonly WiringAssumption[] =>
    those.length === 0 ? [] : [{ text, records: those.map(({ luminaire }) => luminaire.id) }];
  return {
    loads: fed.map(({ luminaire, circuit, switchedLine }): Load => {
      const { id, room, power, powerFactor, drivers, inrush, inputCapacitance, leakage, line } = luminaire;
      const { driversPerBreaker, protectionClass, emergency } = luminaire;
      return {
        id,
        name: luminaireInRoom(luminaire.name.trim(), roomTitle(rooms.get(room))),
        room,
        kind: luminaire.load ?? "led",
        circuit,
        count: 1,
        protectiveConductor: grounded.get(circuit) ?? "unknown",
        classOne: protectionClass === undefined ? "unknown" : protectionClass === "I" ? "yes" : "no",
        ...(line === undefined ? {} : { line }),
        ...(power === undefined ? {} : { power }),
        ...(powerFactor === undefined ? {} : { powerFactor }),
        ...(drivers === undefined ? {} : { drivers }),
        ...(inrush === undefined ? {} : { inrush }),
        ...(inputCapacitance === undefined ? {} : { inputCapacitance }),
        ...(driversPerBreaker === undefined ? {} : { driversPerBreaker }),
        ...(leakage === undefined ? {} : { leakage }),
        ...(switchedLine === undefined ? {} : { switchedLine }),
        ...(emergency === undefined
          ? {}
          : {
              emergency: {
                taken: emergency.taken,
                senses: circuitNamed(found, emergency.senses)?.id ?? emergency.senses,
              },
            }),
      };
    }),
    assumptions: [
      ...said(
        say`With an electronic driver where nobody said what a luminaire is`,
        fed.filter(({ luminaire }) => luminaire.load === undefined),
      ),
      ...said(
        say`One driver in each luminaire where nobody counted`,
        fed.filter(({ luminaire }) => luminaire.drivers === undefined),
      ),
      ...said(
        say`Always on, since no detector switches them`,
        fed.filter(({ switchedLine }) => switchedLine === undefined),
      ),
    ],
  };
}

const luminaireInRoom = (name: string, room: string): Said =>
  name === "" ? say`luminaire in ${room}` : say`${name} in ${room}`;

/** Luminaires whose circuit nobody knows, as one finding for each room. @param site - The site. @param placed - Luminaires with circuits. @returns Problems. @example Six in one room: one finding */
export function circuitDoubts(site: Site, placed: readonly PlacedLuminaire[]): readonly Problem[] {
  return site.rooms.flatMap((room) => {
    const lost = placed.filter(
      ({ luminaire, circuit }) => circuit === undefined && luminaire.room === room.id,
    );
    return lost.length === 0
      ? []
      : [
          open({
            name: roomTitle(room),
            what: say`which circuit feeds ${lost.length} of its luminaires`,
            missing: say`the circuit of each luminaire, and each circuit under a name of its own`,
            room: room.id,
            records: lost.map(({ luminaire }) => luminaire.id),
          }),
        ];
  });
}
