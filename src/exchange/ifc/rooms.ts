import {
  figured,
  type Metres,
  type Outline,
  type Piece,
  type Problem,
  type Room,
  type Said,
  say,
} from "#engine";
import type { Identities } from "../identities.ts";
import { type Box, boxOf, pieceArea, regionArea, sharedOf, simplified } from "../region.ts";
import { notARoom, roomUse } from "../room-use.ts";
import { tidy } from "../tidy.ts";
import { type FloorOutline, floorOutline } from "./floor-outline.ts";
import type { ElementMesh } from "./kernel.ts";
import type { LeftOutList } from "./left-out.ts";
import { type IfcModel, textOf, wordOf } from "./model.ts";
import { type Relations, storeyOf } from "./relations.ts";
import { type ReadStorey, storeyAt } from "./storeys.ts";

/** A room with what later steps need to find it in the file's world. */
export interface ReadRoom {
  readonly step: number;
  readonly room: Room;
  readonly piece: Piece;
  /** Least and largest x and y of the outline. [m] */
  readonly box: Box;
  /** Floor in the file's world. [m] */
  readonly level: Metres;
  readonly area: number;
}

export interface RoomContext {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly storeys: readonly ReadStorey[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  readonly notes: Problem[];
  /** Most corners of a room's outline and holes together. */
  readonly corners: number;
}

/** Rooms from the bodies of the spaces; what is no room is left out with its reason. Plan coordinates are still the file's own. */
export function readRooms(
  spaces: readonly number[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: RoomContext,
): readonly ReadRoom[] {
  const rooms = spaces.flatMap((step) => readSpace(step, meshes.get(step), context));
  return withoutDoubles(rooms, context);
}

function readSpace(step: number, mesh: ElementMesh | undefined, context: RoomContext): readonly ReadRoom[] {
  const { model, leftOut, notes } = context;
  const values = model.values(step);
  const [number, long] = [textOf(values[2]), textOf(values[7])];
  const name = long || number || `Room ${step}`;
  const label = long && number && long !== number ? `${number} ${long}` : name;
  const bad = (reason: Said): readonly ReadRoom[] => {
    notes.push({ code: "ifc-room-without-outline", values: { room: label, reason } });
    leftOut.add(say`room`, reason);
    return [];
  };
  if (!mesh || mesh.parts.length === 0) return bad(say`it has no shape`);
  if (mesh.parts.some((part) => !part.corners.every(Number.isFinite)))
    return bad(say`a corner is not a finite number`);
  const floor = floorOutline(mesh);
  if (!floor) return bad(say`its shape has no level floor`);
  const why = notARoom({ name: `${name}`, position: wordOf(values[9]), area: regionArea(floor.region) });
  if (why) {
    leftOut.add(say`space ${label}`, why);
    return [];
  }
  if (!(floor.height > 0.5)) return bad(say`it is only ${figured(floor.height.toFixed(2))} m high`);
  const pieces = floor.region.filter((piece, i) => i === 0 || pieceArea(piece) >= 0.5);
  if (pieces.length > 1)
    notes.push({ code: "ifc-room-in-parts", values: { room: label, count: pieces.length } });
  if (floor.unevenCeiling)
    notes.push({
      code: "ifc-ceiling-uneven",
      values: { room: label, height: figured(floor.height.toFixed(2)) },
      records: [textOf(values[0])],
    });
  return pieces.flatMap((piece, i) => oneRoom({ step, piece, floor, number, name, label, part: i }, context));
}

interface Space {
  readonly step: number;
  readonly piece: Piece;
  readonly floor: FloorOutline;
  readonly number: string;
  readonly name: string;
  readonly label: string;
  readonly part: number;
}

const oneRoom = (space: Space, context: RoomContext): ReadRoom[] => {
  const { model, relations, storeys, identities, notes } = context;
  const { step, floor, part } = space;
  const own = storeyOf(model, relations, step);
  const storey = storeys.find((each) => each.step === own) ?? storeyAt(storeys, floor.floor);
  const piece = within(space.piece, context.corners);
  const before = cornerCount(space.piece);
  if (piece.off > 0) {
    const values = {
      thing: say`room ${space.label}`,
      before,
      after: cornerCount(piece.piece),
      off: piece.off,
    };
    notes.push({ code: "ifc-outline-simplified", values });
  }
  const global = textOf(model.values(step)[0]);
  const id = identities.take(
    part === 0 ? global : `${global}-${part + 1}`,
    `room-${step}-${part + 1}`,
    say`Room ${space.label}`,
  );
  const room: Room = {
    id,
    storey: storey.storey.id,
    number: space.number === space.name ? "" : space.number,
    name: part === 0 ? space.name : `${space.name} (${part + 1})`,
    use: roomUse(space.name === space.number ? space.name : `${space.name} ${space.number}`),
    outline: piece.piece.outline,
    holes: piece.piece.holes,
    floor: tidy(floor.floor - storey.level),
    ceilingHeight: tidy(floor.height),
    demand: { catch: true, walk: true, hold: true },
    noDevices: [],
  };
  return [
    {
      step,
      room,
      piece: piece.piece,
      box: boxOf(piece.piece.outline),
      level: floor.floor,
      area: pieceArea(piece.piece),
    },
  ];
};

const cornerCount = (piece: Piece): number =>
  piece.holes.reduce((sum, hole) => sum + hole.length, piece.outline.length);

/** Coarser and coarser, until the corners are within the limit; `off`: by how much corners moved. [m] */
const within = (piece: Piece, corners: number): { readonly piece: Piece; readonly off: Metres } => {
  let result = piece;
  let off = 0;
  for (const tolerance of [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5]) {
    if (cornerCount(result) <= corners) break;
    const simple = (ring: Outline): Outline => simplified(ring, tolerance);
    result = { outline: simple(piece.outline), holes: piece.holes.map(simple) };
    off = tolerance;
  }
  return { piece: result, off };
};

/** Leaves out rooms that repeat another one's floor, and notes those that overlap in part. */
const withoutDoubles = (rooms: readonly ReadRoom[], context: RoomContext): readonly ReadRoom[] => {
  const kept: ReadRoom[] = [];
  for (const room of rooms) {
    const near = kept.filter(
      (other) =>
        other.room.storey === room.room.storey &&
        Math.abs(other.level - room.level) < 1 &&
        boxesMeet(room.box, other.box),
    );
    const shared = near.map((other) => ({ other, area: regionArea(sharedOf([room.piece], [other.piece])) }));
    const double = shared.find(({ other, area }) => area > 0.95 * Math.max(room.area, other.area));
    if (double) {
      context.notes.push({
        code: "ifc-room-doubled",
        values: { room: room.room.name, other: double.other.room.name },
      });
      context.leftOut.add(say`room`, say`covers the same floor as another one`);
      continue;
    }
    for (const { other, area } of shared) {
      if (area < 0.05) continue;
      const values = { room: room.room.name, other: other.room.name, area: area.toFixed(2) };
      context.notes.push({ code: "ifc-rooms-overlap", values, records: [room.room.id, other.room.id] });
    }
    kept.push(room);
  }
  return kept;
};

const boxesMeet = (p: Box, q: Box): boolean => p[0] < q[2] && q[0] < p[2] && p[1] < q[3] && q[1] < p[3];
