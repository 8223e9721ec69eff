import type { RoomCoverage } from "../../coverage/index.ts";
import type { SettingName, SettingValues } from "../../settings/index.ts";
import { controlledRooms, type Detector } from "../../site/index.ts";
import type { RuleId } from "../../wiring/index.ts";
import type { FaultPlace } from "./fault-place.ts";
import type { FaultCause } from "./names.ts";

/** What mends a fault, as data that a job can record and a screen can offer. Records by their ids. */
export type FaultCorrection =
  /** Blind a source, or the floor of a room (null: outside), for a detector. */
  | { readonly kind: "mask"; readonly device: string; readonly source: string }
  | { readonly kind: "mask"; readonly device: string; readonly room: string | null }
  | { readonly kind: "unmask"; readonly device: string }
  | {
      readonly kind: "set";
      readonly device: string;
      readonly setting: SettingName;
      /** As planned, where the plan's own value is the right one. */
      readonly value: SettingValues[SettingName];
    }
  /** Hang it where the place, the door or everything is seen. */
  | {
      readonly kind: "move-or-add";
      readonly device: string | undefined;
      readonly towards: string | undefined;
    }
  | { readonly kind: "hang-as-planned"; readonly device: string }
  | { readonly kind: "take-away"; readonly obstacle: string | undefined }
  | { readonly kind: "keep-shut"; readonly opening: string | undefined }
  /** A rule of wiring that is broken, to be put right with everything dead. */
  | { readonly kind: "rewire"; readonly rule: RuleId; readonly records: readonly string[] }
  | {
      readonly kind: "replace";
      readonly what: "detector" | "driver" | "contact";
      readonly records: readonly string[];
    }
  | { readonly kind: "repair"; readonly what: "supply" | "lamp-line"; readonly records: readonly string[] }
  | {
      readonly kind: "fit";
      readonly what: "base-load" | "suppressor-at-load";
      readonly records: readonly string[];
    };

/**
 * Corrections of a cause in a room, the least effort first.
 *
 * @param cause - The cause that was found. @param place - The room as planned. @param coverage - Its coverage as planned.
 * @returns At least one for a room with a detector of its own whose settings were planned; values from the plan where it has them.
 * @source COMMON-PRACTICE
 * @example A delay set too long: the planned delay for each detector of the room
 */
export function correctionsOf(
  cause: FaultCause,
  place: FaultPlace,
  coverage: RoomCoverage,
): readonly FaultCorrection[] {
  const detectors = place.site.detectors.filter((one) => controlledRooms(one).includes(place.room));
  const own = detectors.filter(({ room }) => room === place.room);
  const records = detectors.map(({ id }) => id);
  const planned = (setting: SettingName): readonly FaultCorrection[] =>
    detectors.flatMap(({ id }) => {
      const value = place.settings[id]?.[setting];
      return value === undefined ? [] : [{ kind: "set", device: id, setting, value } as const];
    });
  const to = (setting: SettingName, value: SettingValues[SettingName]): readonly FaultCorrection[] =>
    detectors.map(({ id }) => ({ kind: "set", device: id, setting, value }));
  const rewire = (rule: RuleId): FaultCorrection => ({ kind: "rewire", rule, records });
  switch (cause) {
    case "source-in-view":
      return [
        ...coverage.interference.map(({ source, device }) => ({ kind: "mask", device, source }) as const),
        ...moves(own, undefined),
      ];
    case "passer-by-seen":
      return [
        ...coverage.spill.flatMap(({ room, devices }) =>
          devices.map((device) => ({ kind: "mask", device, room }) as const),
        ),
        { kind: "keep-shut", opening: doorOf(place) },
      ];
    case "noise-heard":
      return to("soundSensitivity", "off");
    case "delay-too-long":
    case "delay-too-short":
      return planned("offDelay");
    case "contact-welded":
      return [{ kind: "replace", what: "contact", records }, rewire("W-05")];
    case "switch-in-parallel":
      return [rewire("W-18")];
    case "output-joined-with-another":
      return [rewire("W-01")];
    case "glow-lamp-holds-button":
      return [rewire("W-08")];
    case "button-of-another-room":
      return [rewire("W-07")];
    case "place-beyond-reach":
    case "door-beyond-reach":
      return moves(own, worstPlace(cause, coverage));
    case "hidden-behind-something":
      return [{ kind: "take-away", obstacle: hiding(coverage) }, ...moves(own, worstPlace(cause, coverage))];
    case "mask-in-the-way":
      return own.map(({ id }) => ({ kind: "unmask", device: id }));
    case "sensitivity-too-low":
      return to("sensitivity", "high");
    case "room-too-warm":
      return moves(own, undefined);
    case "hung-at-another-height":
      return own.map(({ id }) => ({ kind: "hang-as-planned", device: id }));
    case "bright-enough-for-the-sensor":
      return to("threshold", "off");
    case "lamps-dazzle-the-sensor":
      return [...to("threshold", "off"), ...moves(own, undefined)];
    case "semi-automatic":
      return to("mode", "automatic");
    case "test-mode-left-on":
      return to("testMode", "off");
    case "detector-without-supply":
      return [
        { kind: "repair", what: "supply", records },
        { kind: "replace", what: "detector", records },
      ];
    case "supply-interrupted":
      return [{ kind: "repair", what: "supply", records }];
    case "contact-stays-open":
      return [{ kind: "replace", what: "contact", records }];
    case "lamps-without-line":
      return [{ kind: "repair", what: "lamp-line", records }];
    case "lamps-start-late":
    case "driver-unsteady":
      return [{ kind: "replace", what: "driver", records: luminairesOf(place) }];
    case "suppressor-leaks":
      return [rewire("W-10"), { kind: "fit", what: "base-load", records }];
    case "long-cores-couple":
      return [{ kind: "fit", what: "base-load", records }];
    case "glow-lamp-feeds-lamps":
      return [rewire("W-08"), { kind: "fit", what: "base-load", records }];
    case "neutral-borrowed":
      return [rewire("W-02")];
    case "surge-starts-it-again":
      return [{ kind: "fit", what: "suppressor-at-load", records }];
  }
}

const moves = (own: readonly Detector[], towards: string | undefined): readonly FaultCorrection[] =>
  own.length === 0
    ? [{ kind: "move-or-add", device: undefined, towards }]
    : own.map(({ id }) => ({ kind: "move-or-add", device: id, towards }));

const doorOf = ({ site, room }: FaultPlace): string | undefined =>
  site.openings.find(({ rooms, kind }) => kind === "door" && rooms.includes(room))?.id;

const luminairesOf = ({ site, room }: FaultPlace): readonly string[] =>
  site.luminaires.flatMap((one) => (one.room === room ? [one.id] : []));

/** The place with the largest gap, or the door with the longest way in the dark. */
function worstPlace(cause: FaultCause, coverage: RoomCoverage): string | undefined {
  if (cause === "door-beyond-reach")
    return coverage.darkWalks.toSorted((a, b) => b.metres - a.metres)[0]?.opening;
  return coverage.gaps
    .filter(({ dwellPlace }) => dwellPlace !== undefined)
    .toSorted((a, b) => b.area - a.area)[0]?.dwellPlace;
}

const hiding = (coverage: RoomCoverage): string | undefined =>
  coverage.gaps.flatMap(({ cause }) =>
    cause.kind === "hidden" && cause.behind.kind === "obstacle" ? [cause.behind.id] : [],
  )[0];
