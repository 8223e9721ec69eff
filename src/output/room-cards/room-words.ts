import { controlledRooms, type Detector, type PlannedDevice, type Site, type Switch } from "#engine";
import type { PaperLanguage } from "../words/paper-words.ts";
import { type CardWording, cardWordings } from "./wordings.ts";

/** A sentence on the card, with the heading it stands under. */
export interface CardLine {
  readonly heading: string;
  readonly text: string;
}

/** The devices that switch the light of a room. */
export function devicesOf(
  site: Site,
  room: string,
  devices: readonly PlannedDevice[],
): readonly PlannedDevice[] {
  const switching = new Map(
    site.detectors
      .filter((detector) => detector.output !== "signals" && controlledRooms(detector).includes(room))
      .map((detector): [string, Detector] => [detector.id, detector]),
  );
  return devices.filter(({ context }) => switching.has(context.device));
}

/**
 * How the light of a room behaves, in the words of the people in it. Only what is known is said: a card that guesses is
 * worse than none.
 *
 * @param devices - Those that switch the light of this room; of several the longest delay holds.
 * @returns No lines where nothing switches by itself here.
 */
export function roomWords(
  devices: readonly PlannedDevice[],
  switches: readonly Switch[],
  language: PaperLanguage = "en",
): readonly CardLine[] {
  if (devices.length === 0) return [];
  const wording = cardWordings[language];
  const settings = devices.map((device) => device.settings);
  const automatic = settings.filter(({ mode }) => mode.value === "automatic");
  const delay = Math.max(...settings.map(({ offDelay }) => offDelay.value));
  const dark = settings.some(({ threshold }) => threshold.value !== "off");
  const button = buttonOf(devices, switches);
  return [
    {
      heading: wording.on,
      text:
        automatic.length === settings.length
          ? wording.on_automatic
          : automatic.length > 0
            ? wording.on_parts
            : button === "none"
              ? wording.on_byHand
              : wording.on_button,
    },
    { heading: wording.off, text: wording.off_after.replace("{delay}", delayWords(delay, wording)) },
    ...(dark ? [{ heading: wording.daylight, text: wording.daylight_enough }] : []),
    ...buttonLine(settings, button, wording),
    { heading: wording.still, text: wording.still_move },
  ];
}

type Button = "some" | "none";

const buttonOf = (devices: readonly PlannedDevice[], switches: readonly Switch[]): Button =>
  devices.some(({ context }) => context.hasButton) ||
  switches.some(
    ({ planned, kind }) => planned === "button" || (planned === undefined && kind === "push-button"),
  )
    ? "some"
    : "none";

function buttonLine(
  settings: readonly PlannedDevice["settings"][],
  button: Button,
  wording: CardWording,
): readonly CardLine[] {
  if (button === "none") return [];
  const both = settings.some((one) => one.button.value === "on-and-off");
  return [{ heading: wording.button, text: both ? wording.button_onAndOff : wording.button_on }];
}

/** [s] @example 600: "about 10 minutes" */
export function delayWords(seconds: number, wording: CardWording = cardWordings.en): string {
  const [written, count] =
    seconds < 90
      ? [wording.seconds, Math.max(5, Math.round(seconds / 5) * 5)]
      : [wording.minutes, Math.round(seconds / 60)];
  return written.replace("{count}", String(count));
}
