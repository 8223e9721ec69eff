import type { Detector, Finding } from "#engine";
import type { EditStep } from "../contract.ts";
import { nearestOnUnderlays } from "../jobs/underlay-near.ts";
import type { Workbench } from "../shell/workbench.ts";
import { labelPlace } from "./label-place.ts";
import { placedFlags } from "./paint/flags.ts";
import { picked, placeOf, recordOf, roomsOn, sameRef } from "./pick.ts";
import type { Flag, Held } from "./picture.ts";
import type { Bench, ChosenSide } from "./tools/state.ts";
import { gripsOf } from "./tools/step.ts";
import { type Pixel, toPixel } from "./view.ts";

/** What the tools see of the workbench. */
export const benchOf = ({
  job,
  storey,
  view,
  selection,
  tool,
  drawing,
}: Workbench): Omit<Bench, "grips"> => ({
  site: job.site,
  storey,
  view,
  selection,
  tool,
  drawing,
  nearest: nearestOnUnderlays(job.underlays, storey),
  readOnly: job.readOnly,
  newId: job.newId,
});

type Tried = { readonly room: string; readonly devices: readonly Detector[] };

const triedKnown = new WeakMap<object, Tried>();

/** The layout on show; the same object while it is the same layout. */
export function triedOf({ tried }: Workbench): Tried | undefined {
  if (!tried) return undefined;
  const known = triedKnown.get(tried) ?? { room: tried.room, devices: tried.layout.devices };
  triedKnown.set(tried, known);
  return known;
}

let lastHeld: Held | undefined;

/** Detectors that a drag moves, and the rooms whose zones change with them; the same object while it is the same. */
export function heldOf({ job }: Workbench, preview: readonly EditStep[]): Held | undefined {
  const devices = new Set<string>();
  const rooms = new Set<string>();
  for (const step of preview) {
    if (step.kind !== "detectors" || step.do !== "set") continue;
    devices.add(step.id);
    const before = recordOf(job.site, "detectors", step.id);
    for (const room of [before?.room, step.fields.room, ...(before?.controls ?? [])])
      if (room !== undefined) rooms.add(room);
  }
  if (devices.size === 0) lastHeld = undefined;
  else if (!lastHeld || devices.size !== lastHeld.devices.size || !within(devices, lastHeld.devices))
    lastHeld = { devices, rooms };
  // A room that was passed through stays held: its zones have changed as well.
  else if (!within(rooms, lastHeld.rooms))
    lastHeld = { devices: lastHeld.devices, rooms: new Set([...lastHeld.rooms, ...rooms]) };
  return lastHeld;
}

const within = (some: ReadonlySet<string>, all: ReadonlySet<string>): boolean =>
  [...some].every((one) => all.has(one));

/** The chosen side, while its room alone is selected. */
export const chosenSideOf = ({ side, selection }: Workbench): ChosenSide | undefined =>
  selection.length === 1 && selection[0]?.kind === "rooms" && selection[0].id === side?.room
    ? side
    : undefined;

let lastFlags: { readonly inputs: readonly unknown[]; readonly flags: readonly Flag[] } | undefined;

/** Findings of the storey as flags; the number is the place in the whole list. The same list while nothing has changed. */
export function flagsOf(bench: Workbench, findings: readonly Finding[]): readonly Flag[] {
  const inputs = [
    bench.job.site,
    findings,
    bench.storey,
    bench.finding,
    bench.panel.kind,
    bench.tried,
    focusOf(bench),
  ];
  if (!lastFlags || inputs.some((one, i) => one !== lastFlags?.inputs[i]))
    lastFlags = { inputs, flags: madeFlags(bench, findings) };
  return lastFlags.flags;
}

function madeFlags(bench: Workbench, findings: readonly Finding[]): readonly Flag[] {
  const rooms = roomsOn(bench.job.site, bench.storey);
  return findings.flatMap((finding, index): Flag[] => {
    const room = finding.room === undefined ? undefined : rooms.get(finding.room);
    // What must be mended always has its flag; the rest while one looks at the list or at the room.
    const listed = bench.panel.kind === "findings" || bench.finding === index;
    const focused = finding.severity === "should" && focusOf(bench).has(room?.id ?? "");
    // What a layout on show would mend is not held against it.
    if (room && room.id === bench.tried?.room) return [];
    if (!room || (finding.severity !== "must" && !listed && !focused)) return [];
    const at = finding.at ?? recordPlace(bench, finding) ?? labelPlace(room, bench.job.site);
    return [{ number: index + 1, severity: finding.severity, at, current: bench.finding === index }];
  });
}

function recordPlace({ job }: Workbench, finding: Finding): Flag["at"] | undefined {
  const id = finding.records[0];
  if (id === undefined) return undefined;
  for (const kind of ["detectors", "openings", "obstacles", "dwellPlaces", "interference"] as const)
    if (recordOf(job.site, kind, id)) return placeOf(job.site, { kind, id });
  return undefined;
}

/** Index of the finding whose flag's head lies under a pixel; where several share a pole, the next one at each touch. */
export function flagAt(bench: Workbench, findings: readonly Finding[], pixel: Pixel): number | undefined {
  const placed = placedFlags(bench, flagsOf(bench, findings));
  const hit = placed.findLast(
    ({ head }) => Math.abs(head.px - pixel.px) < 15 && Math.abs(head.py - pixel.py) < 15,
  );
  if (!hit) return undefined;
  const numbers = [...hit.numbers].sort((a, b) => a - b);
  const at = bench.finding === undefined ? -1 : numbers.indexOf(bench.finding + 1);
  return (numbers[(at + 1) % numbers.length] ?? hit.flag.number) - 1;
}

let lastFocus: ReadonlySet<string> = new Set();

/** Rooms that the selection is about; the same set object while they are the same. */
export function focusOf({ job, selection }: Workbench): ReadonlySet<string> {
  const rooms = new Set<string>();
  for (const { kind, id } of selection) {
    if (kind === "rooms") rooms.add(id);
    if (kind === "detectors")
      for (const room of recordOf(job.site, kind, id)?.controls ?? []) rooms.add(room);
    if (kind === "openings")
      for (const room of recordOf(job.site, kind, id)?.rooms ?? []) if (room !== null) rooms.add(room);
  }
  if (rooms.size !== lastFocus.size || [...rooms].some((room) => !lastFocus.has(room))) lastFocus = rooms;
  return lastFocus;
}

/** The pointer's shape tells what pressing would do. */
export function cursorAt(bench: Workbench, pixel: Pixel | undefined, space: boolean): string {
  if (!pixel) return "";
  if (space) return "grab";
  if (bench.tool.kind !== "select") return "crosshair";
  const own = benchOf(bench);
  const grip = gripsOf(own).find(({ at }) => {
    const { px, py } = toPixel(bench.view, at);
    return Math.hypot(px - pixel.px, py - pixel.py) < 12;
  });
  if (grip) return grip.kind === "turn" ? "grab" : "move";
  const [hit] = picked(own.site, own.storey, { view: bench.view, pixel, reach: 12 });
  if (!hit) return "grab";
  if (hit.kind === "detectors") return "move";
  return bench.selection.some((ref) => sameRef(ref, hit)) && hit.kind !== "rooms" ? "move" : "default";
}
