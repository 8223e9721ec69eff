import type { RoomUse } from "#engine";
import { t } from "../../texts/index.ts";

/** What a room may be used for, in the order in which lists offer it. */
export const uses: readonly RoomUse[] = [
  "passing",
  "stair",
  "moving",
  "sitting",
  "sanitary",
  "changing",
  "plant",
  "other",
];

/** The use that a person wrote: the word of the screen, a part of it ("Office"), or its beginning. */
export function writtenUse(text: string): RoomUse | undefined {
  const wanted = plain(text);
  if (wanted === "") return undefined;
  const words = uses.map((use) => ({ use, word: plain(t(`use.${use}`)) }));
  return (
    words.find(({ use, word }) => wanted === use || wanted === word) ??
    words.find(({ word }) => word.split(", ").includes(wanted)) ??
    onlyOne(
      words.filter(
        ({ use, word }) => wanted.length >= 3 && (word.startsWith(wanted) || use.startsWith(wanted)),
      ),
    )
  )?.use;
}

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, " ");

const onlyOne = <T>(found: readonly T[]): T | undefined => (found.length === 1 ? found[0] : undefined);

/**
 * Words by which rooms tell what they are used for, the most telling use first: "toilet corridor" is sanitary. English and
 * a few that stand on every European plan; a person's own choice always counts more.
 */
const telling: readonly (readonly [RoomUse, RegExp])[] = [
  [
    "sanitary",
    /\b(wcs?|toilets?|showers?|bath(room)?s?|washrooms?|restrooms?|lavator(y|ies)|sanit\w*|dusch\w*|bad|douches?)\b/,
  ],
  ["changing", /\b(chang(e|ing)|lockers?|cloak ?rooms?|dressing|umkleide\w*|garderoben?|vestiaires?)\b/],
  ["stair", /\b(stairs?|stairwells?|staircases?|stairways?|treppe\w*|escaliers?)\b/],
  [
    "plant",
    /\b(plant|boilers?|electrical|switch ?rooms?|servers?|comms|risers?|machines?|machinery|drying|technik\w*|heizung\w*)\b/,
  ],
  [
    "passing",
    /\b(corridors?|hall|halls|hallways?|lobby|lobbies|passages?|entrances?|foyers?|landings?|vestibules?|flure?|korridor\w*|couloirs?)\b/,
  ],
  [
    "moving",
    /\b(stores?|storage|storerooms?|archives?|warehouses?|workshops?|garages?|cellars?|basements?|luggage|lager\w*|keller\w*|d[eé]p[oô]ts?)\b/,
  ],
  [
    "sitting",
    /\b(offices?|meetings?|conference|class ?rooms?|study|studies|reception|canteens?|kitchens?|lounges?|rest ?rooms?|staff ?rooms?|back-office|b[uü]ros?|besprechung\w*|bureaux?)\b/,
  ],
];

/** What a room of this name is usually used for; "other" where no word of it tells. */
export const usualUse = (name: string): RoomUse =>
  telling.find(([, words]) => words.test(name.toLowerCase()))?.[0] ?? "other";
