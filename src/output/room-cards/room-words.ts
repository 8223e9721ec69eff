import { controlledRooms, type Detector, type PlannedDevice, type Site, type Switch } from "#engine";

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
): readonly CardLine[] {
  if (devices.length === 0) return [];
  const settings = devices.map((device) => device.settings);
  const automatic = settings.filter(({ mode }) => mode.value === "automatic");
  const delay = Math.max(...settings.map(({ offDelay }) => offDelay.value));
  const dark = settings.some(({ threshold }) => threshold.value !== "off");
  const button = buttonOf(devices, switches);
  return [
    {
      heading: "On",
      text:
        automatic.length === 0
          ? `${button === "none" ? "Switch it on by hand" : "Press the button"} when you come in.`
          : automatic.length === settings.length
            ? "By itself, when you come in."
            : "By itself in parts of the room; elsewhere press the button.",
    },
    {
      heading: "Off",
      text: `By itself, ${delayWords(delay)} after the last movement was seen.`,
    },
    ...(dark ? [{ heading: "Daylight", text: "While there is enough daylight, it stays off." }] : []),
    ...buttonLine(settings, button),
    {
      heading: "Sitting still",
      text: "The detector looks for movement. If the light goes off while you are here, move an arm, and tell us: it can be adjusted.",
    },
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

function buttonLine(settings: readonly PlannedDevice["settings"][], button: Button): readonly CardLine[] {
  if (button === "none") return [];
  const both = settings.some((one) => one.button.value === "on-and-off");
  return [
    {
      heading: "Button",
      text: both
        ? "Press: on, or off. After you switched it off it stays off until the room was empty."
        : "Press: on. It goes off by itself.",
    },
  ];
}

/** [s] @example 600: "about 10 minutes" */
export function delayWords(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  if (seconds < 90) return `about ${Math.max(5, Math.round(seconds / 5) * 5)} seconds`;
  return `about ${minutes} minutes`;
}
