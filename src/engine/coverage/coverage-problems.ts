import { type Check, english, joined, type Problem, type Said, say, type Words } from "../check/index.ts";
import { seenReliably } from "../detector/index.ts";
import { poleOf } from "../geometry/index.ts";
import {
  anInterference,
  anyDwellPlace,
  dwellKindNames,
  openingInSentence,
  roomInSentence,
  roomTitle,
  rounded,
} from "../site/index.ts";
import type { Evidence } from "./evidence.ts";
import { plainPoint } from "./prepared-room.ts";
import type { DarkWalk, Gap, GapCause } from "./results.ts";

/**
 * What is to be mended in a room's coverage, in sentences for the electrician.
 *
 * @param evidence - What was calculated, with the checks made from it.
 * @returns One problem for each gap that is not tolerated, each door with too long a walk, each room spilled into, each source in view or too near.
 * @source COMMON-PRACTICE
 * @example A room without detector gives "no-detector" and no list of gaps
 */
export function coverageProblems(
  evidence: Evidence & { readonly checks: readonly Check[] },
): readonly Problem[] {
  const { prepared, counted } = evidence;
  const { demand, room } = prepared;
  const asked = demand.asked.walk || demand.asked.hold || demand.asked.catch;
  const here = { room: room.id, records: [room.id] };
  const title = roomTitle(room);
  const warm = room.highestTemperature !== undefined && !seenReliably(room.highestTemperature);
  const warmth: Problem[] = warm
    ? [
        {
          code: "body-heat-weak",
          values: { room: title, temperature: room.highestTemperature as number },
          ...here,
        },
      ]
    : [];
  if (counted.length === 0) {
    if (!asked || !prepared.standing) return warmth;
    return [...warmth, { code: "no-detector", values: { room: title }, ...here }];
  }
  return [
    ...warmth,
    ...gapProblems(evidence),
    ...bays(evidence),
    ...(demand.asked.catch ? walkProblems(evidence) : []),
    ...stairProblems(evidence),
    ...spillProblems(evidence),
    ...sourceProblems(evidence),
  ];
}

/** A cause in words. @example { kind: "masked", device: "d1" } with tag B1: "masked on the lens of B1" */
export function causeInWords(cause: GapCause, tagOf: (device: string) => string): Said {
  switch (cause.kind) {
    case "beyond-reach":
      return say`beyond the reach of every detector`;
    case "hidden":
      return say`hidden behind ${solidInWords(cause.behind)}`;
    case "masked":
      return say`masked on the lens of ${tagOf(cause.device)}`;
    case "mounting-limits":
      return say`${tagOf(cause.device)} hangs outside its mounting limits`;
    case "too-warm":
      return say`the room gets too warm for body heat to be seen`;
    case "no-device":
      return say`no detector switches this room`;
  }
}

function solidInWords({ kind, name }: Extract<GapCause, { kind: "hidden" }>["behind"]): Words {
  switch (kind) {
    case "wall":
      return say`a wall of room ${name}`;
    case "door-leaf":
      return say`the open leaf of ${name}`;
    case "obstacle":
    case "opening":
      return name;
  }
}

function gapProblems({
  prepared,
  gaps,
  checks,
}: Evidence & { readonly checks: readonly Check[] }): Problem[] {
  const { look, room } = prepared;
  const title = roomTitle(room);
  const tagOf = (id: string): string => look.detectorById.get(id)?.tag ?? id;
  const problems = gaps
    .filter((gap) => !gap.tolerated)
    .map((gap): Problem => {
      const values = { room: title, area: areaText(gap), cause: causeInWords(gap.cause, tagOf) };
      const common = {
        room: room.id,
        at: plainPoint(gap.at),
        evidence: checks.filter((check) =>
          english(check.what).startsWith(gap.demand === "walk" ? "Floor" : "Places"),
        ),
      };
      if (gap.demand === "walk")
        return { code: "walk-gap", values, records: deviceOfCause(gap.cause), ...common };
      const place = look.dwellPlacesOf(room.id).find(({ id }) => id === gap.dwellPlace);
      return {
        code: "hold-gap",
        values: { ...values, kind: place ? dwellKindNames[place.kind] : anyDwellPlace },
        records: [gap.dwellPlace ?? room.id, ...deviceOfCause(gap.cause)],
        ...common,
      };
    });
  const small = gaps.filter((gap) => gap.tolerated);
  if (small.length === 0) return problems;
  const area = rounded(
    small.reduce((sum, gap) => sum + gap.area, 0),
    3,
  );
  return [
    ...problems,
    {
      code: "gaps-tolerated",
      values: { room: title, count: small.length, area },
      room: room.id,
      records: [room.id],
    },
  ];
}

function bays({ prepared, counted, gaps }: Evidence): Problem[] {
  const { demand, look, room } = prepared;
  if (
    demand.bays.length === 0 ||
    counted.some((detector) => (look.modelById.get(detector.model)?.zones.sound ?? []).length > 0)
  )
    return [];
  const places = new Set(demand.dwell.filter((place) => place.inBay).map((place) => place.id));
  const open = gaps.some(
    (gap) =>
      !gap.tolerated &&
      (gap.dwellPlace !== undefined ? places.has(gap.dwellPlace) : gap.cause.kind === "hidden"),
  );
  return open
    ? [{ code: "bays-need-sound", values: { room: roomTitle(room) }, room: room.id, records: [room.id] }]
    : [];
}

function walkProblems({
  prepared,
  darkWalks,
  checks,
}: Evidence & { readonly checks: readonly Check[] }): Problem[] {
  const { look, room } = prepared;
  const limit = look.site.defaults.darkWalkLimit;
  return darkWalks
    .filter((walk) => walk.metres > limit)
    .map((walk): Problem => {
      const opening = openingName(walk, prepared);
      const common = {
        room: room.id,
        records: [walk.opening],
        at: plainPoint(walk.litAt ?? walk.toward.at),
        evidence: checks.filter(
          (check) => english(check.what).startsWith("Walk in the dark") && check.actual === walk.metres,
        ),
      };
      const values = { opening, room: roomTitle(room), metres: rounded(walk.metres, 1) };
      return walk.lit
        ? { code: "dark-walk-too-long", values: { ...values, limit }, ...common }
        : { code: "dark-walk-unlit", values, ...common };
    });
}

function stairProblems({
  prepared,
  stairs,
  checks,
}: Evidence & { readonly checks: readonly Check[] }): Problem[] {
  const { look, room } = prepared;
  const limit = look.site.defaults.stairLead;
  return stairs
    .filter((stair) => stair.lead < limit)
    .map((stair) => ({
      code: "stair-lit-too-late",
      values: {
        opening: openingName(stair, prepared),
        room: roomTitle(room),
        moment: !Number.isFinite(stair.lead)
          ? say`not yet at`
          : stair.lead < 0
            ? say`${rounded(-stair.lead, 1)} m after`
            : say`${rounded(stair.lead, 1)} m before`,
        limit,
      },
      room: room.id,
      records: [stair.opening, stair.flight],
      evidence: checks.filter(
        (check) =>
          english(check.what).startsWith("Light before the first step") &&
          (check.actual === stair.lead || check.actual === undefined),
      ),
    }));
}

function spillProblems({ prepared, spill }: Evidence): Problem[] {
  const { look, room } = prepared;
  // A passer-by needs floor to stand on: less than a body's footprint is not worth a word.
  const body = Math.PI * look.site.defaults.bodyRadius ** 2;
  const seen = spill.filter(({ area }) => area >= body).sort((a, b) => b.area - a.area);
  const [largest] = seen;
  if (largest === undefined) return [];
  const devices = [...new Set(seen.flatMap((one) => one.devices))].sort();
  const at = largest.region[0] && poleOf(largest.region[0]).at;
  return [
    {
      code: "spill-into-room",
      values: {
        tags: devices.map((id) => look.detectorById.get(id)?.tag ?? id).join(", "),
        room: roomTitle(room),
        areas: joined(
          seen.map((one) =>
            one.room === null
              ? say`${rounded(one.area, 1)} m² of the outside`
              : say`${rounded(one.area, 1)} m² of ${roomInSentence(look.roomById.get(one.room))}`,
          ),
          ", ",
        ),
      },
      room: room.id,
      records: devices,
      ...(at ? { at: plainPoint(at) } : {}),
    },
  ];
}

function sourceProblems({ prepared, interference, broken, hung }: Evidence): Problem[] {
  const { look, room } = prepared;
  const title = roomTitle(room);
  const tagOf = (id: string): string => hung.find((detector) => detector.id === id)?.tag ?? id;
  const inView = interference.flatMap(({ source, device, distance }): Problem[] => {
    const record = look.site.interference.find(({ id }) => id === source);
    if (!record) return [];
    const values = {
      tag: tagOf(device),
      kind: anInterference[record.kind],
      distance: rounded(distance, 1),
      room: roomInSentence(look.roomById.get(record.room)),
    };
    return [
      { code: "source-in-view", values, room: room.id, records: [device, source], at: plainPoint(record.at) },
    ];
  });
  const tooNear = broken.map(
    ({ source, device, distance, limit }): Problem => ({
      code: "source-too-near",
      values: {
        tag: device.tag,
        kind: anInterference[source.kind],
        distance: rounded(distance, 2),
        limit,
        room: title,
      },
      room: room.id,
      records: [device.id, source.id],
      at: plainPoint(device.at),
    }),
  );
  return [...inView, ...tooNear];
}

const openingName = ({ opening }: Pick<DarkWalk, "opening">, { look }: Evidence["prepared"]): Words => {
  const record = look.openingById.get(opening);
  return record ? openingInSentence(record, look) : opening;
};

const deviceOfCause = (cause: GapCause): string[] =>
  cause.kind === "masked" || cause.kind === "mounting-limits"
    ? [cause.device]
    : cause.kind === "hidden"
      ? [cause.behind.id]
      : [];

/** Two digits where there is something to read, three where there would be none. */
const areaText = ({ area }: Gap): Said | number =>
  area < 5e-4 ? say`less than 0.001` : rounded(area, area < 0.1 ? 3 : 2);
