import {
  areaOf,
  type Outline,
  type Piece,
  type Point,
  type Region,
  type Room,
  regionOf,
  type Site,
  signedArea,
  simplified,
  union,
} from "#engine";
import type { EditStep } from "../../contract.ts";
import { insideRing, middleOf, roomArea } from "../shapes.ts";
import { facing, ringsOfRoom } from "./faces.ts";
import { thickestWall } from "./openings.ts";
import { asDrawn } from "./rims.ts";
import { placedKinds } from "./selected.ts";
import { removeStep, setStep } from "./steps.ts";
import { edgeOf } from "./stretch.ts";

export type JoinedRooms =
  | { readonly steps: readonly EditStep[]; readonly room: string }
  /** "storeys": on more than one; "apart": no wall lies between them. */
  | { readonly refused: "storeys" | "apart" };

/** What lies between two faces reaches this far into both rooms, so that the pieces grow together. [m] */
const overlap = 1e-3;

/**
 * Steps that make one room of several. The wall between sides that face each other becomes floor as far as they face each
 * other, and so does what is left of walls where several rooms meet. Openings between the rooms go, all others and all contents
 * come along. The largest room keeps its name, number, use and all that is said of it.
 */
export function joinRooms(site: Site, ids: readonly string[]): JoinedRooms {
  const rooms = site.rooms.filter(({ id }) => ids.includes(id)).sort((a, b) => roomArea(b) - roomArea(a));
  const [first, ...others] = rooms;
  if (!first || others.length === 0) return { refused: "apart" };
  if (others.some(({ storey }) => storey !== first.storey)) return { refused: "storeys" };
  const [floor, ...more] = joinedFloor({ ...site, rooms });
  if (!floor || more.length > 0) return { refused: "apart" };
  const gone = new Set(others.map(({ id }) => id));
  const one = (id: string): string => (gone.has(id) ? first.id : id);
  return {
    room: first.id,
    steps: [
      setStep("rooms", first.id, {
        outline: floor.outline,
        holes: floor.holes,
        noDevices: rooms.flatMap(({ noDevices }) => noDevices),
        proposed: undefined,
      }),
      ...openingSteps(site, gone, one),
      ...contentSteps(site, gone, one),
      ...others.map(({ id }) => removeStep("rooms", id)),
    ],
  };
}

function joinedFloor(site: Site): Region {
  const rings = site.rooms.flatMap(ringsOfRoom);
  const floors = site.rooms.map(({ outline, holes }) => regionOf(outline, holes));
  const region = simplified(union([...floors, ...site.rooms.flatMap((room) => walls(site, room))]), 4e-5);
  const columns = site.rooms.flatMap(({ holes }) => holes);
  const between = (hole: Outline): boolean =>
    Math.abs(signedArea(hole)) < thickestWall ** 2 &&
    !columns.some((column) => insideRing(column, middleOf(hole)) || insideRing(hole, middleOf(column)));
  return asDrawn(region, rings)
    .filter((piece) => areaOf([piece]) > 1e-4)
    .map((piece): Piece => ({ ...piece, holes: piece.holes.filter((hole) => !between(hole)) }));
}

/** The wall before each side of a room, as far as another of the rooms faces it. */
function walls(site: Site, room: Room): readonly Region[] {
  return ringsOfRoom(room).flatMap((ring, number) =>
    ring.flatMap((a, edge): Region[] => {
      const { length, way } = edgeOf(ring, edge);
      return facing(site, { room, ring: number, edge }).map((face) => {
        const [from, to] = [Math.max(0, face.from), Math.min(length, face.to)];
        const at = (along: number, away: number): Point => [
          a[0] + way[0] * along + way[1] * away,
          a[1] + way[1] * along - way[0] * away,
        ];
        const far = face.away + overlap;
        return regionOf([at(from, -overlap), at(from, far), at(to, far), at(to, -overlap)]);
      });
    }),
  );
}

type One = (id: string) => string;

function openingSteps(site: Site, gone: ReadonlySet<string>, one: One): EditStep[] {
  return site.openings.flatMap((opening): EditStep[] => {
    const [first, second] = opening.rooms;
    if (!gone.has(first) && (second === null || !gone.has(second))) return [];
    const rooms = [one(first), second === null ? null : one(second)] as const;
    if (rooms[0] === rooms[1]) return [removeStep("openings", opening.id)];
    const opensInto = opening.opensInto === null ? null : one(opening.opensInto);
    return [setStep("openings", opening.id, { rooms, opensInto })];
  });
}

function contentSteps(site: Site, gone: ReadonlySet<string>, one: One): EditStep[] {
  return placedKinds.flatMap((kind): EditStep[] =>
    kind === "detectors"
      ? site.detectors
          .filter(({ room, controls }) => gone.has(room) || controls.some((id) => gone.has(id)))
          .map((device) =>
            setStep("detectors", device.id, {
              room: one(device.room),
              controls: [...new Set(device.controls.map(one))],
            }),
          )
      : site[kind]
          .filter(({ room }) => gone.has(room))
          .map(({ id, room }) => setStep(kind, id, { room: one(room) })),
  );
}
