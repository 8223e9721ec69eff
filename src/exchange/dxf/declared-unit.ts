import type { Metres } from "#engine";
import type { DxfHeader } from "./header.ts";

/** A unit that the drawing says it is drawn in. */
export interface DeclaredUnit {
  readonly name: string;
  readonly metres: Metres;
}

const foot: Metres = 0.3048;

/** Units by the code that drawings write for them. @source FROM-MEMORY */
const units: Readonly<Record<number, DeclaredUnit>> = {
  1: { name: "in", metres: 0.0254 },
  2: { name: "ft", metres: foot },
  3: { name: "mi", metres: 5280 * foot },
  4: { name: "mm", metres: 1e-3 },
  5: { name: "cm", metres: 1e-2 },
  6: { name: "m", metres: 1 },
  7: { name: "km", metres: 1e3 },
  8: { name: "µin", metres: 0.0254e-6 },
  9: { name: "mil", metres: 0.0254e-3 },
  10: { name: "yd", metres: 3 * foot },
  11: { name: "Å", metres: 1e-10 },
  12: { name: "nm", metres: 1e-9 },
  13: { name: "µm", metres: 1e-6 },
  14: { name: "dm", metres: 1e-1 },
  15: { name: "dam", metres: 10 },
  16: { name: "hm", metres: 100 },
  17: { name: "Gm", metres: 1e9 },
  21: { name: "ft", metres: 1200 / 3937 },
  22: { name: "in", metres: 100 / 3937 },
  23: { name: "yd", metres: 3600 / 3937 },
  24: { name: "mi", metres: 5280 * (1200 / 3937) },
};

/** What a drawing declares; undefined where it declares nothing. A notation in feet and inches makes the unit an inch. */
export function declaredUnit(header: DxfHeader): DeclaredUnit | undefined {
  return units[header.units ?? 0] ?? (header.feetAndInches ? units[1] : undefined);
}
