import type { Room } from "../site/index.ts";
import type { RuleSpace } from "./rule-pack.ts";

/** Kinds of space that a use leaves open. A use that nobody knows leaves all of them open. */
const spacesOfUse: Readonly<Record<Room["use"], readonly RuleSpace[] | undefined>> = {
  passing: ["corridor", "lobby"],
  stair: ["stairway"],
  moving: ["storage", "warehouse", "copy", "lobby", "library-stacks", "parking", "other"],
  sitting: ["office-enclosed", "office-open", "classroom", "meeting", "break-room", "other"],
  sanitary: ["restroom"],
  changing: ["locker-room"],
  plant: ["storage", "other"],
  other: undefined,
};

/**
 * Kinds of space that a room may be: what a person chose, otherwise what its use leaves open.
 *
 * @param room - Use, and the kind that somebody chose.
 * @returns One where it is known, several where it is open; undefined: any.
 * @source DERIVED-HERE
 * @example A corridor by its use: corridor or lobby; chosen "lobby": lobby alone
 */
export const spacesOf = (room: Pick<Room, "use" | "space">): readonly RuleSpace[] | undefined =>
  room.space === undefined ? spacesOfUse[room.use] : [room.space];

/** Words in the names of rooms by the kind of space they speak of, the more telling first. */
const words: readonly (readonly [RegExp, RuleSpace])[] = [
  [/\b(class ?room|lecture|training)\b|seminar|schulung|hörsaal|unterricht/i, "classroom"],
  [/\b(meeting|conference|board ?room)\b|besprechung|konferenz|sitzungs/i, "meeting"],
  [/\b(copy|copier|print(er|ing)?)\b|kopier|drucker/i, "copy"],
  [
    /\b(break|lounge|crew rest|tea|staff kitchen|pantry|canteen)\b|pausen|aufenthalt|teek(ü|ue)che/i,
    "break-room",
  ],
  [/\b(open[- ]?plan|open office)\b|gro(ß|ss)raum/i, "office-open"],
  [/\b(locker|changing)\b/i, "locker-room"],
  [/\b(toilets?|wc|wash ?room|lavatory)\b/i, "restroom"],
  [/\b(stairs?|stairway|stairwell|staircase)\b/i, "stairway"],
  [/\b(lobby|entrance|foyer|reception|vestibule)\b|eingang|empfang/i, "lobby"],
  [/\b(corridor|hallway|passage|gang)\b|flur\b/i, "corridor"],
  [/\b(warehouse)\b/i, "warehouse"],
  [/\b(stacks?)\b/i, "library-stacks"],
  [/\b(parking|garage|car park)\b/i, "parking"],
  [/\b(store|storage|archive|cupboard|closet)\b|lager|archiv|abstell/i, "storage"],
];

/**
 * The kind of space that a room's name speaks of, offered to a person and never taken by itself.
 *
 * @param room - Name, use, and the kind that somebody chose.
 * @returns A kind that its use leaves open; undefined where one is chosen or known, or where the name says nothing that fits.
 * @source COMMON-PRACTICE
 * @example "Meeting room", for sitting: meeting; "Meeting point" on a stair: undefined
 */
export function spaceByName(room: Pick<Room, "use" | "space" | "name">): RuleSpace | undefined {
  const open = spacesOf(room);
  if (room.space !== undefined || open?.length === 1) return undefined;
  return words.find(
    ([word, space]) => word.test(room.name) && (open === undefined || open.includes(space)),
  )?.[1];
}
