import type { Declaration, DetectorModel, Lens, Metres, Radians, ZoneKind, ZoneRow } from "#engine";

export const zoneKinds = ["towards", "across", "seated", "sound"] as const satisfies readonly ZoneKind[];

/** What a data sheet says of one zone at one height: a diameter, an outline, or nothing. */
export type Cell =
  | { readonly shape: "round"; readonly diameter: Metres }
  | { readonly shape: "outline"; readonly points: readonly (readonly [Radians, Metres])[] };

/** One mounting height of the data sheet with what it says of each zone. */
export interface HeightRow {
  readonly height: Metres;
  readonly cells: Readonly<Partial<Record<ZoneKind, Cell>>>;
}

/** Fields of a model that stand in the draft as they stand in the model: mounting and wiring, and what the form does not show. */
const keptFields = [
  "lens",
  "demo",
  "fixing",
  "depth",
  "ceilingThickness",
  "otherFixings",
  "cableEntry",
  "entrySeal",
  "indicators",
  "outputKinds",
  "waterProtection",
  "supply",
  "supplyCurrent",
  "contact",
  "terminals",
  "inputs",
  "warmUpOutput",
  "standby",
  "leakage",
] as const satisfies readonly (keyof DetectorModel)[];

/** A data sheet as a person fills it in. What is undefined is unknown until entered. */
export interface ModelDraft {
  readonly id: string | undefined;
  readonly title: string;
  readonly heights: readonly HeightRow[];
  readonly lowest: Metres | undefined;
  readonly highest: Metres | undefined;
  readonly cost: number | undefined;
  readonly declaration: Declaration;
  readonly declaredBy: string;
  readonly onset: Metres | undefined;
  readonly response: number | undefined;
  readonly warmUp: number | undefined;
  readonly deliveryState: string;
  readonly cutOut: Metres | undefined;
  /** Mounting, contact, inputs; and what the form does not show and must not lose: lens, the mark of the demo. */
  readonly rest: Partial<Pick<DetectorModel, (typeof keptFields)[number]>>;
}

/** What a field does to the draft as it stands by then. */
export type DraftChange = (draft: ModelDraft) => ModelDraft;

/** Half a metre either way of the data sheet's heights, until the limits are entered. Common practice, no source. */
const assumedSlack: Metres = 0.5;
const lowestSensible: Metres = 1.8;

export const emptyDraft: ModelDraft = {
  id: undefined,
  title: "",
  heights: [{ height: 2.5, cells: {} }],
  lowest: undefined,
  highest: undefined,
  cost: undefined,
  declaration: "data-sheet",
  declaredBy: "",
  onset: undefined,
  response: undefined,
  warmUp: undefined,
  deliveryState: "",
  cutOut: undefined,
  rest: {},
};

/** Mounting limits as entered, or as assumed from the heights of the data sheet. */
export function limitsOf({ heights, lowest, highest }: ModelDraft): {
  readonly min: Metres;
  readonly max: Metres;
} {
  const all = heights.map(({ height }) => height);
  const min = lowest ?? Math.max(lowestSensible, Math.min(...all) - assumedSlack);
  return { min, max: highest ?? Math.max(min, Math.max(...all) + assumedSlack) };
}

/** The model that a draft describes; one cannot be made until it has a title and a reach of people who walk. */
export function modelOf(draft: ModelDraft, id: string): DetectorModel {
  const heights = draft.heights.toSorted((a, b) => a.height - b.height);
  const zones: Partial<Record<ZoneKind, readonly ZoneRow[]>> = {};
  for (const kind of zoneKinds) {
    const rows = heights.flatMap(({ height, cells }): ZoneRow[] => {
      const cell = cells[kind];
      if (cell === undefined) return [];
      if (cell.shape === "round") return [{ height, radius: cell.diameter / 2 }];
      return [{ height, outline: cell.points.toSorted((a, b) => a[0] - b[0]) }];
    });
    if (rows.length > 0) zones[kind] = rows;
  }
  return {
    id,
    title: draft.title.trim(),
    mounting: limitsOf(draft),
    zones,
    declaration: draft.declaration,
    declaredBy: draft.declaredBy,
    cost: draft.cost ?? 1,
    ...known("onset", draft.onset),
    ...known("response", draft.response),
    ...known("warmUp", draft.warmUp),
    ...known("deliveryState", draft.deliveryState === "" ? undefined : draft.deliveryState),
    ...known("cutOut", draft.cutOut),
    ...draft.rest,
  };
}

const known = <Name extends string, Value>(name: Name, value: Value | undefined) =>
  (value === undefined ? {} : { [name]: value }) as { readonly [N in Name]?: Value };

/** What keeps a draft from being a model yet, by the key of its sentence. */
export function missingIn(draft: ModelDraft): readonly ("title" | "reach" | "limits" | "heights")[] {
  const heights = draft.heights.map(({ height }) => height);
  const { min, max } = limitsOf(draft);
  return [
    ...(draft.title.trim() === "" ? (["title"] as const) : []),
    ...(draft.heights.some(({ cells }) => cells.towards !== undefined || cells.across !== undefined)
      ? []
      : (["reach"] as const)),
    ...(min > max ? (["limits"] as const) : []),
    ...(new Set(heights).size < heights.length ? (["heights"] as const) : []),
  ];
}

/** The draft to go on with an existing model. */
export function draftOf(model: DetectorModel): ModelDraft {
  const heights = new Map<Metres, Partial<Record<ZoneKind, Cell>>>();
  for (const kind of zoneKinds)
    for (const row of model.zones[kind] ?? []) {
      const cells = heights.get(row.height) ?? {};
      cells[kind] =
        "radius" in row
          ? { shape: "round", diameter: row.radius * 2 }
          : { shape: "outline", points: row.outline };
      heights.set(row.height, cells);
    }
  const rows = [...heights].map(([height, cells]) => ({ height, cells })).sort((a, b) => a.height - b.height);
  return {
    id: model.id,
    title: model.title,
    heights: rows.length > 0 ? rows : emptyDraft.heights,
    lowest: model.mounting.min,
    highest: model.mounting.max,
    cost: model.cost,
    declaration: model.declaration,
    declaredBy: model.declaredBy,
    onset: model.onset,
    response: model.response,
    warmUp: model.warmUp,
    deliveryState: model.deliveryState ?? "",
    cutOut: model.cutOut,
    rest: Object.fromEntries(
      keptFields.flatMap((field) => (model[field] === undefined ? [] : [[field, model[field]]])),
    ),
  };
}

/** The draft with one cell changed; undefined takes it away. */
export function withCell(
  draft: ModelDraft,
  at: { readonly row: number; readonly kind: ZoneKind },
  cell: Cell | undefined,
): ModelDraft {
  const heights = draft.heights.map((row, index) => {
    if (index !== at.row) return row;
    const { [at.kind]: _, ...others } = row.cells;
    return { ...row, cells: cell === undefined ? others : { ...others, [at.kind]: cell } };
  });
  return { ...draft, heights };
}

/** The draft with another shape or size of its lens; without a shape no lens is known. What the form does not show of it is kept. */
export function withLens(
  draft: ModelDraft,
  change: { readonly [Name in "shape" | "radius" | "elementOffset"]?: Lens[Name] | undefined },
): ModelDraft {
  const { lens, ...others } = draft.rest;
  const shape = "shape" in change ? change.shape : lens?.shape;
  if (shape === undefined) return { ...draft, rest: others };
  const { radius, elementOffset, ...unshown } = lens ?? { shape, rings: [] };
  const size = { radius, elementOffset, ...change };
  return {
    ...draft,
    rest: {
      ...others,
      lens: {
        ...unshown,
        shape,
        ...known("radius", size.radius),
        ...known("elementOffset", shape === "dome" ? size.elementOffset : undefined),
      },
    },
  };
}
