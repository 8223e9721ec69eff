import {
  detectorLike,
  doorLike,
  dwellLike,
  luminaireLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../../../test/engine/records.ts";
import type { DetectorModel } from "../../../detector/index.ts";
import type { Point } from "../../../geometry/index.ts";
import type { SettingValues } from "../../../settings/index.ts";
import type { RoomUse, Site, Switch } from "../../../site/index.ts";
import { type FoundInstallation, wiringOfSite } from "../../../wiring/index.ts";
import type { FaultPlace } from "../fault-place.ts";

/** Gives the next number, 0 ≤ x < 1. */
export type Draw = () => number;

/** A room as somebody planned it, with a corridor before its door. */
export interface TrialPlan {
  readonly site: Site;
  readonly settings: Readonly<Record<string, SettingValues>>;
  readonly found: FoundInstallation;
  /** Inside of the room: width and depth. [m] */
  readonly size: readonly [number, number];
}

export const ROOM = "room";
export const CORRIDOR = "corridor";
export const DOOR = "door";
/** A heater on the plan that never runs. */
export const IDLE = "idle";
/** The corridor's own detector. */
export const NEIGHBOUR = "c1";

export const between = (draw: Draw, low: number, high: number): number => low + (high - low) * draw();
export const chance = (draw: Draw, share: number): boolean => draw() < share;
export const oneOf = <Kind>(draw: Draw, list: readonly Kind[]): Kind =>
  list[Math.floor(draw() * list.length)] as Kind;

/** What the fault finder is given of a plan. */
export const placeOf = (plan: TrialPlan): FaultPlace => ({
  site: plan.site,
  room: ROOM,
  settings: plan.settings,
  wiring: wiringOfSite(plan.site, plan.found).model,
});

/** The room's own detectors. */
export const ownDetectors = (site: Site): Site["detectors"] =>
  site.detectors.filter(({ room }) => room === ROOM);

const uses: readonly RoomUse[] = ["sitting", "sitting", "moving", "changing", "plant", "other"];

/**
 * A random plan: rectangular room, one door, one or two detectors, places, things that stand about, and harmless likenesses
 * of every fault (a glow lamp that does no harm, a heater that nobody looks at, …).
 */
export function randomPlan(draw: Draw): TrialPlan {
  const size = [between(draw, 4, 9), between(draw, 3.6, 7)] as const;
  const [width, depth] = size;
  const height = between(draw, 2.5, 3.1);
  const use = oneOf(draw, uses);
  const model = randomModel(draw);
  const doorAt = between(draw, 0.3, width - 1.2);
  const count = width > 6.5 ? 2 : 1;
  const own = Array.from({ length: count }, (_, i) =>
    detectorLike({
      id: `d${i + 1}`,
      room: ROOM,
      at: [(width * (i + 0.5)) / count + between(draw, -0.4, 0.4), depth / 2 + between(draw, -0.4, 0.4)],
      height,
      circuit: "Lighting 1",
      masks: chance(draw, 0.15) ? [{ from: 4.2, to: 5.2, inner: 1.15, outer: Math.PI / 2 }] : [],
      ...(chance(draw, 0.12)
        ? {
            suppressors: [{ across: chance(draw, 0.5) ? "contact" : "load", capacitance: 1e-7 }] as const,
            baseLoad: "yes" as const,
          }
        : {}),
    }),
  );
  const reach = seatedRadius(model);
  const places = Array.from({ length: 1 + Math.floor(draw() * 3) }, (_, i): Point => {
    const detector = own[i % count]!;
    const angle = between(draw, 0, 2 * Math.PI);
    const away = between(draw, 0.8, Math.max(1, reach * 0.92));
    return [
      Math.min(width - 0.5, Math.max(0.5, detector.at[0] + away * Math.cos(angle))),
      Math.min(depth - 0.5, Math.max(0.5, detector.at[1] + away * Math.sin(angle))),
    ];
  });
  const site = siteLike({
    rooms: [
      roomLike({
        id: ROOM,
        outline: [
          [0, 0],
          [width, 0],
          [width, depth],
          [0, depth],
        ],
        use,
        ceilingHeight: height,
        ...(chance(draw, 0.1) ? { highestTemperature: 26 } : {}),
      }),
      roomLike({
        id: CORRIDOR,
        outline: [
          [-2, -2.2],
          [width + 2, -2.2],
          [width + 2, -0.2],
          [-2, -0.2],
        ],
        use: "passing",
        ceilingHeight: height,
      }),
    ],
    openings: [
      doorLike({
        id: DOOR,
        rooms: [ROOM, CORRIDOR],
        from: [doorAt, 0],
        to: [doorAt + 0.9, 0],
        opensInto: ROOM,
      }),
    ],
    obstacles: chance(draw, 0.5)
      ? [
          obstacleLike({
            id: "low",
            room: ROOM,
            footprint: cornerBox(size, 1.2, 0.5),
            top: between(draw, 0.7, 1.0),
          }),
        ]
      : [],
    dwellPlaces: places.map((at, i) => dwellLike({ id: `place${i + 1}`, room: ROOM, at, kind: "desk" })),
    // A heater right over the edge of what is seen, or behind the lens: harmless.
    interference: [
      ...(chance(draw, 0.25)
        ? [
            sourceLike({
              id: "far",
              room: CORRIDOR,
              at: [width + 1.7, -1.2],
              kind: "air-outlet",
              height: 2.4,
            }),
          ]
        : []),
      ...(chance(draw, 0.15)
        ? [
            sourceLike({
              id: IDLE,
              room: ROOM,
              at: [between(draw, 0.5, width - 0.5), depth - 0.2],
              kind: "heater",
              height: between(draw, 0.5, 1.8),
            }),
          ]
        : []),
    ],
    luminaires: Array.from({ length: 4 + Math.floor(draw() * 8) }, (_, i) =>
      luminaireLike({
        id: `l${i + 1}`,
        room: ROOM,
        at: [(width * (i + 0.5)) / 12, depth * 0.75],
        height: height - 0.05,
        power: 30,
        drivers: 1,
        circuit: "Lighting 1",
        load: "led",
        inrush: { peak: chance(draw, 0.15) ? 45 : 12, width: 0.00018 },
      }),
    ),
    models: [model],
    switches: randomSwitches(draw, [doorAt + 1.1, 0]),
    detectors: [
      ...own,
      detectorLike({ id: NEIGHBOUR, room: CORRIDOR, at: [width / 2, -1.2], height, circuit: "Lighting 1" }),
    ],
  });
  const daylight = chance(draw, 0.5);
  const setting = randomSettings(draw, { use, daylight, button: site.switches.length > 0 });
  return {
    site,
    size,
    settings: Object.fromEntries(site.detectors.map(({ id }) => [id, setting])),
    found: {
      boards: [{ id: "board", name: "Board", system: "TN-S", voltage: 230, readings: "assumed" }],
      circuits: [
        {
          id: "lighting",
          board: "board",
          name: "Lighting 1",
          breaker: "B",
          rating: 10,
          rcd: "yes",
          residualCurrent: 0.03,
          protectiveConductor: "yes",
          sharedNeutral: chance(draw, 0.3) ? "unknown" : "no",
        },
      ],
    },
  };
}

/** A box in the corner of the room that is farthest from the door's wall. */
export const cornerBox = (
  [width, depth]: readonly [number, number],
  long: number,
  deep: number,
): readonly Point[] => [
  [width - long, depth - deep],
  [width, depth - deep],
  [width, depth],
  [width - long, depth],
];

export const seatedRadius = (model: DetectorModel): number => {
  const row = model.zones.seated?.[0];
  return row && "radius" in row ? row.radius : 0;
};

function randomModel(draw: Draw): DetectorModel {
  const towards = between(draw, 4, 5.5);
  const rows = (radius: number) => [
    { height: 2.5, radius },
    { height: 3.2, radius },
  ];
  return roundModel({
    mounting: { min: 1.8, max: 4 },
    zones: {
      towards: rows(towards),
      across: rows(towards * 1.4),
      seated: rows(towards * between(draw, 0.62, 0.75)),
      sound: rows(6),
    },
    response: between(draw, 0.2, 0.5),
    contact: {
      kind: "relay",
      rated: { led: 4, resistive: 10 },
      makingPeak: 240,
      makingWidth: 0.0002,
      joined: 4,
    },
    inputs: { pushButton: "line", holdOff: 0.0005, extension: true },
    terminals: ["line-in", "neutral", "switched-line", "push-button"],
  });
}

function randomSwitches(draw: Draw, at: Point): readonly Switch[] {
  if (!chance(draw, 0.7)) return [];
  const parallel = chance(draw, 0.1);
  return [
    {
      id: "s1",
      room: ROOM,
      kind: parallel ? "switch" : "push-button",
      at,
      height: 1.05,
      circuit: "Lighting 1",
      planned: parallel ? "parallel" : "button",
      ...(parallel ? {} : { detectors: ["d1"] }),
      ...(chance(draw, 0.2)
        ? { glowLamp: { current: 0.001, ownNeutral: chance(draw, 0.7) ? "yes" : "unknown" } as const }
        : {}),
    },
  ];
}

function randomSettings(
  draw: Draw,
  about: { readonly use: RoomUse; readonly daylight: boolean; readonly button: boolean },
): SettingValues {
  return {
    mode: about.button && about.use === "sitting" && chance(draw, 0.25) ? "semi-automatic" : "automatic",
    button: chance(draw, 0.6) ? "on-and-off" : "on-only",
    offDelay: oneOf(draw, [300, 600, 600, 900]),
    output: "switch",
    impulse: "none",
    threshold: about.daylight ? 300 : "off",
    sensitivity: about.use === "sitting" ? "high" : "medium",
    soundSensitivity: chance(draw, 0.2) ? "medium" : "off",
    mask: "none",
    lock: "open",
    testMode: "off",
    groupRole: "alone",
  };
}
