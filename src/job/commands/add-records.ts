import type { RecordInputs, RecordKind } from "../schema/job-file.ts";
import type { Command } from "./command.ts";
import { put } from "./record-edits.ts";
import { newTags } from "./tags.ts";

/** A record without an id: a new one is given. */
export type NewRecord<Kind extends RecordKind> = Omit<RecordInputs[Kind], "id"> & { readonly id?: string };

/** Adds one record of any kind but a detector, which needs a tag. */
export const addRecord = <Kind extends Exclude<RecordKind, "detectors">>(
  kind: Kind,
  record: NewRecord<Kind>,
): Command => ({
  name: "add-record",
  edits: (_, world) => ({
    edits: [put(kind, withId(record, world.newId(kind)) as unknown as RecordInputs[Kind])],
  }),
});

/** Adds a room; on a job without storeys also the ground floor to put it on. */
export const addRoom = (room: NewRecord<"rooms">): Command => ({
  name: "add-room",
  edits: (job, world) => {
    const storey = room.storey ?? job.storeys[0]?.id ?? "ground";
    const floors = job.storeys.some((one) => one.id === storey)
      ? []
      : [put("storeys", { id: storey, name: storey === "ground" ? "Ground floor" : storey, elevation: 0 })];
    return { edits: [...floors, put("rooms", withId({ ...room, storey }, world.newId("rooms")))] };
  },
});

/** Adds the data sheet of a detector. */
export const addModel = (model: NewRecord<"models">): Command => addRecord("models", model);

/** Hangs detectors, each with the next free tag of its storey unless one is given. */
export const addDetectors = (detectors: readonly NewRecord<"detectors">[]): Command => ({
  name: "add-detectors",
  edits: (job, world) => {
    const taken: string[] = [];
    return {
      edits: detectors.map((detector) => {
        const tag = detector.tag || newTags(job, { room: detector.room, count: 1, taken })[0]!;
        taken.push(tag);
        return put("detectors", withId({ ...detector, tag }, world.newId("detectors")));
      }),
    };
  },
});

export const addDetector = (detector: NewRecord<"detectors">): Command => addDetectors([detector]);

const withId = <Given extends { readonly id?: string }>(
  record: Given,
  id: string,
): Given & { readonly id: string } => ({
  ...record,
  id: record.id ?? id,
});
