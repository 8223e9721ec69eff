import { parseJob } from "../parse/parse-job.ts";
import { type JobFile, jobFormat, jobVersion, type RecordInputs, recordKinds } from "../schema/job-file.ts";
import { inState } from "./demo-faults.ts";
import { middleRooms } from "./demo-middle.ts";
import { demoModels } from "./demo-models.ts";
import { northRooms } from "./demo-north.ts";
import { southRooms } from "./demo-south.ts";
import { ceilinged, fed, wiring } from "./demo-wiring.ts";
import type { Drawn } from "./drawing.ts";

/** Hangs already when the demo is opened for the first time, so that there is something to see. */
const hung: Drawn = {
  detectors: [
    {
      id: "corridor-west",
      tag: "B1.01",
      room: "corridor",
      model: "demo-corridor-20",
      at: [10.82, 6.9],
      height: 2.5,
    },
    {
      id: "corridor-east",
      tag: "B1.02",
      room: "corridor",
      model: "demo-corridor-20",
      at: [23.42, 6.9],
      height: 2.5,
    },
    {
      id: "meeting-table",
      tag: "B1.03",
      room: "meeting",
      model: "demo-round-10-desk",
      at: [17.02, 10.62],
      height: 2.7,
    },
  ],
};

/**
 * The demo: the staff wing of an invented ferry terminal, drawn to exercise all that the program can do.
 * The corridor and the meeting room have detectors; the other rooms wait for them. Its wiring has mistakes as sites have them.
 */
export const demoJob = (): JobFile =>
  demoIn("found", { id: "saltmarsh", name: "Saltmarsh Ferry Terminal, Staff Wing" });

/** The demo with the mistakes of its wiring and its settings mended, and nothing else changed. */
export const correctedDemoJob = (): JobFile =>
  demoIn("mended", { id: "saltmarsh-corrected", name: "Saltmarsh Ferry Terminal, Staff Wing, corrected" });

function demoIn(state: "found" | "mended", head: { readonly id: string; readonly name: string }): JobFile {
  const parts: readonly Drawn[] = [
    {
      storeys: [
        { id: "ground", name: "Ground floor", elevation: 0 },
        { id: "first", name: "First floor", elevation: 3.4 },
      ],
    },
    ...middleRooms,
    ...southRooms,
    ...northRooms,
    { models: demoModels },
    hung,
    wiring,
  ];
  const drawn = inState(
    Object.fromEntries(
      recordKinds.map((kind) => {
        const records = parts.flatMap((part): readonly unknown[] => part[kind] ?? []);
        if (kind === "luminaires") return [kind, fed(records as RecordInputs["luminaires"][])];
        return [kind, kind === "rooms" ? ceilinged(records as RecordInputs["rooms"][]) : records];
      }),
    ) as Drawn,
    state,
  );
  const read = parseJob({
    format: jobFormat,
    version: jobVersion,
    ...head,
    details: {
      client: "Saltmarsh Harbour Trust",
      site: "Saltmarsh Ferry Terminal, Quay Road, Saltmarsh",
      drawnBy: "J. Marlow",
      checkedBy: "",
      date: "2026-03-02",
      revision: "A",
      currency: "EUR",
      region: "",
    },
    // The luminaires of the wing are lit 0.3 s after they get their supply.
    defaults: { lampStart: 0.3 },
    ...Object.fromEntries(Object.entries(drawn).map(([kind, records]) => [kind, settled(records)])),
  });
  if (!read.job) throw new Error(`The demo job is broken: ${JSON.stringify(read.problems)}`);
  const rooms = [...read.job.rooms].sort((a, b) => (a.number < b.number ? -1 : 1));
  return {
    ...read.job,
    rooms: [
      ...rooms.filter((room) => room.storey === "ground"),
      ...rooms.filter((room) => room.storey !== "ground"),
    ],
  };
}

/** Sums of decimals as a hand would write them: 9.6, not 9.600000000000001. */
function settled(value: unknown): unknown {
  if (typeof value === "number") return Math.round(value * 1e6) / 1e6;
  if (Array.isArray(value)) return value.map(settled);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, settled(part)]));
}
