export type { Declaration, DetectorModel, Lens, LensMask, ZoneKind, ZoneRow } from "./model.ts";
