import { areaOf, type DoorState, deviceZone, type Region, sceneOf, spillZone, type ZoneKind } from "#engine";
import { type Command, exitCodes, refused, textValue } from "./command.ts";
import { findDetector } from "./find-records.ts";
import { openJob } from "./open-job.ts";
import { rounded } from "./words.ts";

/** Somebody who must not be seen may walk towards the detector or across: both are counted at once. */
const passing: readonly ZoneKind[] = ["towards", "across"];
const kinds: readonly ZoneKind[] = ["seated", "towards", "across", "sound"];
const doorStates: readonly DoorState[] = ["drawn", "closed", "open"];

export const zone: Command = {
  name: "zone",
  usage: "zone JOB --device ID --kind KIND [--doors STATE] [--spill]",
  summary: "What one detector covers, as polygons.",
  help: [
    ["--device ID", "id or tag of the detector"],
    ["--kind KIND", `one of ${kinds.join(", ")}`],
    ["--doors STATE", `${doorStates.join(", ")}; closed if absent (open with --spill)`],
    ["--spill", "what it may see at the most, towards and across together, for spill and false triggering"],
  ],
  options: {
    device: { type: "string" },
    kind: { type: "string" },
    doors: { type: "string" },
    spill: { type: "boolean" },
  },
  run: async ({ world, words, values }) => {
    const wrong = (reason: string) => refused({ code: "command-wrong", values: { reason, command: "zone" } });
    const [file, ...more] = words;
    if (file === undefined || more.length > 0) return wrong("it takes one job file");
    const spill = values.spill === true;
    const kind = kinds.find((one) => one === (values.kind ?? (spill ? "towards" : undefined)));
    if (!kind) return wrong(`--kind is one of ${kinds.join(", ")}`);
    if (spill && !passing.includes(kind)) return wrong(`--spill goes with --kind ${passing.join(" or ")}`);
    const doors = doorStates.find((one) => one === (values.doors ?? (spill ? "open" : "closed")));
    if (!doors) return wrong(`--doors is one of ${doorStates.join(", ")}`);
    const device = textValue(values, "device");
    if (device === undefined) return wrong("--device names the detector");
    const opened = await openJob(world, file);
    if ("problems" in opened) return opened;
    const { site } = opened;
    const found = findDetector(site, device);
    if ("code" in found) return refused(found);
    let region: Region;
    if (spill) {
      const room = site.rooms.find((one) => one.id === found.room);
      const model = site.models.find((one) => one.id === found.model);
      region =
        room && model ? spillZone(sceneOf(site, { storey: room.storey, doors }), { ...found, model }) : [];
    } else region = deviceZone(site, { device: found.id, kind, doors });
    const area = rounded(areaOf(region));
    const polygons = region.map((piece) =>
      [piece.outline, ...piece.holes].map((ring) => ring.map(([x, y]) => [rounded(x), rounded(y)])),
    );
    return {
      exit: exitCodes.fine,
      json: { device: found.id, kind, spill, doors, polygons, area },
      text: `${found.tag || found.id}  ${spill ? "spill" : kind}, doors ${doors}: ${area.toFixed(2)} m² in ${region.length} ${region.length === 1 ? "piece" : "pieces"}`,
    };
  },
};
