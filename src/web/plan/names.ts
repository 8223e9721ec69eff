import type { Site } from "#engine";
import type { RecordRef } from "../contract.ts";
import { lengthText, t, type Units } from "../texts/index.ts";
import { placeOf, recordOf } from "./pick.ts";

/** What a thing is called on cards, in lists and when it is read out. */
export function nameOf(site: Site, ref: RecordRef): string {
  switch (ref.kind) {
    case "detectors":
      return t("name.detector", { tag: recordOf(site, "detectors", ref.id)?.tag ?? "" });
    case "rooms": {
      const room = recordOf(site, "rooms", ref.id);
      return `${room?.number ?? ""} ${room?.name ?? ""}`.trim() || t("name.room");
    }
    case "openings":
      return t(`opening.${recordOf(site, "openings", ref.id)?.kind ?? "door"}`);
    case "obstacles": {
      const obstacle = recordOf(site, "obstacles", ref.id);
      return obstacle?.name || t(`obstacle.${obstacle?.kind ?? "other"}`);
    }
    case "dwellPlaces":
      return t(`dwell.${recordOf(site, "dwellPlaces", ref.id)?.kind ?? "desk"}`);
    case "interference":
      return t(`interference.${recordOf(site, "interference", ref.id)?.kind ?? "heater"}`);
    case "luminaires":
      return recordOf(site, "luminaires", ref.id)?.name || t("name.luminaire");
    case "switches":
      return t(`switch.${recordOf(site, "switches", ref.id)?.kind ?? "switch"}`);
    case "ceilingThings":
      return t(`ceiling.${recordOf(site, "ceilingThings", ref.id)?.kind ?? "other"}`);
    case "floorPieces":
      return t(`floor.${recordOf(site, "floorPieces", ref.id)?.kind ?? "landing"}`);
    case "storeys":
      return recordOf(site, "storeys", ref.id)?.name ?? "";
    case "models":
      return recordOf(site, "models", ref.id)?.title ?? "";
  }
}

/** Name, room and position: how the plan sounds. */
export function spokenOf(site: Site, ref: RecordRef, units: Units): string {
  const place = placeOf(site, ref);
  const name = nameOf(site, ref);
  if (!place || ref.kind === "rooms") return name;
  const room = roomNameOf(site, ref);
  return t("name.spoken", { name, room, x: lengthText(place[0], units), y: lengthText(place[1], units) });
}

function roomNameOf(site: Site, ref: RecordRef): string {
  const record = recordOf(site, ref.kind, ref.id) as
    | { readonly room?: string; readonly rooms?: readonly (string | null)[] }
    | undefined;
  const id = record?.room ?? record?.rooms?.[0];
  return typeof id === "string" ? nameOf(site, { kind: "rooms", id }) : "";
}
