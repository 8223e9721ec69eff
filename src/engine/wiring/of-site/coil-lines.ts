import { say, type Words } from "../../check/index.ts";
import type { FoundContactor } from "./found.ts";
import type { PlacedLuminaire } from "./loads-of.ts";

/** A contactor with the lines of its coil and of its main contacts. */
export interface PlacedContactor {
  readonly found: FoundContactor;
  /** That its main contacts feed from. */
  readonly circuit: string;
  readonly coil: { readonly id: string; readonly name: Words };
  readonly main: { readonly id: string; readonly name: Words };
  readonly luminaires: readonly PlacedLuminaire[];
}

/** The conductors that feed coils, each once, with all detectors on it. @param contactors - Of a site. @returns One for each coil line. @example Two contactors that one detector holds: one line */
export function coilLines(
  contactors: readonly PlacedContactor[],
): readonly { readonly coil: PlacedContactor["coil"]; readonly detectors: ReadonlySet<string> }[] {
  const lines = new Map<
    string,
    { readonly coil: PlacedContactor["coil"]; readonly detectors: Set<string> }
  >();
  for (const { coil, found } of contactors) {
    const line = lines.get(coil.id) ?? { coil, detectors: new Set<string>() };
    for (const id of found.detectors) line.detectors.add(id);
    lines.set(coil.id, line);
  }
  return [...lines.values()];
}

/** One contact has one conductor: coils that share a detector, however many steps apart, hang on the same. @param contactors - With the circuits that they stand at. @returns Coil line by contactor. @example K1 held by D1, K2 by D1 and D2, K3 by D2: one line */
export function sharedCoils(
  contactors: readonly { readonly found: FoundContactor; readonly circuit: string }[],
): ReadonlyMap<FoundContactor, PlacedContactor["coil"]> {
  const groups: { own: (typeof contactors)[number][]; detectors: Set<string> }[] = [];
  for (const one of contactors) {
    const touching = groups.filter(({ detectors }) => one.found.detectors.some((id) => detectors.has(id)));
    const merged = {
      own: [...touching.flatMap(({ own }) => own), one],
      detectors: new Set([...touching.flatMap(({ detectors }) => [...detectors]), ...one.found.detectors]),
    };
    for (const group of touching) groups.splice(groups.indexOf(group), 1);
    groups.push(merged);
  }
  return new Map(
    groups.flatMap(({ own }) => {
      const [first] = own as [(typeof contactors)[number]];
      const name = own.map(({ found }) => found.name.trim() || found.id).join(", ");
      const coil = {
        id: `coil of ${first.circuit} ${first.found.id}`,
        name: say`the coil line of ${name}`,
      };
      return own.map(({ found }) => [found, coil] as const);
    }),
  );
}
