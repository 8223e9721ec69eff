import { obstacleLike, sourceLike } from "../../../../../test/engine/records.ts";
import { prepareRoom, spillZone, zoneInScene } from "../../../coverage/index.ts";
import { deviceOf } from "../../../coverage/watchers.ts";
import type { LensMask } from "../../../detector/index.ts";
import { contains, type Point } from "../../../geometry/index.ts";
import type { SettingValues } from "../../../settings/index.ts";
import type { Site } from "../../../site/index.ts";
import type { FaultCause } from "../names.ts";
import { type Built, scaledSite } from "./built.fixture.ts";
import { between, chance, type Draw, oneOf, ownDetectors, ROOM } from "./plan.fixture.ts";

/** Puts a fault into a room as built, and into its plan where the plan itself holds the fault. False: this room does not take it. */
export type Injection = (built: Built, draw: Draw) => boolean;

/** How often a fault stands in the plan already, so that it could have been seen there. A choice of this trial. */
const IN_PLAN = 0.5;

/** One injection for each cause. */
export const injections: Readonly<Record<FaultCause, Injection>> = {
  "source-in-view": (built, draw) => {
    const [detector] = ownDetectors(built.site);
    const away = between(draw, 0.8, 2.6);
    const angle = between(draw, 0, 2 * Math.PI);
    const at = inside(built, [
      detector!.at[0] + away * Math.cos(angle),
      detector!.at[1] + away * Math.sin(angle),
    ]);
    const source = sourceLike({
      id: "culprit",
      room: ROOM,
      at,
      kind: oneOf(draw, ["heater", "air-outlet", "machine"] as const),
      height: between(draw, 0.6, 2.0),
    });
    const add = (site: Site): Site => ({ ...site, interference: [...site.interference, source] });
    both(built, chance(draw, IN_PLAN), add);
    return true;
  },
  "passer-by-seen": (built) => {
    const prepared = prepareRoom(built.site, ROOM);
    const seen = ownDetectors(built.site).some((one) =>
      spillZone(prepared.open(), deviceOf(one, built.site.models[0]!)).some((piece) =>
        pathPast(built).some((at) => contains([piece], at)),
      ),
    );
    built.door = "open";
    return seen;
  },
  "noise-heard": (built, draw) => {
    const plan = chance(draw, 0.7);
    if (plan) planSettings(built, { soundSensitivity: "high" });
    eachOwn(built, (id) => {
      built.parameters[id] = { ...built.parameters[id]!, sound: { grace: 8 } };
    });
    if (chance(draw, IN_PLAN)) {
      const source = sourceLike({ id: "fan", room: ROOM, at: [0.1, 0.1], kind: "machine", height: 5 });
      both(built, true, (site) => ({ ...site, interference: [...site.interference, source] }));
    }
    built.noise = true;
    return true;
  },
  "delay-too-long": (built, draw) => {
    eachOwn(built, (id) => {
      built.parameters[id] = { ...built.parameters[id]!, offDelay: oneOf(draw, [3600, 7200, 14_400]) };
    });
    return true;
  },
  "delay-too-short": (built, draw) => {
    const offDelay = oneOf(draw, [45, 60, 90]);
    if (chance(draw, 0.4)) planSettings(built, { offDelay });
    eachOwn(built, (id) => {
      built.parameters[id] = { ...built.parameters[id]!, offDelay };
    });
    return true;
  },
  "contact-welded": (built, draw) => {
    if (chance(draw, 0.7)) {
      built.plan = {
        ...built.plan,
        site: {
          ...built.plan.site,
          luminaires: built.plan.site.luminaires.map((one) => ({
            ...one,
            inrush: { peak: 60, width: 0.00025 },
          })),
        },
      };
    }
    built.contact = "welded";
    return true;
  },
  "switch-in-parallel": (built, draw) => {
    if (chance(draw, 0.6)) planSwitch(built, { planned: "parallel", kind: "switch" });
    built.parallelSwitch = true;
    return true;
  },
  "output-joined-with-another": (built, draw) => {
    if (chance(draw, IN_PLAN)) {
      built.plan = {
        ...built.plan,
        site: {
          ...built.plan.site,
          detectors: built.plan.site.detectors.map((one) =>
            one.room === ROOM ? one : { ...one, controls: ["corridor", ROOM] },
          ),
        },
      };
    }
    built.strangerContact = true;
    return true;
  },
  "glow-lamp-holds-button": (built, draw) => {
    const known = chance(draw, 0.7);
    planSwitch(built, {
      planned: "button",
      kind: "push-button",
      detectors: ["d1"],
      ...(known ? { glowLamp: { current: 0.001, ownNeutral: chance(draw, 0.5) ? "no" : "unknown" } } : {}),
    });
    built.glowPresses = true;
    return true;
  },
  "button-of-another-room": (built) => {
    built.strangerPresses = true;
    return true;
  },
  "place-beyond-reach": (built, draw) => {
    const corner = cornerFarthest(built);
    return movePlace(built, draw, corner);
  },
  "hidden-behind-something": (built, draw) => {
    const [detector] = ownDetectors(built.site);
    const target = chance(draw, 0.75) ? built.site.dwellPlaces[0]!.at : doorStep(built);
    const [dx, dy] = [target[0] - detector!.at[0], target[1] - detector!.at[1]];
    const away = Math.hypot(dx, dy);
    if (away < 1.4) return false;
    const middle: Point = [
      detector!.at[0] + (dx * (away - 0.75)) / away,
      detector!.at[1] + (dy * (away - 0.75)) / away,
    ];
    const [ux, uy] = [-dy / away, dx / away];
    const half = 1.1;
    const footprint: readonly Point[] = [
      [middle[0] + half * ux, middle[1] + half * uy],
      [middle[0] - half * ux, middle[1] - half * uy],
      [middle[0] - half * ux + (0.1 * dx) / away, middle[1] - half * uy + (0.1 * dy) / away],
      [middle[0] + half * ux + (0.1 * dx) / away, middle[1] + half * uy + (0.1 * dy) / away],
    ];
    const inRoom = footprint.every(
      ([x, y]) => x > 0 && y > 0 && x < built.plan.size[0] && y < built.plan.size[1],
    );
    if (!inRoom) return false;
    const screen = obstacleLike({
      id: "screen",
      room: ROOM,
      kind: "partition",
      footprint: counterClockwise(footprint),
      base: 0,
      top: between(draw, 1.9, 2.2),
    });
    both(built, chance(draw, 0.4), (site) => ({ ...site, obstacles: [...site.obstacles, screen] }));
    return true;
  },
  "mask-in-the-way": (built, draw) => {
    const [detector] = ownDetectors(built.site);
    const target = chance(draw, 0.6) ? built.site.dwellPlaces[0]!.at : doorStep(built);
    const angle = Math.atan2(target[1] - detector!.at[1], target[0] - detector!.at[0]) - detector!.turn;
    const mask: LensMask = {
      from: angle - 0.75,
      to: angle + 0.75,
      inner: between(draw, 0.1, 0.3),
      outer: Math.PI / 2,
    };
    both(built, chance(draw, IN_PLAN), (site) => ({
      ...site,
      detectors: site.detectors.map((one) =>
        one.room === ROOM ? { ...one, masks: [...one.masks, mask] } : one,
      ),
    }));
    return true;
  },
  "sensitivity-too-low": (built, draw) => {
    built.site = scaledSite(built.site, between(draw, 0.3, 0.5));
    built.lowSensitivity = true;
    if (chance(draw, 0.3)) planSettings(built, { sensitivity: "low" });
    return true;
  },
  "room-too-warm": (built, draw) => {
    const highestTemperature = between(draw, 31, 35);
    both(built, chance(draw, IN_PLAN), (site) => ({
      ...site,
      rooms: site.rooms.map((room) => (room.id === ROOM ? { ...room, highestTemperature } : room)),
    }));
    return true;
  },
  "hung-at-another-height": (built, draw) => {
    const height = between(draw, 1.85, 2.05);
    built.site = {
      ...built.site,
      detectors: built.site.detectors.map((one) => (one.room === ROOM ? { ...one, height } : one)),
    };
    return true;
  },
  "bright-enough-for-the-sensor": (built, draw) => {
    const planned = chance(draw, 0.5);
    planSettings(built, { threshold: planned ? 300 : "off", mode: "automatic" });
    eachOwn(built, (id) => {
      built.parameters[id] = {
        ...built.parameters[id]!,
        mode: "automatic",
        threshold: planned ? 300 : 60,
        brightFilter: 300,
      };
    });
    built.daylight = between(draw, 340, 700);
    return true;
  },
  "lamps-dazzle-the-sensor": (built, draw) => {
    planSettings(built, { threshold: 300, mode: "automatic" });
    eachOwn(built, (id) => {
      built.parameters[id] = {
        ...built.parameters[id]!,
        mode: "automatic",
        threshold: 300,
        compensation: "none",
        brightFilter: oneOf(draw, [20, 40, 60]),
      };
    });
    built.lampsAtSensor = between(draw, 450, 900);
    return true;
  },
  "semi-automatic": (built, draw) => {
    if (chance(draw, 0.3)) {
      planSettings(built, { mode: "semi-automatic" });
      // Planned so, but nobody told the people of the button.
      built.plan = { ...built.plan, site: { ...built.plan.site, switches: [] } };
    } else planSettings(built, { mode: "automatic" });
    eachOwn(built, (id) => {
      built.parameters[id] = { ...built.parameters[id]!, mode: "semi-automatic" };
    });
    return true;
  },
  "detector-without-supply": (built) => {
    built.supply = "absent";
    return true;
  },
  "contact-stays-open": (built) => {
    built.contact = "open";
    return true;
  },
  "lamps-without-line": (built) => {
    built.lamps = "dead";
    return true;
  },
  "supply-interrupted": (built) => {
    built.supply = "comes-and-goes";
    return true;
  },
  "lamps-start-late": (built) => {
    built.lamps = "late";
    return true;
  },
  "door-beyond-reach": (built) => {
    const [width, depth] = built.plan.size;
    const shift = (site: Site): Site => ({
      ...site,
      models: site.models.map((model) => ({
        ...model,
        zones: {
          ...model.zones,
          towards: [{ height: 2.5, radius: 2.0 }],
          across: [{ height: 2.5, radius: 2.6 }],
          seated: [{ height: 2.5, radius: 2.0 }],
        },
      })),
      dwellPlaces: site.dwellPlaces.map((one, i) => ({
        ...one,
        at: [width / 2 + (i - 1) * 0.5, depth - 1.2] as Point,
      })),
      detectors: site.detectors.map((one) =>
        one.room === ROOM ? { ...one, at: [width / 2, depth - 1.4] as Point } : one,
      ),
    });
    both(built, true, shift);
    return depth > 5;
  },
  "suppressor-leaks": (built, draw) => {
    if (chance(draw, 0.6)) leakInPlan(built, { across: "contact", capacitance: 1e-7 });
    built.leak = "suppressor";
    return true;
  },
  "long-cores-couple": (built) => {
    built.leak = "cores";
    return true;
  },
  "glow-lamp-feeds-lamps": (built, draw) => {
    if (chance(draw, 0.7))
      planSwitch(built, {
        planned: "parallel",
        kind: "switch",
        glowLamp: { current: 0.001, ownNeutral: "no" },
      });
    built.leak = "glow-lamp";
    return true;
  },
  "neutral-borrowed": (built, draw) => {
    built.plan = {
      ...built.plan,
      found: {
        ...built.plan.found,
        circuits: built.plan.found.circuits.map((one) => ({
          ...one,
          sharedNeutral: chance(draw, IN_PLAN) ? ("yes" as const) : ("unknown" as const),
        })),
      },
    };
    built.neutral = "shared";
    return true;
  },
  "surge-starts-it-again": (built) => {
    built.surge = true;
    return true;
  },
  "test-mode-left-on": (built) => {
    eachOwn(built, (id) => {
      built.parameters[id] = { ...built.parameters[id]!, testTime: 1e6 };
    });
    return true;
  },
  "driver-unsteady": (built) => {
    built.lamps = "unsteady";
    return true;
  },
};

/** Changes the room as built, and the plan too where the plan holds the fault. */
function both(built: Built, inPlan: boolean, change: (site: Site) => Site): void {
  built.site = change(built.site);
  if (inPlan) built.plan = { ...built.plan, site: change(built.plan.site) };
}

function eachOwn(built: Built, change: (id: string) => void): void {
  for (const { id } of ownDetectors(built.site)) change(id);
}

function planSettings(built: Built, settings: Partial<SettingValues>): void {
  built.plan = {
    ...built.plan,
    settings: Object.fromEntries(
      Object.entries(built.plan.settings).map(([id, one]) => [id, { ...one, ...settings }]),
    ),
  };
}

function planSwitch(built: Built, given: Partial<Site["switches"][number]>): void {
  const [own] = built.plan.site.switches;
  const {
    detectors: _,
    glowLamp: __,
    ...rest
  } = own ?? {
    id: "s1",
    room: ROOM,
    kind: "switch" as const,
    at: [0.1, 0.1] as Point,
    height: 1.05,
    circuit: "Lighting 1",
  };
  built.plan = { ...built.plan, site: { ...built.plan.site, switches: [{ ...rest, ...given }] } };
}

function leakInPlan(
  built: Built,
  suppressor: { readonly across: "contact" | "load"; readonly capacitance: number },
): void {
  built.plan = {
    ...built.plan,
    site: {
      ...built.plan.site,
      detectors: built.plan.site.detectors.map((one) => {
        if (one.room !== ROOM) return one;
        const { baseLoad: _, ...rest } = one;
        return { ...rest, suppressors: [suppressor] };
      }),
    },
  };
}

function movePlace(built: Built, draw: Draw, at: Point): boolean {
  const prepared = prepareRoom(built.site, ROOM);
  const seen = ownDetectors(built.site).some((one) =>
    zoneInScene(prepared.closed(), { device: deviceOf(one, built.site.models[0]!), kind: "seated" }).has(
      at[0],
      at[1],
    ),
  );
  if (seen) return false;
  both(built, chance(draw, IN_PLAN), (site) => ({
    ...site,
    dwellPlaces: site.dwellPlaces.map((one, i) => (i === 0 ? { ...one, at } : one)),
  }));
  return true;
}

function cornerFarthest(built: Built): Point {
  const [width, depth] = built.plan.size;
  const corners: readonly Point[] = [
    [0.5, 0.5],
    [width - 0.5, 0.5],
    [width - 0.5, depth - 0.7],
    [0.5, depth - 0.7],
  ];
  const nearest = ([x, y]: Point) =>
    Math.min(...ownDetectors(built.site).map(({ at }) => Math.hypot(at[0] - x, at[1] - y)));
  return corners.toSorted((a, b) => nearest(b) - nearest(a))[0]!;
}

const doorStep = (built: Built): Point => {
  const [door] = built.site.openings;
  return [(door!.from[0] + door!.to[0]) / 2, 0.5];
};

const inside = (built: Built, [x, y]: Point): Point => [
  Math.min(built.plan.size[0] - 0.2, Math.max(0.2, x)),
  Math.min(built.plan.size[1] - 0.2, Math.max(0.2, y)),
];

const pathPast = (built: Built): readonly Point[] =>
  Array.from({ length: 60 }, (_, i): Point => [-1.5 + (i * (built.plan.size[0] + 3)) / 60, -1.1]);

const counterClockwise = (ring: readonly Point[]): readonly Point[] => {
  const area = ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + x * v - u * y;
  }, 0);
  return area < 0 ? ring.toReversed() : ring;
};
