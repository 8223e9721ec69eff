import { type ProblemCode, radiansOf, wholeTurn } from "#engine";
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

/** Half the sector that a point source is masked with: an eighth of a turn in all would hide people as well. */
const maskHalfWidth = radiansOf(6);

/** A mask over a source, as the lens sees it; masks for passers-by beyond a door are drawn in the detector's own eye. */
const maskSource: RemediesOf = (finding, site) => {
  const detector = recordIn("detectors", finding, site);
  const source = recordIn("interference", finding, site);
  if (detector === undefined || source === undefined) return [];
  const ends = [source.at, source.to ?? source.at].map(([x, y]) => {
    const [dx, dy] = [x - detector.at[0], y - detector.at[1]];
    return {
      azimuth: Math.atan2(dy, dx) - detector.turn,
      offNadir: Math.atan2(Math.hypot(dx, dy), detector.height - source.height),
    };
  });
  const [first, second] = [ends[0]!, ends[1]!];
  // The short way round from one end of a line source to the other.
  const across = Math.atan2(
    Math.sin(second.azimuth - first.azimuth),
    Math.cos(second.azimuth - first.azimuth),
  );
  const start = across < 0 ? first.azimuth + across : first.azimuth;
  const mask = {
    from: wholeTurn(start - maskHalfWidth),
    to: wholeTurn(start + Math.abs(across) + maskHalfWidth),
    inner: Math.max(0, Math.min(first.offNadir, second.offNadir) - maskHalfWidth),
    outer: Math.min(Math.PI / 2, Math.max(first.offNadir, second.offNadir) + maskHalfWidth),
  };
  const fields = { masks: [...detector.masks, mask] };
  return [setting("findings.remedy.mask", { kind: "detectors", id: detector.id, fields })];
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
