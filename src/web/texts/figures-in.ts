/** Units of one kind with their sizes, as they are written without regard to capitals. */
const kinds: readonly Readonly<Record<string, number>>[] = [
  { a: 1, ma: 1e-3, ka: 1e3 },
  { v: 1, mv: 1e-3, kv: 1e3 },
  { w: 1, mw: 1e-3, kw: 1e3 },
  { ω: 1, mω: 1e-3, kω: 1e3, ohm: 1, ohms: 1, mohm: 1e-3, kohm: 1e3 },
  { f: 1, mf: 1e-3, µf: 1e-6, uf: 1e-6, nf: 1e-9, pf: 1e-12 },
  {
    µs: 1e-6,
    us: 1e-6,
    ms: 1e-3,
    s: 1,
    sec: 1,
    second: 1,
    seconds: 1,
    min: 60,
    minute: 60,
    minutes: 60,
    h: 3600,
    hour: 3600,
    hours: 3600,
  },
  { a2s: 1, ka2s: 1e3 },
  { mm2: 1 },
  { lx: 1, lux: 1, klx: 1e3 },
  { "%": 1, percent: 1 },
  { "°": 1, deg: 1, degrees: 1 },
  { "°c": 1, c: 1 },
];

const written = (unit: string): string =>
  unit
    .replace(/[\s\u00a0\u202f\u2009]/g, "")
    .replace(/²|\^2/g, "2")
    .replace("\u03bc", "µ")
    .replace("\u2126", "Ω")
    .replace(/\.$/, "")
    .toLowerCase();

/**
 * A figure that a person typed, in the unit of its field: with a decimal point or comma, alone or with a unit of the same kind.
 *
 * @param typed - Text of the field.
 * @param unit - Unit of the field; without one a figure has none either.
 * @returns The figure, or undefined for anything that is not clearly one.
 * @example figureIn("0.03 A", "mA") = 0.03 × 1 / 0.001 = 30
 */
export function figureIn(typed: string, unit = ""): number | undefined {
  const found = /^([-−]?)(\d+[.,]?\d*|[.,]\d+)\s*(\D.*)?$/.exec(typed.trim());
  if (!found) return undefined;
  const figure = Number(found[2]!.replace(",", ".")) * (found[1] === "" ? 1 : -1);
  const [of, to] = [written(found[3] ?? ""), written(unit)];
  if (of === "" || of === to) return figure;
  const kind = kinds.find((one) => to in one);
  const size = kind?.[of];
  // Twelve digits: what another prefix leaves behind them is no figure of anybody's.
  return size === undefined ? undefined : Number(((figure * size) / kind![to]!).toPrecision(12));
}
