import { type Said, say, type Words } from "#engine";
import type { RecordKind } from "../schema/job-file.ts";
import { nameOfRecord, shortened } from "./sentences.ts";

/** A record of the job in a sentence, away from any file. @param name - What it is called, or its id. @example recordSaid("rooms", "Drying room") reads: rooms “Drying room” */
export const recordSaid = (kind: RecordKind, name: string): Said => words[kind](shortened(name));

/** The same by what stands in it; its kind alone where nothing in it is a name. */
export function placeSaid(kind: RecordKind, raw: unknown): Words {
  const name = nameOfRecord(raw);
  return name === undefined ? kind : recordSaid(kind, name);
}

/** Kinds as the file calls them; other languages have the word of the trade. */
const words: Readonly<Record<RecordKind, (name: string) => Said>> = {
  storeys: (name) => say`storeys “${name}”`,
  rooms: (name) => say`rooms “${name}”`,
  underlays: (name) => say`underlays “${name}”`,
  floorPieces: (name) => say`floorPieces “${name}”`,
  openings: (name) => say`openings “${name}”`,
  obstacles: (name) => say`obstacles “${name}”`,
  dwellPlaces: (name) => say`dwellPlaces “${name}”`,
  interference: (name) => say`interference “${name}”`,
  ceilingThings: (name) => say`ceilingThings “${name}”`,
  luminaires: (name) => say`luminaires “${name}”`,
  switches: (name) => say`switches “${name}”`,
  models: (name) => say`models “${name}”`,
  detectors: (name) => say`detectors “${name}”`,
  boards: (name) => say`boards “${name}”`,
  circuits: (name) => say`circuits “${name}”`,
  photos: (name) => say`photos “${name}”`,
  instruments: (name) => say`instruments “${name}”`,
  testEntries: (name) => say`testEntries “${name}”`,
  openPoints: (name) => say`openPoints “${name}”`,
  signatures: (name) => say`signatures “${name}”`,
  revisions: (name) => say`revisions “${name}”`,
  swaps: (name) => say`swaps “${name}”`,
  notes: (name) => say`notes “${name}”`,
};
