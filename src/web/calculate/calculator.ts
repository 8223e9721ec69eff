import type { Detector, PlacementResult, Site } from "#engine";
import type { Calculated, Calculations, DeviceZones, EditStep, ModelRead, OpenJob } from "../contract.ts";
import { difference } from "../jobs/apply.ts";
import { nothingCalculated } from "./calculated.ts";
import type {
  PlaceAnswer,
  PlaceQuestion,
  ReadAnswer,
  ReadQuestion,
  ReviewAnswer,
  ReviewQuestion,
} from "./protocol.ts";

/** The workers behind the screen: one reviews the open job, others are made when needed and ended when stopped. */
export interface Calculator extends Omit<Calculations, "current"> {
  readonly current: () => Calculated;
  readonly subscribe: (listener: () => void) => () => void;
  /** Calculates this state of the open job; only what changed is sent. Undefined: no job is open. */
  readonly follow: (job: OpenJob | undefined) => void;
  /** Calculates what a drag would do if it ended now; no steps when it is over. */
  readonly live: (steps: readonly EditStep[]) => void;
}

export function startCalculator(): Calculator {
  let current: Calculated = nothingCalculated;
  let settled: Calculated = nothingCalculated;
  let followed: { readonly id: string; readonly site: Site; readonly revision: number } | undefined;
  let worker: Worker | undefined;
  let turn = 0;
  let liveBusy = false;
  let liveNext: readonly EditStep[] | undefined;
  let tries: { readonly turn: number; readonly settle: (zones: DeviceZones | undefined) => void } | undefined;
  const listeners = new Set<() => void>();

  const show = (next: Calculated): void => {
    current = next;
    for (const listener of listeners) listener();
  };
  const ask = (question: ReviewQuestion): void => {
    worker ??= reviewWorker();
    worker.postMessage(question);
  };
  const reviewWorker = (): Worker => {
    const made = new Worker(new URL("./review-worker.ts", import.meta.url), {
      type: "module",
      name: "review",
    });
    made.onmessage = ({ data }: MessageEvent<ReviewAnswer>) => hear(data);
    made.onerror = (event) => {
      event.preventDefault();
      show({ ...current, busy: false, trouble: event.message });
    };
    return made;
  };

  const hear = (answer: ReviewAnswer): void => {
    switch (answer.tell) {
      case "room": {
        if (answer.revision !== followed?.revision) return;
        const rooms = new Map(settled.rooms).set(answer.coverage.room, answer.coverage);
        const zones = new Map(settled.zones);
        for (const [id, device] of answer.zones) zones.set(id, device);
        settled = { ...settled, rooms, zones, revision: answer.revision, busy: true };
        show(settled);
        return;
      }
      case "done": {
        if (answer.revision !== followed?.revision) return;
        const there = new Set(answer.rooms);
        const devices = new Set(followed.site.detectors.map(({ id }) => id));
        settled = {
          ...settled,
          revision: answer.revision,
          busy: false,
          trouble: undefined,
          findings: answer.findings,
          rooms: kept(settled.rooms, there),
          zones: kept(settled.zones, devices),
        };
        show(settled);
        return;
      }
      case "live": {
        liveBusy = false;
        if (liveNext) {
          sendLive();
          return;
        }
        if (answer.turn !== turn) return;
        const rooms = new Map(current.rooms);
        for (const seen of answer.coverage) {
          const before = rooms.get(seen.room);
          if (before) rooms.set(seen.room, { ...before, ...seen });
        }
        const zones = new Map(current.zones);
        for (const [id, device] of answer.zones) zones.set(id, device);
        show({ ...current, rooms, zones });
        return;
      }
      case "device":
        if (tries?.turn === answer.turn) {
          tries.settle(answer.zones);
          tries = undefined;
        }
        return;
      case "trouble":
        liveBusy = false;
        tries?.settle(undefined);
        tries = undefined;
        show({ ...current, busy: false, trouble: answer.sentence });
    }
  };
  const sendLive = (): void => {
    if (!liveNext || !followed) return;
    const steps = liveNext;
    liveNext = undefined;
    liveBusy = true;
    turn += 1;
    ask({ ask: "live", revision: followed.revision, turn, steps });
  };

  return {
    current: () => current,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    follow: (job) => {
      if (!job) {
        followed = undefined;
        settled = nothingCalculated;
        worker?.terminate();
        worker = undefined;
        show(settled);
        return;
      }
      const { id, site, revision } = job;
      if (followed?.id === id && followed.site === site) return;
      liveNext = undefined;
      liveBusy = false;
      turn += 1;
      if (followed?.id === id) {
        const steps = difference(followed.site, site);
        const defaults = site.defaults === followed.site.defaults ? {} : { defaults: site.defaults };
        followed = { id, site, revision };
        ask({ ask: "change", revision, steps, ...defaults });
      } else {
        settled = nothingCalculated;
        followed = { id, site, revision };
        ask({ ask: "site", revision, site });
      }
      // What was shown while dragging stays until the newer answer comes.
      settled = { ...settled, rooms: current.rooms, zones: current.zones };
      show({ ...current, ...(settled.revision === 0 ? nothingCalculated : {}), busy: true });
    },
    live: (steps) => {
      if (steps.length === 0) {
        liveNext = undefined;
        if (current !== settled && !current.busy) show(settled);
        return;
      }
      liveNext = steps;
      if (!liveBusy) sendLive();
    },
    tryDevice: (site: Site, device: Detector) =>
      new Promise((settle) => {
        tries?.settle(undefined);
        turn += 1;
        tries = { turn, settle };
        ask({ ask: "device", turn, site, device });
      }),
    place,
    readModel,
  };
}

const kept = <T>(map: ReadonlyMap<string, T>, ids: ReadonlySet<string>): ReadonlyMap<string, T> =>
  [...map.keys()].every((id) => ids.has(id)) ? map : new Map([...map].filter(([id]) => ids.has(id)));

/** After a stop the worker gets this long to hand over the best so far. [ms] */
const grace = 2500;

const place: Calculations["place"] = (site, options, { progress, signal }) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./place-worker.ts", import.meta.url), {
      type: "module",
      name: "place",
    });
    const ask = (question: PlaceQuestion): void => worker.postMessage(question);
    let giveUp: ReturnType<typeof setTimeout> | undefined;
    const end = (): void => {
      clearTimeout(giveUp);
      signal.removeEventListener("abort", stop);
      worker.terminate();
    };
    const stop = (): void => {
      ask({ ask: "stop" });
      giveUp = setTimeout(() => {
        end();
        resolve(nothingPlaced(options.room));
      }, grace);
    };
    worker.onmessage = ({ data }: MessageEvent<PlaceAnswer>) => {
      if (data.tell === "progress") return progress(data.step);
      end();
      if (data.tell === "placed") resolve(data.result);
      else reject(new Error(data.sentence));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      end();
      reject(new Error(event.message));
    };
    signal.addEventListener("abort", stop, { once: true });
    ask({ ask: "place", site, options });
    if (signal.aborted) stop();
  });

const nothingPlaced = (room: string): PlacementResult => ({
  room,
  best: undefined,
  alternatives: [],
  bound: 0,
  boundHolds: "candidates",
  fewest: false,
  cancelled: true,
  seconds: 0,
  problems: [],
});

/** A reader that takes longer than this has hung on its file. [ms] */
const readLimit = 180_000;

const readModel: Calculations["readModel"] = async (file, { progress, signal, choice }) => {
  const bytes = await file.arrayBuffer();
  return new Promise<ModelRead>((resolve, reject) => {
    const worker = new Worker(new URL("./read-worker.ts", import.meta.url), { type: "module", name: "read" });
    const stop = (): void => {
      end();
      reject(new DOMException("Stopped", "AbortError"));
    };
    const hung = setTimeout(() => {
      end();
      reject(new Error("Reading the file took longer than three minutes and was stopped."));
    }, readLimit);
    const end = (): void => {
      clearTimeout(hung);
      signal.removeEventListener("abort", stop);
      worker.terminate();
    };
    if (signal.aborted) return stop();
    signal.addEventListener("abort", stop, { once: true });
    worker.onmessage = ({ data }: MessageEvent<ReadAnswer>) => {
      if (data.tell === "progress") return progress(data.text, data.share);
      // The package that reads PDF files greets whoever started its thread.
      if (data.tell === undefined) return;
      end();
      if (data.tell === "read") resolve(data.read);
      else reject(new Error(data.sentences.join(" ")));
    };
    worker.onerror = (event) => {
      event.preventDefault();
      end();
      reject(new Error(event.message));
    };
    const question: ReadQuestion = {
      ask: "read",
      name: file.name,
      bytes,
      ...(choice === undefined ? {} : { choice }),
    };
    worker.postMessage(question, [bytes]);
  });
};
