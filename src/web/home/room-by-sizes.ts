import type {
  DetectorModel,
  DwellKind,
  DwellPlace,
  Metres,
  Opening,
  Outline,
  Point,
  RoomUse,
  Site,
} from "#engine";
import { planningDefaults } from "#engine";

export type RoomShape = "rectangle" | "l" | "corridor";

/** Uses that one flat room can have; a stair needs its flights and is drawn, not typed. */
export type StartUse = Exclude<RoomUse, "stair">;

/** What a person types to get an answer at once. The leg is the width of both arms of an L. */
export interface RoomSizes {
  readonly shape: RoomShape;
  readonly length: Metres;
  readonly width: Metres;
  readonly leg: Metres;
  readonly height: Metres;
  readonly use: StartUse;
}

const doorWidth = 0.9;
const doorHead = 2.1;
const wallThickness = 0.15;
/** From the corner to the jamb: room for a frame. */
const doorFromCorner = 0.3;
/** Floor that one desk takes, gangways included. Common practice, no source. */
const deskCell = 3.2;

/** The leg of an L when nobody says: two fifths of its shorter side, as far as a door fits. */
export const usualLeg = (length: Metres, width: Metres): Metres =>
  Math.round(Math.max(1.2, 0.4 * Math.min(length, width)) * 10) / 10;

/** A job with the one room that the sizes describe: its outline, its doors, and where people stay. */
export function siteBySizes(
  sizes: RoomSizes,
  given: { readonly models: readonly DetectorModel[]; readonly name: string; readonly storey: string },
): Site {
  const outline = outlineOf(sizes);
  return {
    name: given.name,
    defaults: planningDefaults,
    storeys: [{ id: "storey-1", name: given.storey, elevation: 0 }],
    rooms: [
      {
        id: "room-1",
        storey: "storey-1",
        number: "1",
        name: given.name,
        use: sizes.use,
        outline,
        holes: [],
        floor: 0,
        ceilingHeight: sizes.height,
        demand: { catch: true, walk: true, hold: true },
        noDevices: [],
      },
    ],
    floorPieces: [],
    openings: doorsOf(sizes),
    obstacles: [],
    dwellPlaces: dwellPlacesOf(sizes),
    interference: [],
    switches: [],
    ceilingThings: [],
    luminaires: [],
    models: given.models,
    detectors: [],
  };
}

/** Counter-clockwise from the origin; an L keeps its legs along the bottom and the left. */
export function outlineOf({ shape, length, width, leg }: RoomSizes): Outline {
  if (shape !== "l")
    return [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ];
  return [
    [0, 0],
    [length, 0],
    [length, leg],
    [leg, leg],
    [leg, width],
    [0, width],
  ];
}

/** One door near a corner; a corridor has one at each end, an L one at the end of each leg. */
export function doorsOf(sizes: RoomSizes): readonly Opening[] {
  const { shape, length, width, leg } = sizes;
  if (shape === "corridor")
    return [door("door-1", [0, width], [0, 0]), door("door-2", [length, 0], [length, width])];
  if (shape === "l")
    return [door("door-1", [length, 0], [length, leg]), door("door-2", [leg, width], [0, width])];
  return [door("door-1", [0, 0], [length, 0], doorFromCorner)];
}

/** A door in the wall from a to b: centred, or this far from a. */
function door(id: string, a: Point, b: Point, from?: Metres): Opening {
  const wall = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const opening = Math.min(doorWidth, wall - 0.1);
  const start = Math.min(from ?? (wall - opening) / 2, wall - opening);
  const at = (distance: Metres): Point => [
    a[0] + ((b[0] - a[0]) * distance) / wall,
    a[1] + ((b[1] - a[1]) * distance) / wall,
  ];
  return {
    id,
    rooms: ["room-1", null],
    kind: "door",
    from: at(start),
    to: at(start + opening),
    sill: 0,
    head: doorHead,
    thickness: wallThickness,
    hinge: "from",
    opensInto: null,
    angle: Math.PI / 2,
    state: "closed",
  };
}

/** Where people sit or stand still, as far as the use alone tells. */
export function dwellPlacesOf(sizes: RoomSizes): readonly DwellPlace[] {
  const { length, width, use } = sizes;
  switch (use) {
    case "sitting":
      return cells(sizes).map((at, index) => place("desk", index, at, planningDefaults.seatedRadius));
    case "sanitary": {
      const count = Math.max(
        1,
        Math.min(4, Math.floor((length - 0.6) / 0.9), Math.floor((length * width) / 4)),
      );
      return Array.from({ length: count }, (_, index) =>
        place("wc", index, [0.55 + index * 0.9, width - 0.45], 0.3),
      ).filter(({ at }) => inside(sizes, at));
    }
    case "changing":
      return [place("bench", 0, middle(sizes), planningDefaults.seatedRadius)];
    case "plant":
      return [place("panel", 0, [middle(sizes)[0], width - 0.6], planningDefaults.seatedRadius)].filter(
        ({ at }) => inside(sizes, at),
      );
    case "passing":
    case "moving":
    case "other":
      return [];
  }
}

const place = (kind: DwellKind, index: number, at: Point, radius: Metres): DwellPlace => ({
  id: `${kind}-${index + 1}`,
  room: "room-1",
  kind,
  at,
  radius,
});

/** Middles of equal cells, each about what a desk takes, that lie inside the room with space around. */
function cells(sizes: RoomSizes): readonly Point[] {
  const columns = Math.max(1, Math.round(sizes.length / deskCell));
  const rows = Math.max(1, Math.round(sizes.width / deskCell));
  const found: Point[] = [];
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const at: Point = [((column + 0.5) * sizes.length) / columns, ((row + 0.5) * sizes.width) / rows];
      if (inside(sizes, at)) found.push(at);
    }
  return found.length > 0 ? found : [middle(sizes)];
}

const middle = ({ shape, length, width, leg }: RoomSizes): Point =>
  shape === "l" ? [leg / 2, leg / 2] : [length / 2, width / 2];

const inside = ({ shape, length, width, leg }: RoomSizes, [x, y]: Point): boolean =>
  x > 0.2 &&
  y > 0.2 &&
  x < length - 0.2 &&
  y < width - 0.2 &&
  (shape !== "l" || x < leg - 0.2 || y < leg - 0.2);
