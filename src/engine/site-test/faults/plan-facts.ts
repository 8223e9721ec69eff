import { say } from "../../check/index.ts";
import { type RoomCoverage, roomCoverage } from "../../coverage/index.ts";
import { UNRELIABLE_FROM } from "../../detector/index.ts";
import { controlledRooms, type Detector } from "../../site/index.ts";
import { contactChecks, type WiringModel } from "../../wiring/index.ts";
import type { FaultPlace } from "./fault-place.ts";

/** What a plan says that makes a cause likelier. Permanent names; each is true or not. */
export const planFacts = {
  "place-beyond-reach": say`A place where somebody sits or stands lies beyond the planned reach.`,
  "place-hidden": say`Something on the plan stands between a place and the lens.`,
  "place-masked": say`A drawn mask covers a place.`,
  "dark-way-in": say`The plan itself lets people walk far in the dark from a door.`,
  "sees-next-door": say`With the door open a detector sees people outside the room.`,
  "source-in-view": say`A source of false triggering lies within reach and in sight.`,
  "warm-room": say`The room gets so warm that people hardly stand out.`,
  "short-delay": say`The planned delay is shorter than people sit still.`,
  "semi-automatic": say`Planned so that people switch on by the button.`,
  "semi-without-button": say`Planned so that people switch on by a button, but the plan has none.`,
  "light-looked-at": say`A brightness threshold is planned.`,
  "microphone-on": say`A microphone is planned to hold the light.`,
  "low-sensitivity": say`A low sensitivity is planned.`,
  "may-be-switched-off-by-hand": say`The button may switch off.`,
  "switched-from-elsewhere": say`A detector outside the room switches its lamps as well.`,
  "inrush-beyond-contact": say`The lamps' inrush is more than the contact makes.`,
  "switch-beside-contact": say`A switch beside the contact can keep the lamps on.`,
  "glow-lamp-at-button": say`A button's glow lamp lets through more than the input's hold-off current.`,
  "glow-lamp-at-switch": say`A glow lamp without a neutral of its own sits at a switch beside the contact.`,
  "suppressor-across-contact": say`A suppressor lies across the open contact, and no base load is planned.`,
  "neutral-shared": say`The circuit's neutral is shared with another.`,
} as const;

export type PlanFact = keyof typeof planFacts;

export const planFactNames = /* @__PURE__ */ Object.keys(planFacts) as readonly PlanFact[];

/** Delay below which somebody who sits still may be left in the dark. [s] @source COMMON-PRACTICE */
const SHORT_DELAY = 180;

/**
 * What the plan of a room says about causes of faults: by its geometry, settings and wiring.
 *
 * @param place - The room as planned, with settings and wiring. @param coverage - Its coverage, where it is at hand.
 * @returns Facts that hold.
 * @source COMMON-PRACTICE
 * @example A heater in sight of the detector: "source-in-view" among them
 */
export function factsOf(
  place: FaultPlace,
  coverage: RoomCoverage = roomCoverage(place.site, place.room),
): ReadonlySet<PlanFact> {
  const detectors = place.site.detectors.filter((one) => controlledRooms(one).includes(place.room));
  const holds: Readonly<Record<PlanFact, boolean>> = {
    ...geometryFacts(place, coverage),
    ...settingFacts(place, detectors),
    ...wiringFacts(place, detectors),
  };
  return new Set(planFactNames.filter((fact) => holds[fact]));
}

type Facts<Names extends PlanFact> = Readonly<Record<Names, boolean>>;

function geometryFacts(
  { site, room }: FaultPlace,
  coverage: RoomCoverage,
): Facts<
  | "place-beyond-reach"
  | "place-hidden"
  | "place-masked"
  | "dark-way-in"
  | "sees-next-door"
  | "source-in-view"
  | "warm-room"
  | "switched-from-elsewhere"
> {
  const gap = (...kinds: readonly string[]): boolean =>
    coverage.gaps.some(
      ({ demand, cause, tolerated }) => demand === "hold" && !tolerated && kinds.includes(cause.kind),
    );
  const planned = site.rooms.find(({ id }) => id === room);
  return {
    "place-beyond-reach": gap("beyond-reach", "mounting-limits", "no-device"),
    "place-hidden": gap("hidden"),
    "place-masked": gap("masked"),
    "dark-way-in": coverage.darkWalks.some(({ metres, lit }) => !lit || metres > site.defaults.darkWalkLimit),
    "sees-next-door": coverage.spill.length > 0,
    "source-in-view": coverage.interference.length > 0,
    "warm-room": (planned?.highestTemperature ?? 0) >= UNRELIABLE_FROM,
    "switched-from-elsewhere": site.detectors.some(
      (one) => one.room !== room && controlledRooms(one).includes(room),
    ),
  };
}

function settingFacts(
  { site, room, settings }: FaultPlace,
  detectors: readonly Detector[],
): Facts<
  | "short-delay"
  | "semi-automatic"
  | "semi-without-button"
  | "light-looked-at"
  | "microphone-on"
  | "low-sensitivity"
  | "may-be-switched-off-by-hand"
> {
  const set = detectors.flatMap(({ id }) => settings[id] ?? []);
  const semi = set.some(({ mode }) => mode === "semi-automatic");
  const button = site.switches.some((one) => one.room === room && one.planned === "button");
  const stays = site.dwellPlaces.some((one) => one.room === room);
  return {
    "short-delay": stays && set.some(({ offDelay }) => offDelay < SHORT_DELAY),
    "semi-automatic": semi && button,
    "semi-without-button": semi && !button,
    "light-looked-at": set.some(({ threshold }) => threshold !== "off"),
    "microphone-on": set.some(({ soundSensitivity }) => soundSensitivity !== "off"),
    "low-sensitivity": set.some(({ sensitivity }) => sensitivity === "low"),
    "may-be-switched-off-by-hand": button && set.some((one) => one.button === "on-and-off"),
  };
}

function wiringFacts(
  { site, room, wiring }: FaultPlace,
  detectors: readonly Detector[],
): Facts<
  | "inrush-beyond-contact"
  | "switch-beside-contact"
  | "glow-lamp-at-button"
  | "glow-lamp-at-switch"
  | "suppressor-across-contact"
  | "neutral-shared"
> {
  const own = new Set(detectors.map(({ id }) => id));
  const wired = wiring?.detectors.filter(({ id }) => own.has(id)) ?? [];
  const lines = new Set(wired.flatMap(({ output }) => output ?? []));
  const switched = wiring?.switchedLines.filter(({ id }) => lines.has(id)) ?? [];
  const circuits = new Set(wired.flatMap(({ line }) => (line.kind === "line" ? [line.circuit] : [])));
  return {
    "inrush-beyond-contact": wiring !== undefined && inrushFails(wiring, own),
    "switch-beside-contact": switched.some(({ override }) => override === "yes"),
    "glow-lamp-at-button": site.switches.some(
      (one) =>
        one.planned === "button" &&
        one.glowLamp !== undefined &&
        one.glowLamp.ownNeutral !== "yes" &&
        (one.detectors ?? []).some((id) => own.has(id)) &&
        one.glowLamp.current > holdOffOf(site, detectors),
    ),
    "glow-lamp-at-switch": site.switches.some(
      (one) =>
        one.room === room &&
        one.planned === "parallel" &&
        one.glowLamp !== undefined &&
        one.glowLamp.ownNeutral !== "yes",
    ),
    "suppressor-across-contact": switched.some(
      ({ suppressors, baseLoad }) =>
        baseLoad !== "yes" && suppressors.some(({ across }) => across === "contact"),
    ),
    "neutral-shared":
      wiring?.circuits.some(({ id, sharedNeutral }) => circuits.has(id) && sharedNeutral === "yes") ?? false,
  };
}

const inrushFails = (wiring: WiringModel, own: ReadonlySet<string>): boolean =>
  contactChecks(wiring).some(
    ({ code, verdict, records }) =>
      verdict === "fail" && code === "contact-inrush-too-large" && records.some((id) => own.has(id)),
  );

/** The least current that an input of the room's detectors surely takes for "not pressed"; none where no data sheet says. [A] */
const holdOffOf = (site: FaultPlace["site"], detectors: readonly Detector[]): number =>
  Math.min(...detectors.map(({ model }) => site.models.find(({ id }) => id === model)?.inputs?.holdOff ?? 0));
