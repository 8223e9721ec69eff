import { type CountedDevice, deviceOf } from "../coverage/index.ts";
import { distanceBetween, nearestOnSegment, type Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { lookUp, type Site, type SiteLookUp } from "../site/index.ts";
import type { FoundKind, ReachObservation } from "./found-reach.ts";
import type { Station } from "./station.ts";
import type { StationReading } from "./verdict.ts";
import { BY_REACH, reachTo } from "./walk-context.ts";

/** One who is first seen within an onset and this of the start was seen at once: the reach may be longer. [m] */
const AT_ONCE: Metres = 0.1;

/**
 * What readings say of each detector's reach.
 *
 * Walking towards: first seen at its distance, or at least so far where it was within an onset of coming into sight; never seen: not at the nearest
 * place of the walk. Everywhere else: seen, or not seen, at the nearest place of the path. A place that several devices see says of one of them only that it was missed.
 *
 * @param site - The site that was tested. @param stations - Planned stations. @param readings - All readings of the room.
 * @returns Observations of readings whose detectors still hang as they did; doors, passers-by and places behind obstacles say nothing of reach.
 * @source REACH-PROBIT
 * @example Planned 3.4 m, declared 4 m, walk from 4.4 m, first seen at 3.1 m: { first-seen, 3.1 of 4 m }
 */
export function observationsOf(
  site: Site,
  stations: readonly Station[],
  readings: readonly StationReading[],
): readonly ReachObservation[] {
  const look = lookUp(site);
  return stations.flatMap((station) => {
    const kind = KIND_OF[station.kind];
    if (!kind || station.heard) return [];
    return readings
      .filter((reading) => reading.station === station.id && reading.basis === station.basis)
      .flatMap((reading) => observed(look, { station, kind, reading }));
  });
}

/** Kind of zone that a station tells of. Into a corner one walks away from the detector: its radial reach. */
const KIND_OF: Readonly<Partial<Record<Station["kind"], FoundKind>>> = {
  towards: "towards",
  across: "across",
  corner: "towards",
  still: "seated",
};

interface Observed {
  readonly station: Station;
  readonly kind: FoundKind;
  readonly reading: StationReading;
}

function observed(look: SiteLookUp, question: Observed): readonly ReachObservation[] {
  const { station, reading } = question;
  const devices = station.devices.flatMap((id) => {
    const record = look.detectorById.get(id);
    const model = record && look.modelById.get(record.model);
    return record && model ? [{ ...deviceOf(record, model), room: record.room }] : [];
  });
  // Whoever of several saw it, nobody can say.
  if (reading.seen && station.devices.length > 1) return [];
  return devices.flatMap((device) => observationOf(look, { ...question, device }) ?? []);
}

function observationOf(
  look: SiteLookUp,
  { station, kind, reading, device }: Observed & { readonly device: CountedDevice },
): ReachObservation | undefined {
  const room = look.roomById.get(station.room);
  const nearest = nearestOn(station.path, device.at);
  if (!room) return undefined;
  const sightHeight = station.kind === "still" ? sightOf(look, station.subject.id) : undefined;
  const place = { device, room, kind, at: nearest, ...(sightHeight === undefined ? {} : { sightHeight }) };
  const declared = reachTo(look, { ...place, purpose: "declared" });
  const common = { device: device.id, kind, declared };
  const near = distanceBetween(device.at, nearest);
  if (!reading.seen) return { ...common, outcome: "not-seen", distance: near };
  const first = reading.distance;
  if (station.kind !== "towards" || first === undefined || !Number.isFinite(first))
    return { ...common, outcome: "seen", distance: near };
  const start = distanceBetween(device.at, station.path[0] as Point);
  const planned = reachTo(look, { ...place, purpose: "coverage" });
  const onset = device.model.onset ?? look.site.defaults.onset;
  const isSolid = station.planned !== undefined && planned - station.planned > BY_REACH;
  // Behind a solid one comes into sight at the boundary only; from there on it is the detector that is slow or quick.
  const appears = isSolid ? Math.min(start, station.planned as Metres) : start;
  const isAtOnce = first > appears - onset - AT_ONCE;
  return { ...common, outcome: isAtOnce ? "seen" : "first-seen", distance: Math.min(first, start) };
}

const sightOf = (look: SiteLookUp, dwell: string): Metres | undefined => {
  const place = look.site.dwellPlaces.find((one) => one.id === dwell);
  return place && look.site.defaults.sightHeights[place.kind];
};

/** The place of a path nearest to a detector. */
const nearestOn = (path: readonly Point[], eye: Point): Point =>
  path
    .slice(1)
    .map((b, i) => nearestOnSegment(eye, [path[i] as Point, b]))
    .reduce(
      (best, one) => (distanceBetween(one, eye) < distanceBetween(best, eye) ? one : best),
      path[0] as Point,
    );
