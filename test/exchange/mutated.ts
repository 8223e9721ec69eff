/** Numbers that look random and come out the same every time (mulberry32). @returns 0 … 1 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A building model with one to four faults put into it, the same for the same seed. */
export function mutated(text: string, seed: number): string {
  const random = seeded(seed);
  const count = 1 + Math.floor(random() * 4);
  let result = text;
  for (let i = 0; i < count; i++) result = faults[Math.floor(random() * faults.length)]!(result, random);
  return result;
}

type Fault = (text: string, random: () => number) => string;

const place = (text: string, random: () => number): number => Math.floor(random() * text.length);
const pick = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)]!;
const cut = (text: string, from: number, to: number, put = ""): string =>
  text.slice(0, from) + put + text.slice(to);

/** Replaces one occurrence of a pattern, picked at random. */
const one =
  (pattern: RegExp, put: (found: string, random: () => number) => string): Fault =>
  (text, random) => {
    const found = [...text.matchAll(pattern)];
    if (found.length === 0) return text;
    const match = pick(found, random);
    return cut(text, match.index, match.index + match[0].length, put(match[0], random));
  };

const faults: readonly Fault[] = [
  // Damage to bytes.
  (text, random) => cut(text, place(text, random), 0).concat(text.slice(place(text, random))),
  (text, random) => {
    const at = place(text, random);
    return cut(text, at, at + 1, String.fromCharCode(Math.floor(random() * 256)));
  },
  (text, random) => {
    const at = place(text, random);
    return cut(text, at, at + Math.floor(random() * 200));
  },
  (text, random) => text.slice(0, place(text, random)),
  (text, random) => {
    const at = place(text, random);
    return cut(text, at, at, text.slice(place(text, random)).slice(0, 100));
  },
  // Damage that is still written correctly, and so reaches the geometry kernel.
  one(/#\d+(?=[,)])/g, (_, random) => `#${1 + Math.floor(random() * 400)}`),
  one(/#\d+(?=[,)])/g, () => "$"),
  one(/#\d+(?=[,)])/g, () => "#99999"),
  one(/-?\d+\.\d*(?=[,)])/g, (_, random) =>
    pick(["0.", "-1.", "1.E300", "1.E-300", "1.E999", "-1.E9", "7", "'x'", "$", ".T.", "()"], random),
  ),
  one(/\([^()]*\)(?=[,;)])/g, () => "()"),
  one(/=IFC[A-Z0-9]+/g, (_, random) => `=${pick(types, random)}`),
  one(/\n#\d+=.*;/g, () => ""),
  one(/'[^'\n]*'/g, (_, random) =>
    pick(["''", "$", "'\\X2\\D83D\\X0\\'", "'\\S\\'", "'\\X4\\FFFFFFFF\\X0\\'", "'a''b'"], random),
  ),
  one(/\.[A-Z_]+\./g, (_, random) => pick([".NONSENSE.", "$", "1", ".MILLI.", ".EXA."], random)),
  one(/,[^,()]*(?=[,)])/g, () => ""),
  one(/,[^,()]*(?=[,)])/g, (found) => found + found),
];

const types = [
  "IFCSPACE",
  "IFCPOLYLINE",
  "IFCCARTESIANPOINT",
  "IFCEXTRUDEDAREASOLID",
  "IFCLOCALPLACEMENT",
  "IFCAXIS2PLACEMENT3D",
  "IFCSHAPEREPRESENTATION",
  "IFCBOOLEANCLIPPINGRESULT",
  "IFCMAPPEDITEM",
  "IFCCIRCLE",
  "IFCTRIMMEDCURVE",
  "IFCCOMPOSITECURVE",
  "IFCFACETEDBREP",
  "IFCNOSUCHTHING",
  "IFCDIRECTION",
  "IFCARBITRARYCLOSEDPROFILEDEF",
  "IFCRECTANGLEPROFILEDEF",
  "IFCBUILDINGSTOREY",
];
