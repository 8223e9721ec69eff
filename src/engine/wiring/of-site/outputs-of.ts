import { type Problem, type Said, say, type Words } from "../../check/index.ts";
import type { Detector, Site } from "../../site/index.ts";
import { circuitNamed, circuitTitle, open } from "./circuits-of.ts";
import { coilLines, type PlacedContactor, sharedCoils } from "./coil-lines.ts";
import type { FoundInstallation, WiringAssumption } from "./found.ts";
import type { FedLuminaire, PlacedLuminaire } from "./loads-of.ts";

/** A detector with the circuit that feeds it and the conductor that it switches. */
export interface FedDetector {
  readonly detector: Detector;
  readonly circuit: string | undefined;
  readonly switchedLine: string | undefined;
}

/** A conductor with the detectors whose outputs are joined on it. */
export interface JoinedOutputs {
  readonly id: string;
  readonly name: Words;
  readonly detectors: readonly Detector[];
}

export interface Outputs {
  readonly lines: readonly JoinedOutputs[];
  readonly contactors: readonly PlacedContactor[];
  readonly detectors: readonly FedDetector[];
  readonly luminaires: readonly FedLuminaire[];
  readonly assumptions: readonly WiringAssumption[];
  readonly doubts: readonly Problem[];
}

/** What one detector switches, as far as that can be told. */
interface Claim {
  readonly detector: Detector;
  readonly circuit: string | undefined;
  readonly luminaires: readonly PlacedLuminaire[];
}

/**
 * What each detector switches, and from which circuit.
 *
 * A person's word first: the luminaires and the circuit entered at the detector. Otherwise the luminaires of the rooms that it
 * controls, if all whose circuit is known are on one; those there without a circuit count with them. On several circuits nothing
 * is chosen. Escape luminaires are left on their unswitched line. Detectors that switch the same luminaire are joined.
 *
 * @param site - The site. @param found - Boards and circuits. @param placed - Luminaires with circuits.
 * @returns Conductors, detectors and luminaires, what was taken for granted, and what is open.
 * @example Two detectors over the corridor's eight luminaires: one conductor, both outputs joined
 */
export function outputsOf(site: Site, found: FoundInstallation, placed: readonly PlacedLuminaire[]): Outputs {
  const claimed = new Set(site.detectors.flatMap(({ luminaires }) => luminaires ?? []));
  const doubts: Problem[] = [];
  const claims = site.detectors.map((detector) => {
    const claim = claimOf(detector, found, placed, claimed);
    doubts.push(...claim.doubts);
    return claim;
  });
  const contactors = contactorsOf(found, { claims, placed });
  const coils = new Set(contactors.flatMap(({ found: one }) => one.detectors));
  const behind = new Map(
    contactors.flatMap((one) => one.luminaires.map(({ luminaire }) => [luminaire.id, one] as const)),
  );
  const switching = claims
    .filter(({ detector }) => !coils.has(detector.id))
    .map((claim) => ({
      ...claim,
      luminaires: claim.luminaires.filter(({ luminaire }) => !behind.has(luminaire.id)),
    }))
    .filter(({ luminaires }) => luminaires.length > 0);
  const lines = [
    ...joined(switching),
    ...coilLines(contactors).map(({ coil, detectors }) => ({
      ...coil,
      detectors: site.detectors.filter(({ id }) => detectors.has(id)),
    })),
    ...contactors.map(({ main }) => ({ ...main, detectors: [] })),
  ];
  const lineOf = new Map(lines.flatMap(({ id, detectors }) => detectors.map((one) => [one.id, id] as const)));
  const byLuminaire = new Map<string, Claim>();
  for (const claim of switching)
    for (const { luminaire } of claim.luminaires)
      if (!byLuminaire.has(luminaire.id)) byLuminaire.set(luminaire.id, claim);
  const together = lines.filter(({ detectors }) => detectors.length > 1);
  const byRooms = switching.filter(({ detector }) => detector.luminaires === undefined);
  const byLoad = switching.filter(({ detector }) => detector.circuit === undefined);
  const silent = placed.filter(
    ({ luminaire, circuit }) => circuit === undefined && byLuminaire.get(luminaire.id)?.circuit !== undefined,
  );
  return {
    lines,
    contactors,
    detectors: claims.map(({ detector, circuit }) => ({
      detector,
      circuit,
      switchedLine: lineOf.get(detector.id),
    })),
    luminaires: placed.flatMap(({ luminaire, circuit }) => {
      const claim = byLuminaire.get(luminaire.id);
      const contactor = behind.get(luminaire.id);
      const feeding = circuit ?? contactor?.circuit ?? claim?.circuit;
      return feeding === undefined
        ? []
        : [
            {
              luminaire,
              circuit: feeding,
              switchedLine: contactor?.main.id ?? (claim ? lineOf.get(claim.detector.id) : undefined),
            },
          ];
    }),
    assumptions: [
      ...said(
        say`Switches the luminaires of the rooms that it controls, all on one circuit`,
        byRooms.map(({ detector }) => detector.id),
      ),
      ...said(
        say`Line and neutral come from the circuit of the luminaires that it switches`,
        byLoad.map(({ detector }) => detector.id),
      ),
      ...together.map(({ detectors }) => ({
        text: say`Outputs are joined, since they switch the same luminaires`,
        records: detectors.map(({ id }) => id),
      })),
      ...said(
        say`On the circuit of the others that the same detector switches`,
        silent.map(({ luminaire }) => luminaire.id),
      ),
    ],
    doubts,
  };
}

const said = (text: Said, records: readonly string[]): readonly WiringAssumption[] =>
  records.length === 0 ? [] : [{ text, records }];

function claimOf(
  detector: Detector,
  found: FoundInstallation,
  placed: readonly PlacedLuminaire[],
  claimed: ReadonlySet<string>,
): Claim & { readonly doubts: readonly Problem[] } {
  const named = circuitNamed(found, detector.circuit);
  const about = { name: detector.tag || detector.id, room: detector.room, records: [detector.id] };
  const lost =
    detector.circuit?.trim() && !named
      ? [
          open({
            ...about,
            what: say`its circuit ${detector.circuit}, which is not on record, or not under this name alone`,
            missing: say`the circuit that feeds it`,
          }),
        ]
      : [];
  if (detector.output === "signals") return { detector, circuit: named?.id, luminaires: [], doubts: lost };
  const rooms = detector.controls.length > 0 ? detector.controls : [detector.room];
  const own = detector.luminaires
    ? placed.filter(({ luminaire }) => detector.luminaires?.includes(luminaire.id))
    : placed.filter(
        ({ luminaire, circuit }) =>
          rooms.includes(luminaire.room) &&
          !claimed.has(luminaire.id) &&
          luminaire.emergency === undefined &&
          (named === undefined || circuit === undefined || circuit === named.id),
      );
  const gone = (detector.luminaires ?? []).length - own.length;
  const missing =
    detector.luminaires && gone > 0
      ? [
          open({
            ...about,
            what: say`the load on its contact, since ${gone} of its luminaires are not on record`,
            missing: say`the luminaires that it switches`,
          }),
        ]
      : [];
  const circuits = [...new Set(own.flatMap(({ circuit }) => (circuit === undefined ? [] : [circuit])))];
  const [only] = circuits;
  if (own.length === 0)
    return {
      detector,
      circuit: named?.id,
      luminaires: [],
      doubts: [
        ...lost,
        ...missing,
        open({ ...about, what: say`the load on its contact`, missing: say`the luminaires that it switches` }),
      ],
    };
  if (!detector.luminaires && !named && circuits.length > 1)
    return {
      detector,
      circuit: undefined,
      luminaires: [],
      doubts: [
        ...lost,
        open({
          ...about,
          what: say`which of the circuits ${circuits.map((id) => circuitTitle(found.circuits.find((one) => one.id === id) ?? { id, name: "" })).join(", ")} it switches`,
          missing: say`the circuit that feeds it`,
        }),
      ],
    };
  // A circuit that was named and not found stays unknown; the load's is no answer to that.
  const circuit = detector.circuit?.trim() ? named?.id : circuits.length === 1 ? only : undefined;
  return { detector, circuit, luminaires: own, doubts: [...lost, ...missing] };
}

/** Contactors with what they switch: the luminaires on record, otherwise those that their detectors would switch themselves. */
const contactorsOf = (
  found: FoundInstallation,
  { claims, placed }: { readonly claims: readonly Claim[]; readonly placed: readonly PlacedLuminaire[] },
): readonly PlacedContactor[] => {
  const coils = sharedCoils(
    found.circuits.flatMap(({ id, contactors = [] }) =>
      contactors.map((one) => ({ found: one, circuit: id })),
    ),
  );
  return found.circuits.flatMap(({ id, contactors = [] }) =>
    contactors.map((one): PlacedContactor => {
      const name = one.name.trim() || one.id;
      const own = claims.filter(({ detector }) => one.detectors.includes(detector.id));
      const would = new Set(own.flatMap(({ luminaires }) => luminaires.map(({ luminaire }) => luminaire.id)));
      return {
        found: one,
        circuit: id,
        coil: coils.get(one) ?? { id: `coil of ${id} ${one.id}`, name: say`the coil line of ${name}` },
        main: { id: `main of ${id} ${one.id}`, name: say`the line behind ${name}` },
        luminaires: placed.filter(({ luminaire }) =>
          one.luminaires ? one.luminaires.includes(luminaire.id) : would.has(luminaire.id),
        ),
      };
    }),
  );
};

/** Claims that share a luminaire, however many steps apart, end on one conductor. */
function joined(claims: readonly Claim[]): readonly JoinedOutputs[] {
  const groups: { detectors: Detector[]; luminaires: Set<string> }[] = [];
  for (const { detector, luminaires } of claims) {
    const own = new Set(luminaires.map(({ luminaire }) => luminaire.id));
    const touching = groups.filter((group) => [...own].some((id) => group.luminaires.has(id)));
    const merged = {
      detectors: [...touching.flatMap((group) => group.detectors), detector],
      luminaires: new Set([...touching.flatMap((group) => [...group.luminaires]), ...own]),
    };
    for (const group of touching) groups.splice(groups.indexOf(group), 1);
    groups.push(merged);
  }
  return groups.map(({ detectors }) => ({
    id: `switched by ${detectors[0]?.id}`,
    name: say`the line switched by ${detectors.map(({ tag, id }) => tag || id).join(", ")}`,
    detectors,
  }));
}
