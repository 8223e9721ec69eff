import { type Problem, type Said, say } from "../../check/index.ts";
import type { DetectorModel, ZoneKind, ZoneRow } from "../../detector/index.ts";
import { outlineContains } from "../../geometry/index.ts";
import { roomTitle, type SiteLookUp } from "../look-up.ts";
import { rounded, thingInSentence } from "../names.ts";
import type { Detector, Room } from "../site.ts";

/**
 * What is wrong with the detectors of a site and with the data sheets of their models.
 *
 * @param look - The site's records at hand.
 * @returns One problem for each fault; references that lead nowhere are left to `recordProblems`.
 * @example A detector at 3.2 m under a 2.7 m ceiling gives "detector-above-ceiling"
 */
export function detectorProblems(look: SiteLookUp): readonly Problem[] {
  const used = new Set(look.site.detectors.map((detector) => detector.model));
  return [
    ...look.site.detectors.flatMap((detector) => {
      const room = look.roomById.get(detector.room);
      return room ? [...placeFaults(detector, room, look), ...heightFaults(detector, room, look)] : [];
    }),
    ...look.site.models.flatMap(modelProblems),
    ...look.site.models
      .filter((model) => model.demo === true && used.has(model.id))
      .map((model): Problem => {
        const count = look.site.detectors.filter((detector) => detector.model === model.id).length;
        return { code: "demo-model-planned", values: { model: model.title, count }, records: [model.id] };
      }),
  ];
}

/**
 * What is wrong with one data sheet.
 *
 * @param model - The model as data.
 * @returns Missing zones, crossed mounting limits, rows that cannot be used.
 * @example A row with radius 0 gives "model-row-unusable"
 */
export function modelProblems(model: DetectorModel): readonly Problem[] {
  const records = [model.id];
  const problems: Problem[] = [];
  const { min, max } = model.mounting;
  if (!(min > 0 && max >= min && Number.isFinite(max)))
    problems.push({
      code: "model-mounting-limits-crossed",
      values: { model: model.title, min, max },
      records,
    });
  const walked = [...(model.zones.towards ?? []), ...(model.zones.across ?? [])];
  if (walked.length === 0)
    problems.push({ code: "model-without-zones", values: { model: model.title }, records });
  for (const [zone, rows] of Object.entries(model.zones) as [ZoneKind, readonly ZoneRow[]][]) {
    for (const [i, row] of rows.entries()) {
      const fault = rowFault(row, rows[i - 1]);
      if (fault)
        problems.push({
          code: "model-row-unusable",
          values: { model: model.title, zone: zoneNames[zone], row: i + 1, fault },
          records,
        });
    }
  }
  return problems;
}

const zoneNames: Readonly<Record<ZoneKind, Said>> = {
  towards: say`towards`,
  across: say`across`,
  seated: say`seated`,
  sound: say`sound`,
};

function rowFault(row: ZoneRow, before: ZoneRow | undefined): Said | undefined {
  if (!(row.height > 0) || !Number.isFinite(row.height)) return say`the mounting height is not above 0`;
  if (before && row.height <= before.height) return say`the mounting heights do not rise from row to row`;
  if ("radius" in row)
    return row.radius > 0 && Number.isFinite(row.radius) ? undefined : say`the radius is not above 0`;
  if (row.outline.length < 3) return say`the outline has fewer than 3 points`;
  if (
    row.outline.some(
      ([angle, radius]) => !Number.isFinite(angle) || !(radius >= 0) || !Number.isFinite(radius),
    )
  )
    return say`a point of the outline is not a number`;
  if (row.outline.some(([angle], i) => i > 0 && angle <= (row.outline[i - 1]?.[0] ?? 0)))
    return say`the angles of the outline do not rise from point to point`;
  return row.outline.some(([, radius]) => radius > 0) ? undefined : say`the outline has no reach anywhere`;
}

function placeFaults(detector: Detector, room: Room, look: SiteLookUp): Problem[] {
  const owner = { room: room.id, records: [detector.id] };
  const { tag, at } = detector;
  if (!at.every(Number.isFinite))
    return [{ code: "number-missing", values: { what: say`Detector ${tag}`, field: say`place` }, ...owner }];
  const here = { ...owner, at: [at[0], at[1]] as const };
  const problems: Problem[] = [];
  if (!outlineContains(room.outline, at) || room.holes.some((hole) => outlineContains(hole, at))) {
    problems.push({ code: "detector-outside-room", values: { tag, room: roomTitle(room) }, ...here });
  }
  if (room.noDevices.some((area) => area.length > 2 && outlineContains(area, at))) {
    problems.push({ code: "detector-where-none-may-be", values: { tag, room: roomTitle(room) }, ...here });
  }
  const around = look
    .obstaclesOf(room.id)
    .find(
      ({ base, top, footprint }) =>
        base < detector.height &&
        detector.height < top &&
        footprint.length > 2 &&
        outlineContains(footprint, at),
    );
  if (around)
    problems.push({
      code: "detector-in-obstacle",
      values: { tag, obstacle: thingInSentence(around) },
      ...here,
    });
  return problems;
}

function heightFaults(detector: Detector, room: Room, look: SiteLookUp): Problem[] {
  const owner = { room: room.id, records: [detector.id] };
  const values = { tag: detector.tag, height: rounded(detector.height, 2) };
  if (!(detector.height > 0) || !Number.isFinite(detector.height))
    return [{ code: "detector-height-missing", values, ...owner }];
  const problems: Problem[] = [];
  if (detector.height > room.ceilingHeight + 1e-6) {
    problems.push({
      code: "detector-above-ceiling",
      values: { ...values, room: roomTitle(room), ceiling: rounded(room.ceilingHeight, 2) },
      ...owner,
    });
  }
  const model = look.modelById.get(detector.model);
  if (!model) return problems;
  const { min, max } = model.mounting;
  if (detector.height < min - 1e-6 || detector.height > max + 1e-6) {
    problems.push({ code: "detector-outside-mounting-limits", values: { ...values, min, max }, ...owner });
  } else {
    const tops = Object.values(model.zones).map((rows) => Math.max(...rows.map((row) => row.height)));
    const top = Math.min(...tops);
    if (tops.length > 0 && detector.height > top + 1e-6)
      problems.push({ code: "detector-above-top-row", values: { ...values, top }, ...owner });
  }
  return problems;
}
