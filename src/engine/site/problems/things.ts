import { type Problem, type Said, say } from "../../check/index.ts";
import { areaOf, difference, distanceToRings, outlineContains, type Point } from "../../geometry/index.ts";
import { ceilingThingKindNames, dwellKindNames, interferenceKindNames } from "../kind-names.ts";
import { roomTitle, type SiteLookUp } from "../look-up.ts";
import { nameOfThing, rounded } from "../names.ts";
import type { DwellPlace, Obstacle, Room } from "../site.ts";
import { isUsableOutline } from "./outlines.ts";
import { floorOf } from "./rooms.ts";

/** Part of an obstacle that may stick into the wall: furniture is drawn against it, columns are drawn through it. [m²] */
const OUTSIDE_ALLOWED = 0.02;
/** A thing drawn this far into the wall still belongs to the room: heaters and outlets hang on it. [m] */
const ON_WALL = 0.3;

/**
 * What is wrong with the things that stand, hang and sit in the rooms of a site.
 *
 * @param look - The site's records at hand.
 * @returns One problem for each fault; things of deleted rooms are left to `recordProblems`.
 * @example A rack from 2 m to 1 m above the floor gives "obstacle-upside-down"
 */
export function thingProblems(look: SiteLookUp): readonly Problem[] {
  const { site } = look;
  return site.rooms
    .filter((room) => isUsableOutline(room.outline))
    .flatMap((room) => [
      ...look.obstaclesOf(room.id).flatMap((obstacle) => obstacleFaults(obstacle, room)),
      ...look.dwellPlacesOf(room.id).flatMap((place) => dwellFaults(place, room)),
      ...look.interferenceOf(room.id).flatMap((source) => {
        const kind = say`source of false triggering (${interferenceKindNames[source.kind]})`;
        const ends = source.to ? [source.at, source.to] : [source.at];
        return outside({ kind, id: source.id, ends, numbers: { height: source.height }, room });
      }),
      ...look.ceilingThingsOf(room.id).flatMap((thing) =>
        outside({
          kind: ceilingThingKindNames[thing.kind],
          id: thing.id,
          ends: [thing.at],
          numbers: {},
          room,
        }),
      ),
      ...look.luminairesOf(room.id).flatMap((luminaire): Problem[] => {
        const faults = outside({
          kind: say`luminaire`,
          id: luminaire.id,
          ends: [luminaire.at],
          numbers: { height: luminaire.height },
          room,
        });
        if (luminaire.height <= room.ceilingHeight + 1e-6 || !Number.isFinite(luminaire.height))
          return faults;
        const values = {
          name: luminaire.name,
          height: rounded(luminaire.height, 2),
          room: roomTitle(room),
          ceiling: rounded(room.ceilingHeight, 2),
        };
        return [
          ...faults,
          { code: "luminaire-above-ceiling", values, room: room.id, records: [luminaire.id] },
        ];
      }),
    ]);
}

function obstacleFaults(obstacle: Obstacle, room: Room): Problem[] {
  const name = nameOfThing(obstacle);
  const owner = { room: room.id, records: [obstacle.id] };
  const missing = (["base", "top"] as const).filter((field) => !Number.isFinite(obstacle[field]));
  if (missing.length > 0)
    return missing.map((field) => ({
      code: "number-missing",
      values: { what: name, field: edgeNames[field] },
      ...owner,
    }));
  const problems: Problem[] = [];
  if (obstacle.base >= obstacle.top) {
    problems.push({
      code: "obstacle-upside-down",
      values: { obstacle: name, base: rounded(obstacle.base, 2), top: rounded(obstacle.top, 2) },
      ...owner,
    });
  }
  if (obstacle.top > room.ceilingHeight + 0.01) {
    const values = {
      obstacle: name,
      top: rounded(obstacle.top, 2),
      room: roomTitle(room),
      ceiling: rounded(room.ceilingHeight, 2),
    };
    problems.push({ code: "obstacle-above-ceiling", values, ...owner });
  }
  if (obstacle.seeThrough)
    problems.push({ code: "see-through-obstacle", values: { obstacle: name }, ...owner });
  if (isUsableOutline(obstacle.footprint)) {
    const area = areaOf(difference([{ outline: obstacle.footprint, holes: [] }], floorOf(room)));
    if (area > OUTSIDE_ALLOWED && obstacle.kind !== "column") {
      problems.push({
        code: "obstacle-outside-room",
        values: { obstacle: name, area: rounded(area, 2), room: roomTitle(room) },
        ...owner,
      });
    }
  }
  return problems;
}

function dwellFaults(place: DwellPlace, room: Room): Problem[] {
  const owner = { room: room.id, records: [place.id] };
  const values = { kind: dwellKindNames[place.kind], room: roomTitle(room) };
  if (!place.at.every(Number.isFinite))
    return [
      {
        code: "number-missing",
        values: { what: say`A ${values.kind} in room ${values.room}`, field: say`place` },
        ...owner,
      },
    ];
  const problems: Problem[] = [];
  if (
    !outlineContains(room.outline, place.at) ||
    room.holes.some((hole) => outlineContains(hole, place.at))
  ) {
    problems.push({ code: "dwell-place-outside-room", values, at: [place.at[0], place.at[1]], ...owner });
  }
  if (!(place.radius > 0))
    problems.push({
      code: "dwell-place-without-size",
      values: { ...values, radius: place.radius },
      ...owner,
    });
  return problems;
}

const edgeNames: Readonly<Record<"base" | "top", Said>> = { base: say`base`, top: say`top` };

interface Placed {
  readonly kind: Said;
  readonly id: string;
  readonly ends: readonly Point[];
  readonly numbers: { readonly height?: number };
  readonly room: Room;
}

function outside({ kind, id, ends, numbers, room }: Placed): Problem[] {
  const owner = { room: room.id, records: [id] };
  const what = say`A ${kind} in room ${roomTitle(room)}`;
  const missing = [
    ...(numbers.height === undefined || Number.isFinite(numbers.height) ? [] : [say`height`]),
    ...(ends.flat().every(Number.isFinite) ? [] : [say`place`]),
  ];
  if (missing.length > 0)
    return missing.map((field) => ({ code: "number-missing", values: { what, field }, ...owner }));
  const off = ends.find(
    (end) => !outlineContains(room.outline, end) && distanceToRings(end, [room.outline]) > ON_WALL,
  );
  return off
    ? [
        {
          code: "thing-outside-room",
          values: { kind, room: roomTitle(room) },
          at: [off[0], off[1]],
          ...owner,
        },
      ]
    : [];
}
