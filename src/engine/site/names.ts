import { type Said, type SaidValue, say, type Words } from "../check/index.ts";
import { roomInSentence, type SiteLookUp } from "./look-up.ts";
import type { Obstacle, ObstacleKind, Opening, OpeningKind } from "./site.ts";

/**
 * What a person calls an opening: its kind and the rooms that it joins.
 *
 * @param opening - The opening. @param look - The site's records at hand.
 * @returns A phrase that begins a sentence.
 * @example "The door between 0.01 Corridor and 0.12 Drying room"
 */
export function nameOfOpening(opening: Opening, look: SiteLookUp): Said {
  const [one, other] = roomsOf(opening, look);
  return other === undefined ? leadingOut[opening.kind](one) : joining[opening.kind](one, other);
}

/** The same inside a sentence: a phrase of its own, because languages differ in more than its first letter. @example "the door between 0.01 Corridor and 0.12 Drying room" */
export function openingInSentence(opening: Opening, look: SiteLookUp): Said {
  const [one, other] = roomsOf(opening, look);
  return other === undefined
    ? leadingOutInSentence[opening.kind](one)
    : joiningInSentence[opening.kind](one, other);
}

function roomsOf({ rooms: [first, second] }: Opening, { roomById }: SiteLookUp): [Words, Words?] {
  const one = roomInSentence(roomById.get(first));
  return second === null ? [one] : [one, roomInSentence(roomById.get(second))];
}

type OfOne = Readonly<Record<OpeningKind, (room: SaidValue) => Said>>;
type OfTwo = Readonly<Record<OpeningKind, (room: SaidValue, other: SaidValue) => Said>>;

const leadingOut: OfOne = {
  door: (room) => say`The door between ${room} and outside`,
  passage: (room) => say`The passage between ${room} and outside`,
  window: (room) => say`The window between ${room} and outside`,
  glazing: (room) => say`The glazing between ${room} and outside`,
};

const joining: OfTwo = {
  door: (room, other) => say`The door between ${room} and ${other}`,
  passage: (room, other) => say`The passage between ${room} and ${other}`,
  window: (room, other) => say`The window between ${room} and ${other}`,
  glazing: (room, other) => say`The glazing between ${room} and ${other}`,
};

const leadingOutInSentence: OfOne = {
  door: (room) => say`the door between ${room} and outside`,
  passage: (room) => say`the passage between ${room} and outside`,
  window: (room) => say`the window between ${room} and outside`,
  glazing: (room) => say`the glazing between ${room} and outside`,
};

const joiningInSentence: OfTwo = {
  door: (room, other) => say`the door between ${room} and ${other}`,
  passage: (room, other) => say`the passage between ${room} and ${other}`,
  window: (room, other) => say`the window between ${room} and ${other}`,
  glazing: (room, other) => say`the glazing between ${room} and ${other}`,
};

/** What a person calls an obstacle, at the beginning of a sentence. @example A rack without a name is "A rack" */
export const nameOfThing = (obstacle: Pick<Obstacle, "name" | "kind">): Words =>
  obstacle.name.trim() || anObstacle[obstacle.kind];

/** The same inside a sentence. @example A rack without a name is "a rack" */
export const thingInSentence = (obstacle: Obstacle): Words =>
  obstacle.name.trim() || anObstacleInSentence[obstacle.kind];

/** An obstacle that nobody named, at the beginning of a sentence. */
export const anObstacle: Readonly<Record<ObstacleKind, Said>> = {
  rack: say`A rack`,
  partition: say`A partition`,
  glass: say`A pane of glass`,
  cubicle: say`A cubicle`,
  column: say`A column`,
  duct: say`A duct`,
  beam: say`A beam`,
  furniture: say`A piece of furniture`,
  other: say`An obstacle`,
};

const anObstacleInSentence: typeof anObstacle = {
  rack: say`a rack`,
  partition: say`a partition`,
  glass: say`a pane of glass`,
  cubicle: say`a cubicle`,
  column: say`a column`,
  duct: say`a duct`,
  beam: say`a beam`,
  furniture: say`a piece of furniture`,
  other: say`an obstacle`,
};

/** A figure rounded for a sentence. @param value - Any number. @param digits - Places after the point. @example rounded(1.2345, 2) = 1.23 */
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));
