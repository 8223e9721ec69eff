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
