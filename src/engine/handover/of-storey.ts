import type { Finding } from "../review/index.ts";
import type { Opening, Site } from "../site/index.ts";
import type { StepSubject } from "../site-test/index.ts";
import type { Handover, WiringRecord } from "./handover.ts";

/**
 * What of a hand-over belongs to one storey.
 *
 * Nothing is calculated anew: a room is seen, a circuit loaded and a contact judged as in the whole building. A switched group, its circuits, tests and findings
 * belong to every storey on which one of its detectors hangs.
 *
 * @param handover - Of the whole job. @param storey - Id of the storey.
 * @returns The same record with the rooms, devices, tests and findings of that storey; what speaks of the job as a whole stays.
 * @source COMMON-PRACTICE
 * @example A storey without detectors: its rooms, no settings, the tests of the job as a whole
 */
export function handoverOfStorey(handover: Handover, storey: string): Handover {
  const site = siteOfStorey(handover.site, storey);
  const rooms = new Set(site.rooms.map(({ id }) => id));
  const detectors = new Set(site.detectors.map(({ id }) => id));
  const groups = handover.order.groups.filter((group) => group.detectors.some(({ id }) => detectors.has(id)));
  const circuits = new Set(groups.flatMap((group) => group.circuits));
  const here = idsOf(site);
  const elsewhere = new Set([...idsOf(handover.site)].filter((id) => !here.has(id)));
  if (handover.wiring.kind === "built")
    for (const { id } of handover.wiring.found.circuits) if (!circuits.has(id)) elsewhere.add(id);
  const belongs = ({ room, records }: Finding): boolean =>
    room === undefined
      ? records.length === 0 || records.some((id) => !elsewhere.has(id))
      : rooms.has(room) || records.some((id) => detectors.has(id));
  const groupIds = new Set(groups.map(({ id }) => id));
  const isHere = ({ kind, id }: StepSubject, of: readonly string[]): boolean =>
    kind === "room" || kind === "detector" || kind === "luminaire"
      ? here.has(id)
      : of.length === 0 || of.some((group) => groupIds.has(group));
  return {
    ...handover,
    site,
    rooms: handover.rooms.filter(({ room }) => rooms.has(room.id)),
    zones: handover.zones.filter(({ device }) => detectors.has(device)),
    settings: {
      devices: handover.settings.devices.filter(({ context }) => detectors.has(context.device)),
      rooms: handover.settings.rooms.filter(({ room }) => rooms.has(room)),
      findings: handover.settings.findings.filter(belongs),
    },
    wiring: wiringOfCircuits(handover.wiring, circuits),
    findings: handover.findings.filter(belongs),
    order: {
      groups,
      steps: handover.order.steps.filter((step) => isHere(step.about, step.groups)),
    },
    tests: handover.tests.filter(({ state: { step } }) => isHere(step.about, step.groups)),
    // What hung here once and is gone from the plan belongs to no other storey.
    swaps: handover.swaps.filter(({ detector }) => !elsewhere.has(detector)),
    before: handover.before.filter(({ about }) => !elsewhere.has(about.id)),
    care: handover.care && {
      ...handover.care,
      visits: handover.care.visits.map((visit) => ({
        ...visit,
        states: visit.states.filter(({ point }) => !elsewhere.has(point.about.id)),
      })),
    },
  };
}

/** The circuits on record that reach the storey; what was built of all of them stays whole. */
const wiringOfCircuits = (wiring: WiringRecord, circuits: ReadonlySet<string>): WiringRecord =>
  wiring.kind === "none"
    ? wiring
    : {
        ...wiring,
        found: { ...wiring.found, circuits: wiring.found.circuits.filter(({ id }) => circuits.has(id)) },
      };

/** A site with one storey: its rooms and what is in them. A door to another storey leads outside of it. */
function siteOfStorey(site: Site, storey: string): Site {
  const rooms = site.rooms.filter((room) => room.storey === storey);
  const ids = new Set(rooms.map(({ id }) => id));
  const inside = <Thing extends { readonly room: string }>(things: readonly Thing[]): readonly Thing[] =>
    things.filter(({ room }) => ids.has(room));
  const opensHere = (opening: Opening): readonly Opening[] => {
    const [first, second] = opening.rooms;
    if (!ids.has(first)) return [];
    return [second === null || ids.has(second) ? opening : { ...opening, rooms: [first, null] }];
  };
  return {
    ...site,
    storeys: site.storeys.filter(({ id }) => id === storey),
    rooms,
    openings: site.openings.flatMap(opensHere),
    obstacles: inside(site.obstacles),
    dwellPlaces: inside(site.dwellPlaces),
    interference: inside(site.interference),
    luminaires: inside(site.luminaires),
    switches: inside(site.switches),
    ceilingThings: inside(site.ceilingThings),
    floorPieces: inside(site.floorPieces),
    detectors: inside(site.detectors),
  };
}

const idsOf = (site: Site): ReadonlySet<string> =>
  new Set(
    [
      ...site.storeys,
      ...site.rooms,
      ...site.openings,
      ...site.obstacles,
      ...site.dwellPlaces,
      ...site.interference,
      ...site.luminaires,
      ...site.switches,
      ...site.ceilingThings,
      ...site.floorPieces,
      ...site.detectors,
    ].map(({ id }) => id),
  );
