import {
  type DelayWish,
  type DeviceSettings,
  type LoadDevice,
  type ReplayedLoad,
  roomTitle,
  type Site,
  usualWish,
} from "#engine";

/** Settings of each detector, with how they came to be. */
export type SettingsById = ReadonlyMap<string, DeviceSettings>;

/** What had to be assumed of a load, and of the log that was run through it. */
export const assumptionsOf = (
  replayed: ReplayedLoad,
  { settings, still }: { readonly settings: SettingsById; readonly still: number },
): readonly string[] => [...ofLoad(replayed, settings), ...ofPeople(replayed, still)];

interface Assumption {
  /** Of the detector it is about. */
  readonly tag?: string;
  readonly what: string;
}

function ofLoad({ load }: ReplayedLoad, settings: SettingsById): readonly string[] {
  const { count, withoutPower } = load.luminaires;
  const switching = load.devices.filter(({ role }) => role === "switches");
  const assumptions: Assumption[] = [
    ...load.devices.flatMap((device) => ofSlave(device)),
    ...switching.flatMap((device) => ofDevice(device, settings.get(device.id))),
  ];
  if (load.background > 0)
    assumptions.push({
      what: `while it is off it draws ${Math.round(load.background * 100)} % of its power, the background level that is set or derived`,
    });
  if (count === 0) assumptions.push({ what: "load not known: no luminaires are entered" });
  else if (withoutPower > 0)
    assumptions.push({
      what: `load not known: the power of ${withoutPower} of ${count} luminaires is missing`,
    });
  return collected(assumptions);
}

function ofSlave({ tag, role, chosen }: LoadDevice): readonly Assumption[] {
  if (role === "reports")
    return [{ tag, what: "a slave, which notices nothing that its master does not notice in the same log" }];
  return chosen.groupRole === "slave"
    ? [{ tag, what: "a slave, replayed as if it switched the light itself" }]
    : [];
}

/** What nobody chose and is derived, and what is set and a log cannot show. */
function ofDevice({ tag, chosen }: LoadDevice, settings: DeviceSettings | undefined): readonly Assumption[] {
  const said: string[] = [];
  if (settings?.mode.kind === "derived") said.push(`mode not entered, derived as ${settings.mode.value}`);
  if (settings?.offDelay.kind === "derived")
    said.push(
      `off delay not entered; ${Number((settings.offDelay.value / 60).toFixed(2))} min, as derived, is among those tried`,
    );
  if (chosen.mode === "semi-automatic")
    said.push("whoever comes into the dark is taken to press the button; the log does not show it");
  if (typeof chosen.threshold === "number")
    said.push("its brightness threshold is left out, as if it were always dark");
  if (typeof chosen.impulse === "object")
    said.push("the timer that its impulse drives is taken to run for the delay tried");
  if (chosen.soundSensitivity !== undefined && chosen.soundSensitivity !== "off")
    said.push("what it hears is not in the log");
  return said.map((what) => ({ tag, what }));
}

function ofPeople(
  { load, wish }: { readonly load: ReplayedLoad["load"]; readonly wish: DelayWish },
  still: number,
): string[] {
  return [
    still > 0
      ? `a pause of up to ${still / 60} min between two records is somebody sitting still`
      : "the log is taken at its word: an empty row is an empty room",
    "whoever the log records, the detector sees all the while",
    `people bear one switch-off on somebody in ${1 / wish.offPerDay} days`,
    load.life === undefined
      ? `lamps and contacts bear ${wish.cyclesPerYear} cycles a year; the data sheet does not say`
      : `contacts that bear ${load.life} cycles serve for ${usualWish.yearsOfService} years`,
  ];
}

/** The same said of several detectors is said once. */
function collected(assumptions: readonly Assumption[]): readonly string[] {
  const about = new Map<string, string[]>();
  for (const { tag, what } of assumptions)
    about.set(what, [...(about.get(what) ?? []), ...(tag === undefined ? [] : [tag])]);
  return [...about].map(([what, tags]) => (tags.length > 0 ? `${listed(tags)}: ${what}` : what));
}

/** Names for a person; a dozen is enough for reading. */
const listed = (names: readonly string[]): string =>
  names.length > 12 ? `${names.slice(0, 12).join(", ")} and ${names.length - 12} more` : names.join(", ");

/** Names of the rooms of a load. */
export const roomNames = (site: Site, ids: readonly string[]): string =>
  listed(ids.map((id) => roomTitle(site.rooms.find((one) => one.id === id))));
