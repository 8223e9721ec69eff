import { type ControlParameters, type Detector, roomTitle, type Site, usualParameters } from "#engine";
import type { JobSettings } from "#job";

/** Lamps that some detectors switch together, with what had to be assumed of them. */
export interface ReplayLoad {
  readonly rooms: readonly string[];
  readonly devices: readonly ReplayDevice[];
  /** Of all luminaires in the rooms; undefined where one of them is not known. [W] */
  readonly power: number | undefined;
  /** Switching cycles that the weakest contact bears; undefined where a data sheet does not say. */
  readonly life: number | undefined;
  readonly assumptions: readonly string[];
}

export interface ReplayDevice {
  readonly id: string;
  readonly tag: string;
  readonly parameters: ControlParameters;
  /** As a person chose it. [s] */
  readonly offDelay: number | undefined;
  readonly mode: ControlParameters["mode"] | undefined;
}

/** The loads of a job, or of one detector alone: detectors that control the same rooms switch one load. */
export function replayLoads(
  site: Site,
  settings: ReadonlyMap<string, JobSettings | undefined>,
  only: Detector | undefined,
): readonly ReplayLoad[] {
  const groups = new Map<string, Detector[]>();
  for (const detector of only ? [only] : site.detectors) {
    const key = JSON.stringify([...detector.controls].sort());
    groups.set(key, [...(groups.get(key) ?? []), detector]);
  }
  return [...groups.values()].map((detectors) => loadOf(site, settings, detectors));
}

function loadOf(
  site: Site,
  settings: ReadonlyMap<string, JobSettings | undefined>,
  detectors: readonly Detector[],
): ReplayLoad {
  const assumptions: Assumption[] = [];
  const slaves = detectors.filter((one) => settings.get(one.id)?.groupRole === "slave");
  // A slave switches nothing itself; alone in the list it is replayed as if it did.
  const switching =
    slaves.length < detectors.length ? detectors.filter((one) => !slaves.includes(one)) : slaves;
  if (slaves.length > 0)
    assumptions.push(
      ...slaves.map((one) => ({
        tag: tagOf(one),
        what:
          switching === slaves
            ? "a slave, replayed as if it switched the light itself"
            : "a slave, which notices nothing that its master does not notice in the same log",
      })),
    );
  const devices = switching.map((detector): ReplayDevice => {
    const chosen = settings.get(detector.id);
    assumptions.push(...assumptionsOf(detector, chosen));
    return {
      id: detector.id,
      tag: tagOf(detector),
      parameters: {
        ...usualParameters,
        ...(chosen?.mode === undefined ? {} : { mode: chosen.mode }),
        ...(chosen?.buttonRole === undefined ? {} : { button: chosen.buttonRole }),
      },
      offDelay: chosen?.offDelay,
      mode: chosen?.mode,
    };
  });
  const rooms = detectors[0]!.controls;
  const luminaires = site.luminaires.filter((one) => rooms.includes(one.room));
  const unknown = luminaires.filter((one) => one.power === undefined).length;
  if (luminaires.length === 0) assumptions.push({ what: "load not known: no luminaires are entered" });
  else if (unknown > 0)
    assumptions.push({
      what: `load not known: the power of ${unknown} of ${luminaires.length} luminaires is missing`,
    });
  const lives = switching.map(
    (detector) => site.models.find((model) => model.id === detector.model)?.contact?.life,
  );
  return {
    rooms,
    devices,
    power:
      luminaires.length === 0 || unknown > 0
        ? undefined
        : luminaires.reduce((sum, one) => sum + one.power!, 0),
    life: lives.includes(undefined) ? undefined : Math.min(...(lives as number[])),
    assumptions: collected(assumptions),
  };
}

interface Assumption {
  /** Of the detector it is about. */
  readonly tag?: string;
  readonly what: string;
}

/** What nobody chose, and what was chosen and a log cannot show. */
function assumptionsOf(detector: Detector, chosen: JobSettings | undefined): readonly Assumption[] {
  const said: string[] = [];
  if (chosen?.mode === undefined) said.push(`mode not entered, taken as ${usualParameters.mode}`);
  if (chosen?.offDelay === undefined)
    said.push(
      `off delay not entered; our usual one, ${usualParameters.offDelay / 60} min, is among those tried`,
    );
  if (chosen?.mode === "semi-automatic")
    said.push("whoever comes into the dark is taken to press the button; the log does not show it");
  if (typeof chosen?.brightnessThreshold === "number")
    said.push("its brightness threshold is left out, as if it were always dark");
  if (typeof chosen?.impulse === "object")
    said.push("the timer that its impulse drives is taken to run for the delay tried");
  if (chosen?.soundSensitivity !== undefined && chosen.soundSensitivity !== "off")
    said.push("what it hears is not in the log");
  return said.map((what) => ({ tag: tagOf(detector), what }));
}

/** The same said of several detectors is said once. */
function collected(assumptions: readonly Assumption[]): readonly string[] {
  const about = new Map<string, string[]>();
  for (const { tag, what } of assumptions)
    about.set(what, [...(about.get(what) ?? []), ...(tag === undefined ? [] : [tag])]);
  return [...about].map(([what, tags]) => (tags.length > 0 ? `${listed(tags)}: ${what}` : what));
}

const tagOf = (detector: Detector): string => detector.tag || detector.id;

/** Names for a person; a dozen is enough for reading. */
const listed = (names: readonly string[]): string =>
  names.length > 12 ? `${names.slice(0, 12).join(", ")} and ${names.length - 12} more` : names.join(", ");

/** Names of the rooms of a load. */
export const roomNames = (site: Site, ids: readonly string[]): string =>
  listed(ids.map((id) => roomTitle(site.rooms.find((one) => one.id === id))));
