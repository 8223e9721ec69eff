import type { Room, Site } from "#engine";
import { roomArea } from "../../plan/shapes.ts";
import {
  areaText,
  figureIn,
  lengthFigure,
  lengthIn,
  lengthText,
  numberText,
  type Units,
} from "../../texts/index.ts";
import { t } from "../../texts/rooms.ts";
import { heightLimits } from "./sizes-list.ts";
import { uses, writtenUse } from "./uses.ts";

/** What cells are shown and read with. */
export interface CellContext {
  readonly site: Pick<Site, "storeys">;
  readonly units: Units;
}

/** Fields of a room that a cell changes; undefined takes a field away. */
export type RoomFields = { readonly [Name in keyof Room]?: Room[Name] | undefined };

/** What was typed or pasted into a cell: what changes, or a sentence that says what was wrong. */
export type CellReading = { readonly fields: RoomFields } | { readonly trouble: string };

export type ColumnKey =
  | "number"
  | "name"
  | "use"
  | "ceilingHeight"
  | "storey"
  | "highestTemperature"
  | "area";

/** One column of the table of rooms. */
export interface Column {
  readonly key: ColumnKey;
  readonly shown: (room: Room, context: CellContext) => string;
  /** Absent: calculated, and not to be typed. */
  readonly read?: (typed: string, context: CellContext) => CellReading;
  /** Present: the cell offers these words. */
  readonly options?: (context: CellContext) => readonly { readonly value: string; readonly word: string }[];
  readonly order: (room: Room, context: CellContext) => string | number;
  readonly figures: boolean;
}

/** As in the card of a room. [°C] */
const temperatureLimits = { least: -30, most: 60 } as const;
const longestText = 2000;

const text =
  (field: "number" | "name") =>
  (typed: string): CellReading =>
    typed.length > longestText
      ? { trouble: t("rooms.cell.long", { most: longestText }) }
      : { fields: { [field]: typed.trim() } };

const useWord = (room: Pick<Room, "use">): string => t(`use.${room.use}`);
const storeyName = (room: Room, { site }: CellContext): string =>
  site.storeys.find(({ id }) => id === room.storey)?.name ?? "";

export const columns: readonly Column[] = [
  {
    key: "number",
    shown: ({ number }) => number,
    read: text("number"),
    order: ({ number }) => number,
    figures: false,
  },
  {
    key: "name",
    shown: ({ name }) => name,
    read: text("name"),
    order: ({ name }) => name,
    figures: false,
  },
  {
    key: "use",
    shown: useWord,
    read: (typed) => {
      const use = writtenUse(typed);
      return use ? { fields: { use } } : { trouble: t("rooms.cell.use") };
    },
    options: () => uses.map((use) => ({ value: use, word: t(`use.${use}`) })),
    order: useWord,
    figures: false,
  },
  {
    key: "ceilingHeight",
    shown: ({ ceilingHeight }, { units }) => lengthFigure(ceilingHeight, units),
    read: readHeight,
    order: ({ ceilingHeight }) => ceilingHeight,
    figures: true,
  },
  {
    key: "storey",
    shown: storeyName,
    read: readStorey,
    options: ({ site }) => site.storeys.map(({ id, name }) => ({ value: id, word: name })),
    order: (room, { site }) => site.storeys.find(({ id }) => id === room.storey)?.elevation ?? 0,
    figures: false,
  },
  {
    key: "highestTemperature",
    shown: ({ highestTemperature }) =>
      highestTemperature === undefined ? "" : numberText(highestTemperature).replaceAll(",", ""),
    read: readTemperature,
    order: ({ highestTemperature }) => highestTemperature ?? Number.NEGATIVE_INFINITY,
    figures: true,
  },
  {
    key: "area",
    shown: (room, { units }) => areaText(roomArea(room), units),
    order: (room) => roomArea(room),
    figures: true,
  },
];

function readHeight(typed: string, { units }: CellContext): CellReading {
  const height = lengthIn(typed, units);
  const { least, most } = heightLimits;
  if (height === undefined || height < least || height > most)
    return {
      trouble: t("rooms.cell.height", { least: lengthText(least, units), most: lengthText(most, units) }),
    };
  return { fields: { ceilingHeight: height } };
}

function readStorey(typed: string, { site }: CellContext): CellReading {
  const wanted = typed.trim().toLowerCase();
  const found =
    site.storeys.find(({ id }) => id === typed) ??
    site.storeys.find(({ name }) => name.trim().toLowerCase() === wanted);
  return found ? { fields: { storey: found.id } } : { trouble: t("rooms.cell.storey") };
}

function readTemperature(typed: string): CellReading {
  if (typed.trim() === "") return { fields: { highestTemperature: undefined } };
  const degrees = figureIn(typed, "°C");
  const { least, most } = temperatureLimits;
  return degrees === undefined || degrees < least || degrees > most
    ? { trouble: t("rooms.cell.temperature", { least, most }) }
    : { fields: { highestTemperature: degrees } };
}

/** Rows in the order of a column; the job stays as it is. Numbers in texts count as numbers: 2 before 10. */
export function sorted(
  rooms: readonly Room[],
  by: { readonly column: Column; readonly down: boolean },
  context: CellContext,
): readonly Room[] {
  const words = new Intl.Collator("en", { numeric: true, sensitivity: "base" });
  const keyed = rooms.map((room) => ({ room, key: by.column.order(room, context) }));
  const way = by.down ? -1 : 1;
  return keyed
    .sort((a, b) =>
      typeof a.key === "number" && typeof b.key === "number"
        ? way * (a.key === b.key ? 0 : a.key < b.key ? -1 : 1)
        : way * words.compare(String(a.key), String(b.key)),
    )
    .map(({ room }) => room);
}
