import { installationOf } from "#job";
import type { OpenJob } from "../contract.ts";
import type { WireAnswer, WireQuestion, WiringKnown } from "./wire-protocol.ts";

/** What the wiring is calculated from; as long as these are the same, so is what is known. */
const siteKinds = ["storeys", "rooms", "openings", "luminaires", "switches", "models", "detectors"] as const;

export interface WiringFollower {
  /** Calculates the wiring of this state of the job, unless it is known or under way. */
  readonly follow: (job: OpenJob) => void;
  readonly stop: () => void;
}

/** Calculates the wiring of the open job beside the screen. While one state is calculated the newest waits, those between are left out. */
export function followWiring(
  hear: (what: { known: WiringKnown } | { sentence: string }) => void,
): WiringFollower {
  let worker: Worker | undefined;
  let number = 0;
  let busy = false;
  let next: OpenJob | undefined;
  let asked: OpenJob | undefined;

  const send = (): void => {
    if (!next) return;
    worker ??= started();
    const { site, kept } = next;
    asked = next;
    next = undefined;
    busy = true;
    number += 1;
    const question: WireQuestion = {
      number,
      // What stands in the rooms has no part in the wiring, and is left out of what is sent.
      site: { ...site, obstacles: [], dwellPlaces: [], interference: [], ceilingThings: [], floorPieces: [] },
      found: installationOf(kept),
    };
    worker.postMessage(question);
  };
  const started = (): Worker => {
    const made = new Worker(new URL("./wire-worker.ts", import.meta.url), { type: "module", name: "wire" });
    const ended = (): void => {
      busy = false;
      send();
    };
    made.onmessage = ({ data }: MessageEvent<WireAnswer>) => {
      if (data.number !== number) return;
      hear(data.tell === "wired" ? { known: data.known } : { sentence: data.sentence });
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
      if (last && sameWiring(last, job)) return;
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

const sameWiring = (a: OpenJob, b: OpenJob): boolean =>
  a.id === b.id &&
  siteKinds.every((kind) => a.site[kind] === b.site[kind]) &&
  a.kept.boards === b.kept.boards &&
  a.kept.circuits === b.kept.circuits;
