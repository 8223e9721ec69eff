import { type DetectorModel, planningDefaults, type Site } from "#engine";
import { t } from "../texts/index.ts";

/** A job with one storey and nothing on it, to draw from nothing. */
export const emptySite = (models: readonly DetectorModel[]): Site => ({
  name: t("home.empty.name"),
  defaults: planningDefaults,
  storeys: [{ id: "storey-1", name: t("home.empty.storey"), elevation: 0 }],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models,
  detectors: [],
});
