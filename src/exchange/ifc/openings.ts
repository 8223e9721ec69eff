import {
  english,
  type Metres,
  type Opening,
  type OpeningKind,
  type Point,
  type Problem,
  type Said,
  say,
} from "#engine";
import type { Identities } from "../identities.ts";
import { tidy } from "../tidy.ts";
import { type DoorSwing, doorSwing, ownDirection } from "./door-swing.ts";
import type { ElementMesh } from "./kernel.ts";
import type { LeftOutList } from "./left-out.ts";
import { type IfcModel, textOf } from "./model.ts";
import type { Frames } from "./placement.ts";
import { type PlanBox, planBox } from "./plan-box.ts";
import type { Relations } from "./relations.ts";
import type { ReadRoom } from "./rooms.ts";
import { facesBeside, framesOf, type OpeningFrame, type WallFace } from "./wall-faces.ts";

export interface OpeningContext {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly frames: Frames;
  readonly rooms: readonly ReadRoom[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  readonly notes: Problem[];
}

/** A hole in a wall: the body that is cut out, and what fills it, either of which may be missing. */
export interface WallHole {
  readonly body: number;
  readonly filling: number | undefined;
  readonly host: number | undefined;
}

/** The holes of the file: every opening body in a wall, and every door or window that was set without one. */
export function wallHoles(model: IfcModel, relations: Relations, leftOut: LeftOutList): readonly WallHole[] {
  const holes: WallHole[] = [];
  for (const body of model.ids("IFCOPENINGELEMENT", "IFCOPENINGSTANDARDCASE")) {
    const filling = relations.fillingOf.get(body);
    const host = relations.hostOf.get(body);
    if (filling !== undefined && !isFilling(model.type(filling))) continue;
    if (host !== undefined && /SLAB|ROOF|COVERING|FOOTING|STAIR/.test(model.type(host))) {
      if (filling !== undefined)
        leftOut.add(say`skylight or hatch`, say`it lies in a roof or floor, not in a wall`);
      continue;
    }
    holes.push({ body, filling, host });
  }
  for (const id of model.ids("IFCDOOR", "IFCDOORSTANDARDCASE", "IFCWINDOW", "IFCWINDOWSTANDARDCASE")) {
    if (relations.openingFilledBy.has(id)) continue;
    holes.push({ body: id, filling: id, host: undefined });
  }
  return holes;
}

const isFilling = (type: string): boolean => /^IFC(DOOR|WINDOW)/.test(type);

/** Openings joined to the rooms on both sides by geometry. Plan coordinates are still the file's own. */
export function readOpenings(
  holes: readonly WallHole[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: OpeningContext,
): readonly Opening[] {
  const assumed = { count: 0 };
  const openings = holes.flatMap((hole) => readHole(hole, meshes.get(hole.body), { ...context, assumed }));
  if (assumed.count > 0)
    context.notes.push({ code: "ifc-door-swing-assumed", values: { count: assumed.count } });
  return openings;
}

function readHole(
  hole: WallHole,
  mesh: ElementMesh | undefined,
  context: OpeningContext & { assumed: { count: number } },
): readonly Opening[] {
  const { model, leftOut } = context;
  const type = hole.filling === undefined ? "" : model.type(hole.filling);
  const what: HoleKind = type.startsWith("IFCDOOR")
    ? "door"
    : type.startsWith("IFCWINDOW")
      ? "window"
      : "empty";
  const box = mesh && planBox(mesh);
  if (!box || !(box.high - box.low > 0.05) || !(box.length > 0.05)) {
    leftOut.add(holeWords[what], say`it has no shape`);
    return [];
  }
  const { frame, faces } = bestFrame(box, hole, context);
  const pairs = facePairs(faces, frame.length);
  if (pairs.length === 0) {
    leftOut.add(holeWords[what], say`no room lies beside it`);
    return [];
  }
  return pairs.flatMap((pair, i) => oneOpening({ hole, what, frame, pair, part: i }, context));
}

type HoleKind = "door" | "window" | "empty";

const holeWords: Readonly<Record<HoleKind, Said>> = {
  door: say`door`,
  window: say`window`,
  empty: say`opening without door or window`,
};

/** Of the two ways to sit in the wall the one with rooms beside it; in doubt as the filling or the wall is placed. */
const bestFrame = (
  box: PlanBox,
  hole: WallHole,
  context: OpeningContext,
): { frame: OpeningFrame; faces: readonly WallFace[] } => {
  const direction =
    (hole.filling !== undefined && ownDirection(context.model, hole.filling, context.frames)) ||
    (hole.host !== undefined && ownDirection(context.model, hole.host, context.frames)) ||
    box.along;
  const score = (way: { frame: OpeningFrame; faces: readonly WallFace[] }): number => {
    const sides = new Set(way.faces.map((face) => face.side)).size;
    const meant =
      Math.abs(way.frame.along[0] * direction[0] + way.frame.along[1] * direction[1]) > 0.9 ? 1.5 : 0;
    return sides + meant;
  };
  const [lengthwise, crosswise] = framesOf(box);
  const first = { frame: lengthwise, faces: facesBeside(lengthwise, context.rooms) };
  // Rooms on both sides and placed that way: the other cannot be better.
  if (score(first) >= 3.5) return first;
  const second = { frame: crosswise, faces: facesBeside(crosswise, context.rooms) };
  return score(second) > score(first) ? second : first;
};

/** A stretch of an opening between the same two faces. */
interface FacePair {
  readonly first: WallFace;
  readonly second: WallFace | undefined;
  readonly from: Metres;
  readonly to: Metres;
}

/** Cuts an opening where the rooms beside it change; stretches without a room on either side are dropped. */
const facePairs = (faces: readonly WallFace[], length: Metres): readonly FacePair[] => {
  const cuts = [...new Set([-length / 2, length / 2, ...faces.flatMap((face) => [face.from, face.to])])].sort(
    (a, b) => a - b,
  );
  const pairs: FacePair[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i]!, cuts[i + 1]!];
    const middle = (from + to) / 2;
    // Faces come nearest first: what lies behind the first one on a side is hidden by it.
    const facing = (side: 1 | -1): WallFace | undefined =>
      faces.find((face) => face.side === side && face.from <= middle && face.to >= middle);
    const found = [facing(1), facing(-1)]
      .filter((face) => face !== undefined)
      .sort((a, b) => a.room.step - b.room.step);
    const [first, second] = found;
    if (!first) continue;
    const last = pairs[pairs.length - 1];
    if (last && last.first === first && last.second === second && Math.abs(last.to - from) < 1e-9)
      pairs[pairs.length - 1] = { ...last, to };
    else pairs.push({ first, second, from, to });
  }
  const least = Math.min(0.3, length / 2);
  return pairs.filter((pair) => pair.to - pair.from >= least && pair.first.room !== pair.second?.room);
};

interface Stretch {
  readonly hole: WallHole;
  readonly what: HoleKind;
  readonly frame: OpeningFrame;
  readonly pair: FacePair;
  readonly part: number;
}

const oneOpening = (
  stretch: Stretch,
  context: OpeningContext & { assumed: { count: number } },
): Opening[] => {
  const { hole, what, frame, pair, part } = stretch;
  const { first, second } = pair;
  const sill = Math.max(0, frame.low - first.room.level);
  const head = Math.min(frame.high - first.room.level, first.room.room.ceilingHeight);
  const kind = kindOf(what, { sill, head, width: pair.to - pair.from });
  if (!kind) {
    context.leftOut.add(holeWords[what], say`too small or too high to walk through`);
    return [];
  }
  const ends = onOutline(first, frame, pair);
  const swing =
    kind === "door"
      ? doorSwing(context.model, context.relations, { id: hole.filling!, frames: context.frames })
      : undefined;
  if (kind === "door" && !swing) context.assumed.count++;
  const rooms: Opening["rooms"] = [first.room.room.id, second?.room.room.id ?? null];
  const name = textOf(context.model.values(hole.filling ?? hole.body)[2]);
  const gap = second ? first.side * (first.t - second.t) : first.side * first.t + frame.depth / 2;
  if (second && Math.abs(gap) < 0.002)
    noteCentred(context, { room: first.room.room.name, other: second.room.room.name, door: name });
  const global = textOf(context.model.values(hole.filling ?? hole.body)[0]);
  return [
    {
      id: context.identities.take(
        part === 0 ? global : `${global}-${part + 1}`,
        `opening-${hole.body}-${part + 1}`,
        say`Opening ${name}`,
      ),
      rooms,
      kind,
      ...ends,
      sill: tidy(sill),
      head: tidy(head),
      thickness: tidy(Math.max(0, Math.min(gap, thickestWall))),
      ...leafOf(swing, { first, ends, rooms, frame }),
      state: "closed",
    },
  ];
};

/** A body cut through a wall may reach far out of it on the side where no room tells where the wall ends. [m] */
const thickestWall = 1;

const kindOf = (
  what: HoleKind,
  size: { sill: Metres; head: Metres; width: Metres },
): OpeningKind | undefined => {
  if (!(size.head - size.sill > 0.05)) return undefined;
  if (what === "door" || what === "window") return what;
  return size.sill <= 0.3 && size.head >= 1.7 && size.width >= 0.45 ? "passage" : undefined;
};

/** Ends of the stretch put on the first room's face, in the direction of its outline. */
const onOutline = (face: WallFace, frame: OpeningFrame, pair: FacePair): { from: Point; to: Point } => {
  const { a, b } = face;
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const d: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  const at = (s: Metres): number => {
    const p: Point = [frame.centre[0] + s * frame.along[0], frame.centre[1] + s * frame.along[1]];
    return Math.max(0, Math.min(size, (p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1]));
  };
  const [p, q] = [at(pair.from), at(pair.to)].sort((x, y) => x - y) as [number, number];
  return {
    from: [tidy(a[0] + p * d[0]), tidy(a[1] + p * d[1])],
    to: [tidy(a[0] + q * d[0]), tidy(a[1] + q * d[1])],
  };
};

type Leaf = Pick<Opening, "hinge" | "opensInto" | "angle">;

const leafOf = (
  swing: DoorSwing | undefined,
  door: { first: WallFace; ends: { from: Point; to: Point }; rooms: Opening["rooms"]; frame: OpeningFrame },
): Leaf => {
  const { first, ends, rooms, frame } = door;
  if (!swing) return { hinge: "from", opensInto: rooms[0], angle: Math.PI / 2 };
  const runs = (ends.to[0] - ends.from[0]) * swing.along[0] + (ends.to[1] - ends.from[1]) * swing.along[1];
  const hinge = runs > 0 === (swing.hinge === "low") ? "from" : "to";
  const n: Point = [-frame.along[1] * first.side, frame.along[0] * first.side];
  const opensInto = n[0] * swing.into[0] + n[1] * swing.into[1] > 0 ? rooms[0] : rooms[1];
  // An open sliding leaf stands beside the opening, along the wall: like a leaf that is folded right back.
  return { hinge, opensInto, angle: swing.leaf === "slides" ? Math.PI : Math.PI / 2 };
};

const noteCentred = (
  context: OpeningContext,
  values: { room: string; other: string; door: string },
): void => {
  if (
    !context.notes.some(
      (note) =>
        note.code === "ifc-walls-centred" &&
        english(note.values.room ?? "") === values.room &&
        english(note.values.other ?? "") === values.other,
    )
  ) {
    context.notes.push({ code: "ifc-walls-centred", values });
  }
};
