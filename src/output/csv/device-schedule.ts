import { controlledRooms, degreesOf, roomTitle, type Site, say, type Words, wholeTurn } from "#engine";
import { cutOutWords, maskWords, measureWords } from "../setting-out/device-rows.ts";
import { measuresOf } from "../setting-out/measures.ts";
import { wallLetters } from "../setting-out/wall-letters.ts";
import type { Speak } from "../words/speak.ts";
import { csvOf } from "./csv.ts";

export const deviceHead: readonly Words[] = [
  say`Tag`,
  say`Storey`,
  say`Room`,
  say`Model`,
  say`Height m`,
  say`Turn °`,
  "x m",
  "y m",
  say`From wall (mm)`,
  say`From wall (mm)`,
  say`Cut-out mm`,
  say`Masks`,
  say`Group`,
  say`Switches`,
  say`Pinned`,
  say`Id`,
];

/** Every detector of a job as one line of CSV. */
export const deviceSchedule = (site: Site, speak: Speak): string =>
  csvOf([deviceHead, ...deviceRows(site)], speak);

/** Every detector of a job as one row, in the order of storeys and tags, with the measures of the setting-out sheets. */
export function deviceRows(site: Site): readonly (readonly Words[])[] {
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const letters = new Map(
    site.rooms.map((room) => [
      room.id,
      wallLetters(
        site.detectors.filter((one) => one.room === room.id).flatMap((one) => measuresOf(one, room, site)),
      ),
    ]),
  );
  const storeyPlace = (room: string): number =>
    site.storeys.findIndex((storey) => storey.id === rooms.get(room)?.storey);
  const detectors = [...site.detectors].sort(
    (a, b) => storeyPlace(a.room) - storeyPlace(b.room) || (a.tag < b.tag ? -1 : a.tag > b.tag ? 1 : 0),
  );
  return detectors.map((detector) => {
    const room = rooms.get(detector.room);
    const model = site.models.find((one) => one.id === detector.model);
    const measures = room ? measuresOf(detector, room, site) : [];
    return [
      detector.tag,
      site.storeys.find((storey) => storey.id === room?.storey)?.name ?? "",
      roomTitle(room),
      model?.title ?? detector.model,
      detector.height.toFixed(2),
      String(Math.round(degreesOf(wholeTurn(detector.turn))) % 360),
      detector.at[0].toFixed(3),
      detector.at[1].toFixed(3),
      ...[0, 1].map((i) => {
        const measure = measures[i];
        return measure
          ? measureWords(measure, letters.get(detector.room) ?? new Map(), wholeMillimetres)
          : say`measure on site`;
      }),
      cutOutWords(model),
      detector.masks.map(maskWords).join("; "),
      detector.group,
      controlledRooms(detector)
        .map((id) => roomTitle(rooms.get(id)))
        .join("; "),
      detector.pinned ? say`yes` : say`no`,
      detector.id,
    ];
  });
}

/** Without the thin gap in the thousands, so that a spreadsheet reads a number. */
const wholeMillimetres = (metres: number): string => String(Math.round(metres * 1000));
