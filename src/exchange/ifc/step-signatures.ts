/** Kinds of parameter as the scanner sees them, one byte each. */
export const kinds = {
  none: 48,
  reference: 114,
  number: 110,
  text: 116,
  word: 101,
  typed: 84,
  references: 97,
  numbers: 98,
  lists: 100,
  empty: 102,
  mixed: 103,
} as const;

/**
 * Parameters of the records that the geometry kernel walks through: a wrong count or kind there sends it into an endless
 * loop. m reference, r reference or nothing, N number, n number or nothing, t text or nothing, e word or nothing,
 * A list of references, B list of numbers, x anything; "…" at the end: more may follow.
 *
 * @source ISO-16739, attribute order common to IFC2x3 and IFC4
 */
const signatures: Readonly<Record<string, string>> = {
  IFCCARTESIANPOINT: "B",
  IFCDIRECTION: "B",
  IFCAXIS1PLACEMENT: "mr",
  IFCAXIS2PLACEMENT2D: "mr",
  IFCAXIS2PLACEMENT3D: "mrr",
  IFCLOCALPLACEMENT: "rm",
  IFCPOLYLINE: "A",
  IFCPOLYLOOP: "A",
  IFCARBITRARYCLOSEDPROFILEDEF: "etm",
  IFCARBITRARYPROFILEDEFWITHVOIDS: "etmA",
  IFCRECTANGLEPROFILEDEF: "etrNN",
  IFCCIRCLEPROFILEDEF: "etrN",
  IFCEXTRUDEDAREASOLID: "mrmN",
  IFCREVOLVEDAREASOLID: "mrmN",
  IFCSHAPEREPRESENTATION: "mttA",
  IFCPRODUCTDEFINITIONSHAPE: "ttA",
  IFCMAPPEDITEM: "mm",
  IFCREPRESENTATIONMAP: "mm",
  IFCCARTESIANTRANSFORMATIONOPERATOR3D: "rrmnr",
  IFCBOOLEANCLIPPINGRESULT: "emm",
  IFCBOOLEANRESULT: "emm",
  IFCHALFSPACESOLID: "mx",
  IFCPOLYGONALBOUNDEDHALFSPACE: "mxmm",
  IFCPLANE: "m",
  IFCFACETEDBREP: "m",
  IFCCLOSEDSHELL: "A",
  IFCOPENSHELL: "A",
  IFCFACE: "A",
  IFCFACEBOUND: "mx",
  IFCFACEOUTERBOUND: "mx",
  IFCCIRCLE: "mN",
  IFCTRIMMEDCURVE: "mxxxe",
  IFCCOMPOSITECURVE: "Ax",
  IFCCOMPOSITECURVESEGMENT: "exm",
  IFCGEOMETRICREPRESENTATIONCONTEXT: "ttnnmr",
  IFCRELVOIDSELEMENT: "trttmm",
  IFCRELFILLSELEMENT: "trttmm",
  IFCRELAGGREGATES: "trttmA",
  IFCRELCONTAINEDINSPATIALSTRUCTURE: "trttAm",
  IFCRELDEFINESBYTYPE: "trttAm",
  IFCUNITASSIGNMENT: "A",
  IFCSIUNIT: "xeee",
  IFCCONVERSIONBASEDUNIT: "retm",
  IFCMEASUREWITHUNIT: "xm",
  IFCPROJECT: "trtttttxr",
  IFCSPACE: "trtttrr…",
  IFCDOOR: "trtttrr…",
  IFCWINDOW: "trtttrr…",
  IFCWALL: "trtttrr…",
  IFCWALLSTANDARDCASE: "trtttrr…",
  IFCOPENINGELEMENT: "trtttrr…",
  IFCFURNISHINGELEMENT: "trtttrr…",
  IFCFURNITURE: "trtttrr…",
  IFCCOLUMN: "trtttrr…",
  IFCBEAM: "trtttrr…",
  IFCFLOWTERMINAL: "trtttrr…",
  IFCLIGHTFIXTURE: "trtttrr…",
  IFCBUILDINGSTOREY: "trtttrr…",
  IFCBUILDING: "trtttrr…",
  IFCSITE: "trtttrr…",
};

const { none, reference, number, text, word, typed, references, numbers, empty } = kinds;

const allowed: Readonly<Record<string, readonly number[]>> = {
  m: [reference],
  r: [reference, none],
  N: [number, typed],
  n: [number, typed, none],
  t: [text, none],
  e: [word, none],
  A: [references, empty],
  B: [numbers],
};

/** What the parameters of a type must be: how many, and which kinds each may have; undefined: any. */
export interface Signature {
  readonly least: number;
  readonly most: number;
  readonly allowed: readonly (readonly number[] | undefined)[];
}

/** Signature of a type in capitals; undefined where nothing is asked of it. */
export function signatureOf(type: string): Signature | undefined {
  const written = Object.hasOwn(signatures, type) ? signatures[type] : undefined;
  if (written === undefined) return undefined;
  const open = written.endsWith("…");
  const letters = open ? written.slice(0, -1) : written;
  return {
    least: letters.length,
    most: open ? Infinity : letters.length,
    allowed: [...letters].map((letter) => allowed[letter]),
  };
}

/** Whether a record's parameters, `count` kinds long, are what its type asks for. Types that are not listed always fit. */
export function fits(signature: Signature | undefined, found: Uint8Array, count: number): boolean {
  if (signature === undefined) return true;
  const { least, most, allowed } = signature;
  if (count < least || count > most) return false;
  for (let i = 0; i < least; i++) {
    const some = allowed[i];
    if (some !== undefined && !some.includes(found[i]!)) return false;
  }
  return true;
}
