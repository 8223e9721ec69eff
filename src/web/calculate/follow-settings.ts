import type { OpenJob } from "../contract.ts";
import type { SetAnswer, SetQuestion, SettingsKnown } from "./set-protocol.ts";

/** What settings are derived from; as long as these are the same, so are they. */
const siteKinds = [
  "storeys",
  "rooms",
  "openings",
  "interference",
  "luminaires",
  "switches",
  "models",
  "detectors",
  "defaults",
] as const;
const fileKinds = ["details", "boards", "circuits"] as const;

export interface SettingsFollower {
  /** Derives the settings of this state of the job, unless they are known or under way. */
  readonly follow: (job: OpenJob) => void;
  readonly stop: () => void;
}

/** Derives the settings of the open job beside the screen. While one state is looked at the newest waits, those between are left out. */
export function followSettings(
  hear: (what: { known: SettingsKnown } | { sentence: string }) => void,
): SettingsFollower {
  let worker: Worker | undefined;
  let number = 0;
  let busy = false;
  let next: OpenJob | undefined;
  let asked: OpenJob | undefined;

  const send = (): void => {
    if (!next) return;
    worker ??= started();
    const { site, file } = next;
    asked = next;
    next = undefined;
    busy = true;
    number += 1;
    const { detectors, details, boards, circuits } = file;
    const question: SetQuestion = {
      number,
      // What stands in the rooms has no part in the settings, and is left out of what is sent.
      site: { ...site, obstacles: [], dwellPlaces: [], ceilingThings: [], floorPieces: [] },
      file: { detectors, details, boards, circuits },
    };
    worker.postMessage(question);
  };
  const started = (): Worker => {
    const made = new Worker(new URL("./set-worker.ts", import.meta.url), { type: "module", name: "set" });
    const ended = (): void => {
      busy = false;
      send();
    };
    made.onmessage = ({ data }: MessageEvent<SetAnswer>) => {
      if (data.number !== number) return;
      hear(data.tell === "set" ? { known: data.known } : { sentence: data.sentence });
      ended();
    };
    made.onerror = (event) => {
      event.preventDefault();
      hear({ sentence: event.message });
      ended();
    };
    return made;
  };
  return {
    follow: (job) => {
      const last = next ?? asked;
      if (last && sameSettings(last, job)) return;
      next = job;
      if (!busy) send();
    },
    stop: () => {
      worker?.terminate();
      worker = undefined;
      next = undefined;
      asked = undefined;
      busy = false;
      number += 1;
    },
  };
}

const sameSettings = (a: OpenJob, b: OpenJob): boolean =>
  a.id === b.id &&
  siteKinds.every((kind) => a.site[kind] === b.site[kind]) &&
  fileKinds.every((kind) => a.file[kind] === b.file[kind]);
