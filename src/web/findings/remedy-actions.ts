import type { ProblemCode } from "#engine";
import { detectorRemedies, doubledTags } from "./detector-remedies.ts";
import { roomAt } from "./inside-room.ts";
import { type RemediesOf, type Remedy, recordIn, removing, setting } from "./remedy.ts";
import { settingRemedies } from "./setting-remedies.ts";
import { thingRemedies } from "./thing-remedies.ts";

const place: RemediesOf = ({ room }) => [
  room === undefined ? undefined : { do: "place", word: "findings.remedy.place", room },
];

/** What each finding's button does. Codes that are absent can only be mended by a person who knows. */
export const remedyActions: Readonly<Partial<Record<ProblemCode, RemediesOf>>> = {
  "no-detector": place,
  "walk-gap": place,
  "hold-gap": place,
  "gaps-tolerated": place,
  "bays-need-sound": place,
  "dark-walk-too-long": place,
  "dark-walk-unlit": place,
  "stair-lit-too-late": place,
  "source-too-near": place,
  "detector-where-none-may-be": place,
  "detector-in-obstacle": place,
  "placing-stopped": place,
  "duplicate-tag": doubledTags,
  "job-tag-twice": doubledTags,
  ...detectorRemedies,
  ...thingRemedies,
  ...settingRemedies,
  "storey-missing": (finding, site) => {
    const room = recordIn("rooms", finding, site);
    return site.storeys
      .map(
        (storey): Remedy | undefined =>
          room &&
          setting("findings.remedy.to-storey", { kind: "rooms", id: room.id, fields: { storey: storey.id } }),
      )
      .slice(0, 1);
  },
  "record-in-deleted-room": (finding, site) => {
    const kinds = [
      "obstacles",
      "dwellPlaces",
      "interference",
      "ceilingThings",
      "luminaires",
      "floorPieces",
    ] as const;
    return kinds.flatMap((kind) => {
      const record = recordIn(kind, finding, site);
      if (record === undefined) return [];
      const at = "at" in record ? record.at : record.footprint[0];
      const room = at && roomAt(site, undefined, at);
      return [
        room && setting("findings.remedy.to-room", { kind, id: record.id, fields: { room: room.id } }),
        removing("findings.remedy.delete", kind, record.id),
      ];
    });
  },
};
