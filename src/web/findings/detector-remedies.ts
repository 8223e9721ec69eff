import { lookUp, maskAgainstSource, type ProblemCode } from "#engine";
import { stepsForTags } from "../place/take-layout.ts";
import { nearestInside, roomAt } from "./inside-room.ts";
import { type RemediesOf, recordIn, removing, setting } from "./remedy.ts";

/** New tags for all but the first of the detectors that share one. */
export const doubledTags: RemediesOf = (finding, site) => [
  { do: "edit", word: "findings.remedy.new-tags", steps: stepsForTags(site, finding.records.slice(1)) },
];

const moveInside: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  const room = site.rooms.find(({ id }) => id === detector?.room);
  if (detector === undefined || room === undefined) return [];
  const at = nearestInside(room, detector.at, site.defaults.clearances.wall);
  return [
    at && setting("findings.remedy.move-inside", { kind: "detectors", id: detector.id, fields: { at } }),
  ];
};

/** To the room it stands in; it goes on switching the other rooms it switched. */
const assign: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  if (detector === undefined) return [];
  const storey = site.rooms.find(({ id }) => id === detector.room)?.storey;
  const room = roomAt(site, storey, detector.at);
  if (room === undefined || room.id === detector.room) return [];
  const there = new Set(site.rooms.map(({ id }) => id));
  const others = detector.controls.filter((id) => id !== detector.room && id !== room.id && there.has(id));
  const fields = { room: room.id, controls: [room.id, ...others] };
  return [setting("findings.remedy.to-room", { kind: "detectors", id: detector.id, fields })];
};

const toCeiling: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  const room = site.rooms.find(({ id }) => id === detector?.room);
  if (detector === undefined || room === undefined || !(room.ceilingHeight > 0)) return [];
  const fields = { height: room.ceilingHeight };
  return [setting("findings.remedy.to-ceiling", { kind: "detectors", id: detector.id, fields })];
};

/** To the nearest height that data sheet and ceiling both allow. */
const toLimits: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  const room = site.rooms.find(({ id }) => id === detector?.room);
  const limits = site.models.find(({ id }) => id === detector?.model)?.mounting;
  if (detector === undefined || room === undefined || limits === undefined) return [];
  if (limits.min > room.ceilingHeight + 1e-9) return [];
  const height = Math.min(Math.max(detector.height, limits.min), limits.max, room.ceilingHeight);
  return [setting("findings.remedy.to-limits", { kind: "detectors", id: detector.id, fields: { height } })];
};

/** A mask over a source, as the lens sees it; masks for passers-by beyond a door are made in the detector's own eye. */
const maskSource: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  const source = recordIn("interference", finding, site);
  const mask = detector && source && maskAgainstSource(lookUp(site), detector, source);
  if (mask === undefined) return [];
  const fields = { masks: [...detector!.masks, mask] };
  return [setting("findings.remedy.mask", { kind: "detectors", id: detector!.id, fields })];
};

export const detectorRemedies: Readonly<Partial<Record<ProblemCode, RemediesOf>>> = {
  "detector-outside-room": (finding, site) => [...moveInside(finding, site), ...assign(finding, site)],
  "detector-in-deleted-room": (finding, site) => {
    const detector = recordIn("detectors", finding, site);
    return [
      ...assign(finding, site),
      detector && removing("findings.remedy.delete", "detectors", detector.id),
    ];
  },
  "controls-deleted-room": (finding, site) => {
    const detector = recordIn("detectors", finding, site);
    if (detector === undefined) return [];
    const there = detector.controls.filter((id) => site.rooms.some((room) => room.id === id));
    const controls = there.length > 0 ? there : [detector.room];
    return [
      setting("findings.remedy.off-list", { kind: "detectors", id: detector.id, fields: { controls } }),
    ];
  },
  "source-in-view": maskSource,
  "detector-above-ceiling": toCeiling,
  "detector-height-missing": toCeiling,
  "detector-outside-mounting-limits": toLimits,
};
