import { type IfcModel, numberOf, refOf, refsOf, textOf, wordOf } from "./model.ts";

const prefixes: Readonly<Record<string, number>> = {
  EXA: 1e18,
  PETA: 1e15,
  TERA: 1e12,
  GIGA: 1e9,
  MEGA: 1e6,
  KILO: 1e3,
  HECTO: 1e2,
  DECA: 1e1,
  DECI: 1e-1,
  CENTI: 1e-2,
  MILLI: 1e-3,
  MICRO: 1e-6,
  NANO: 1e-9,
  PICO: 1e-12,
  FEMTO: 1e-15,
  ATTO: 1e-18,
};

export interface LengthUnit {
  /** Metres in one unit of the file. [m] */
  readonly metres: number;
  /** How the file names it, for the report. */
  readonly name: string;
}

/** Length unit of the project; undefined where the file names none. @source ISO-16739, IfcUnitAssignment */
export function lengthUnit(model: IfcModel): LengthUnit | undefined {
  const assignment =
    model.ids("IFCPROJECT").flatMap((id) => refOf(model.values(id)[8]) ?? [])[0] ??
    model.ids("IFCUNITASSIGNMENT")[0];
  if (assignment === undefined) return undefined;
  for (const unit of refsOf(model.values(assignment)[0])) {
    if (wordOf(model.values(unit)[1]) !== "LENGTHUNIT") continue;
    const found = unitOf(model, unit, 0);
    if (found && found.metres > 0) return found;
  }
  return undefined;
}

/** Square metres in one unit of area of the project: its own area unit, else the length unit squared. [m²] */
export function areaUnit(model: IfcModel, length: number): number {
  const assignment =
    model.ids("IFCPROJECT").flatMap((id) => refOf(model.values(id)[8]) ?? [])[0] ??
    model.ids("IFCUNITASSIGNMENT")[0];
  for (const unit of assignment === undefined ? [] : refsOf(model.values(assignment)[0])) {
    if (wordOf(model.values(unit)[1]) !== "AREAUNIT") continue;
    return unitOf(model, unit, 0)?.metres ?? length * length;
  }
  return length * length;
}

const unitOf = (model: IfcModel, id: number, depth: number): LengthUnit | undefined => {
  const values = model.values(id);
  if (model.type(id) === "IFCSIUNIT") {
    const prefix = wordOf(values[2]);
    const square = wordOf(values[3]) === "SQUARE_METRE" ? 2 : 1;
    return {
      metres: (prefixes[prefix] ?? 1) ** square,
      name: `${prefix} ${wordOf(values[3])}`.trim().toLowerCase(),
    };
  }
  if (!model.type(id).startsWith("IFCCONVERSIONBASEDUNIT") || depth > 4) return undefined;
  const measure = refOf(values[3]);
  if (measure === undefined) return undefined;
  const [value, base] = model.values(measure);
  const factor = numberOf(value);
  const baseId = refOf(base);
  const inner = baseId === undefined ? undefined : unitOf(model, baseId, depth + 1);
  return factor === undefined || !inner
    ? undefined
    : { metres: factor * inner.metres, name: textOf(values[2]).toLowerCase() };
};
