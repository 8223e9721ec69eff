import type { Detector } from "#engine";
import type { RecordInputs } from "../schema/job-file.ts";
import { fromSite } from "../site/to-site.ts";
import { gone } from "./change-records.ts";
import type { Command, Edit } from "./command.ts";
import { put, recordOf, remove } from "./record-edits.ts";
import { inReadingOrder, newTags } from "./tags.ts";

/**
 * Takes a calculated layout: its devices replace the room's detectors in one step.
 *
 * A device whose id is that of a detector of the room keeps its record and its tag; of the others each gets a new id, and first the
 * tags that become free in this room, so that calculating again does not use up numbers.
 *
 * @param devices - Devices as the engine made them: metres, radians.
 */
export const replaceDetectors = (room: string, devices: readonly Detector[]): Command => ({
  name: "replace-detectors",
  edits: (job, world) => {
    if (!recordOf(job, "rooms", room)) return { problems: [gone("rooms", room)] };
    const before = job.detectors.filter((detector) => detector.room === room);
    const staying = new Set(devices.map((device) => device.id));
    const going = before.filter((detector) => !staying.has(detector.id));
    const known = new Map(before.map((detector) => [detector.id, detector]));
    const fresh = inReadingOrder(devices.filter((device) => !known.has(device.id)));
    const free = going
      .map((detector) => detector.tag)
      .filter((tag) => tag !== "")
      .sort();
    const tags = [...free, ...newTags(job, { room, count: fresh.length })];
    const edits: Edit[] = going.map((detector) => remove("detectors", detector.id));
    for (const device of devices) {
      const own = known.get(device.id);
      if (own)
        edits.push(
          put("detectors", { ...own, ...recordOfDevice(device), id: own.id, tag: own.tag || device.tag }),
        );
    }
    for (const [index, device] of fresh.entries())
      edits.push(
        put("detectors", {
          ...recordOfDevice(device),
          room,
          id: world.newId("detectors"),
          tag: tags[index]!,
        }),
      );
    return { edits };
  },
});

const recordOfDevice = (device: Detector): RecordInputs["detectors"] =>
  fromSite("detectors", device) as unknown as RecordInputs["detectors"];
