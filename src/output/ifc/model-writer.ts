import type { Metres, Outline, Point } from "#engine";
import { globalId } from "./global-id.ts";
import { type StepRef, type StepValue, stepWriter, word } from "./step-writer.ts";

/** A place in its parent's frame: origin [m], and the direction of its x axis in plan. */
export interface Placed {
  readonly parent: StepRef | null;
  readonly at: readonly [Metres, Metres, Metres];
  readonly along?: Point;
}

export interface Product {
  readonly type: string;
  /** Tells it from all others of the file. */
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly objectType?: string;
  readonly placement: StepRef;
  readonly shape: StepRef | null;
  /** Attributes after those that every product has. */
  readonly more: readonly StepValue[];
}

export interface Prism {
  readonly outline: Outline;
  readonly holes?: readonly Outline[];
  readonly height: Metres;
  /** Lower face in the product's own frame; 0 if absent. */
  readonly base?: Metres;
}

/** The few groups of records that a building model is made of. */
export interface ModelWriter {
  readonly add: (type: string, ...values: readonly StepValue[]) => StepRef;
  readonly placement: (placed: Placed) => StepRef;
  readonly product: (product: Product) => StepRef;
  /** A body of straight prisms in the product's own frame. */
  readonly body: (prisms: readonly Prism[]) => StepRef | null;
  readonly cylinder: (size: { readonly radius: Metres; readonly height: Metres }) => StepRef;
  readonly aggregate: (of: string, whole: StepRef, parts: readonly StepRef[]) => void;
  readonly contain: (of: string, structure: StepRef, elements: readonly StepRef[]) => void;
  readonly properties: (
    of: string,
    thing: StepRef,
    set: { readonly name: string; readonly values: readonly (readonly [string, StepValue])[] },
  ) => void;
  readonly relate: (type: string, of: string, one: StepValue, other: StepValue) => void;
  readonly text: ReturnType<typeof stepWriter>["text"];
  readonly records: ReturnType<typeof stepWriter>["records"];
  /** A length in the unit of the file. */
  readonly length: (metres: Metres) => number;
  readonly dialect: Dialect;
}

/** How a file writes what is the same in all of them. */
export interface Dialect {
  readonly schema: "IFC2X3" | "IFC4";
  /** Metres in one unit of the file. */
  readonly metres: Metres;
  /** Who made a record and when, which IFC 2x3 asks for. */
  readonly owner: StepRef | null;
  /** The highest instance name that is taken. */
  readonly taken: number;
}

/** A file of our own. */
const ownDialect: Dialect = { schema: "IFC4", metres: 1, owner: null, taken: 0 };

/** Writes records of a building model. @source ISO-16739 */
export function modelWriter(
  context: (add: ModelWriter["add"]) => StepRef,
  dialect: Dialect = ownDialect,
): ModelWriter {
  const step = stepWriter(dialect.taken);
  const { add } = step;
  const { owner } = dialect;
  const length = (metres: Metres): number => metres / dialect.metres;
  const model = context(add);
  const up = add("IFCDIRECTION", [0, 0, 1]);
  const origin = add("IFCAXIS2PLACEMENT3D", add("IFCCARTESIANPOINT", [0, 0, 0]), null, null);

  const axes = ({ at, along }: Placed): StepRef =>
    add(
      "IFCAXIS2PLACEMENT3D",
      add("IFCCARTESIANPOINT", at.map(length)),
      ...(along ? [up, add("IFCDIRECTION", [along[0], along[1], 0])] : [null, null]),
    );
  const polyline = (ring: Outline): StepRef => {
    const points = ring.map(([x, y]) => add("IFCCARTESIANPOINT", [length(x), length(y)]));
    return add("IFCPOLYLINE", [...points, points[0]!]);
  };
  const shapeOf = (solids: readonly StepRef[]): StepRef =>
    add("IFCPRODUCTDEFINITIONSHAPE", null, null, [
      add("IFCSHAPEREPRESENTATION", model, "Body", "SweptSolid", [...solids]),
    ]);
  const raised = (base: Metres): StepRef =>
    base === 0
      ? origin
      : add("IFCAXIS2PLACEMENT3D", add("IFCCARTESIANPOINT", [0, 0, length(base)]), null, null);
  const prismOf = ({ outline, holes = [], height, base = 0 }: Prism): StepRef => {
    const outer = polyline(outline);
    const profile =
      holes.length === 0
        ? add("IFCARBITRARYCLOSEDPROFILEDEF", word("AREA"), null, outer)
        : add("IFCARBITRARYPROFILEDEFWITHVOIDS", word("AREA"), null, outer, holes.map(polyline));
    return add("IFCEXTRUDEDAREASOLID", profile, raised(base), up, length(height));
  };
  const relate: ModelWriter["relate"] = (type, of, one, other) => {
    add(type, globalId(`${type} ${of}`), owner, null, null, one, other);
  };
  // IFC 2x3 asks for the place of a profile in its plane, IFC4 takes the origin where there is none.
  const flat = (): StepRef | null =>
    dialect.schema === "IFC4" ? null : add("IFCAXIS2PLACEMENT2D", add("IFCCARTESIANPOINT", [0, 0]), null);
  return {
    add,
    placement: (placed) => add("IFCLOCALPLACEMENT", placed.parent, axes(placed)),
    product: ({ type, id, name, description, objectType, placement, shape, more }) =>
      add(
        type,
        globalId(id),
        owner,
        name,
        description ?? null,
        objectType ?? null,
        placement,
        shape,
        ...more,
      ),
    body: (prisms) => (prisms.length === 0 ? null : shapeOf(prisms.map(prismOf))),
    cylinder: ({ radius, height }) =>
      shapeOf([
        add(
          "IFCEXTRUDEDAREASOLID",
          add("IFCCIRCLEPROFILEDEF", word("AREA"), null, flat(), length(radius)),
          origin,
          up,
          length(height),
        ),
      ]),
    aggregate: (of, whole, parts) => {
      if (parts.length > 0) relate("IFCRELAGGREGATES", of, whole, [...parts]);
    },
    contain: (of, structure, elements) => {
      if (elements.length > 0) relate("IFCRELCONTAINEDINSPATIALSTRUCTURE", of, [...elements], structure);
    },
    properties: (of, thing, { name, values }) => {
      const singles = values.map(([title, value]) => add("IFCPROPERTYSINGLEVALUE", title, null, value, null));
      if (singles.length === 0) return;
      const set = add("IFCPROPERTYSET", globalId(`${name} ${of}`), owner, name, null, singles);
      relate("IFCRELDEFINESBYPROPERTIES", `${name} ${of}`, [thing], set);
    },
    relate,
    text: step.text,
    records: step.records,
    length,
    dialect,
  };
}
