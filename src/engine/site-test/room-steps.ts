import type { Lux, Seconds } from "../quantity/index.ts";
import type { Detector, Room, Site } from "../site/index.ts";
import { stepMaker } from "./group-case.ts";
import { delayLimit } from "./reading.ts";
import type { StepSubject } from "./site-entry.ts";
import type { WorkStep } from "./work-step.ts";

/** What is set on the detectors, as far as tests need it. */
export interface SetForTest {
  readonly offDelay?: Seconds;
  readonly longestDelay?: Seconds;
  readonly threshold?: Lux | "off";
}

/** Empty room with fans and heaters running. [s] @source COMMON-PRACTICE */
export const EMPTY: Seconds = 300;

interface RoomCase {
  readonly room: Room;
  readonly site: Site;
  readonly detectors: readonly Detector[];
  readonly settings: ReadonlyMap<string, SetForTest>;
  readonly groups: readonly string[];
  /** Functional tests of its detectors. */
  readonly needs: readonly string[];
  readonly isFirstRoomOf: (detector: Detector) => boolean;
}

/**
 * Steps of one room, with the power on: walk test, brightness, delay, empty room, afterglow, emergency luminaires.
 *
 * @param given - The room with its detectors and what is set on them.
 * @returns Steps in order.
 * @source COMMON-PRACTICE
 * @example A room without threshold has no reading of brightness
 */
export function roomSteps(given: RoomCase): readonly WorkStep[] {
  const { room, site, detectors, settings, groups, needs } = given;
  const about: StepSubject = { kind: "room", id: room.id };
  const make = stepMaker({ groups, room: room.id, result: { kind: "verdict" }, needs, state: "live" });
  const own = detectors.filter(given.isFirstRoomOf);
  return [
    make({
      name: "walk-test",
      stage: "walk-test",
      about,
      result: { kind: "stations" },
      cautions: ["presence-is-no-safety"],
    }),
    make({ name: "empty-room", stage: "walk-test", about, wait: EMPTY, result: { kind: "stations" } }),
    ...own.flatMap((detector) => {
      const set = settings.get(detector.id);
      if (set?.threshold === undefined || set.threshold === "off") return [];
      return [
        make({
          name: "brightness",
          stage: "readings",
          about: { kind: "detector", id: detector.id },
          planned: set.threshold,
          // A reading beside the set value: what light it switches at is judged by the threshold's own readings.
          result: { kind: "reading", reading: "brightness", limit: undefined },
        }),
      ];
    }),
    ...own.map((detector) => {
      const set = settings.get(detector.id);
      return make({
        name: "delay",
        stage: "readings",
        about: { kind: "detector", id: detector.id },
        planned: set?.offDelay,
        result: {
          kind: "reading",
          reading: "delay",
          limit:
            set?.offDelay === undefined
              ? undefined
              : delayLimit({
                  set: set.offDelay,
                  ...(set.longestDelay === undefined ? {} : { longest: set.longestDelay }),
                }),
        },
      });
    }),
    make({ name: "afterglow", stage: "readings", about }),
    ...site.luminaires
      .filter((luminaire) => luminaire.room === room.id && luminaire.emergency !== undefined)
      .map((luminaire) =>
        make({
          name: "emergency",
          stage: "emergency",
          about: { kind: "luminaire", id: luminaire.id },
          parts: ["breaker-open-light-on"],
          cautions: ["emergency-battery"],
          source: "EN-50172",
        }),
      ),
  ];
}
