import type { Detector, PlacementResult, Site } from "#engine";
import type { Calculated, Calculations, DeviceZones, EditStep, ModelRead, OpenJob } from "../contract.ts";
import { difference } from "../jobs/apply.ts";
import { t } from "../texts/index.ts";
import { oneLine } from "../texts/told.ts";
import { nothingCalculated } from "./calculated.ts";
import type {
  PlaceAnswer,
  PlaceQuestion,
  ReadAnswer,
  ReadQuestion,
  ReviewAnswer,
  ReviewQuestion,
} from "./protocol.ts";
import { RefusedFile } from "./refused-file.ts";

/** The workers behind the screen: one reviews the open job, others are made when needed and ended when stopped. */
export interface Calculator extends Omit<Calculations, "current"> {
  readonly current: () => Calculated;
  readonly subscribe: (listener: () => void) => () => void;
  /** Calculates this state of the open job; only what changed is sent. Undefined: no job is open. */
  readonly follow: (job: OpenJob | undefined) => void;
  /** Calculates what a drag would do if it ended now; no steps when it is over. */
  readonly live: (steps: readonly EditStep[]) => void;
}

/** Answers for single rooms that come within this time are drawn together. [ms] */
const gatherFor = 120;

export function startCalculator(): Calculator {
  let current: Calculated = nothingCalculated;
  let settled: Calculated = nothingCalculated;
  let followed: { readonly id: string; readonly site: Site; readonly revision: number } | undefined;
  let worker: Worker | undefined;
  let turn = 0;
  let liveBusy = false;
  let liveNext: readonly EditStep[] | undefined;
  /** What the drag that goes on would change, as last heard: it lies over what is settled until the drag is over. */
  let dragged: LiveAnswer | undefined;
  let tryTurn = 0;
  let tries: { readonly turn: number; readonly settle: (zones: DeviceZones | undefined) => void } | undefined;
  const listeners = new Set<() => void>();
  let gathering: ReturnType<typeof setTimeout> | undefined;

  const show = (next: Calculated): void => {
    clearTimeout(gathering);
    gathering = undefined;
    current = dragged ? overlaid(next, dragged) : next;
    for (const listener of listeners) listener();
  };
  /** The rooms of a building answer one by one: the screen draws several of them at once. */
  const showSoon = (): void => {
    gathering ??= setTimeout(() => show(settled), gatherFor);
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
      settled = { ...settled, busy: false, trouble: event.message };
      show(settled);
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
        showSoon();
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
        // An answer is shown even when the hand has gone on meanwhile: the zones follow, however slow the machine.
        if (answer.turn === turn) {
          dragged = answer;
          show(settled);
        }
        if (liveNext) sendLive();
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
        settled = { ...settled, busy: false, trouble: answer.sentence };
        show(settled);
        if (liveNext) sendLive();
    }
  };
  const sendLive = (): void => {
    if (!liveNext || !followed) return;
    const steps = liveNext;
    liveNext = undefined;
    liveBusy = true;
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
        dragged = undefined;
        liveNext = undefined;
        liveBusy = false;
        turn += 1;
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
      // What was shown while dragging stays until the newer answer comes.
      settled = { ...settled, rooms: current.rooms, zones: current.zones, busy: true };
      dragged = undefined;
      if (followed?.id === id) {
        const steps = difference(followed.site, site);
        const defaults = site.defaults === followed.site.defaults ? {} : { defaults: site.defaults };
        followed = { id, site, revision };
        ask({ ask: "change", revision, steps, ...defaults });
      } else {
        settled = { ...nothingCalculated, busy: true };
        followed = { id, site, revision };
        ask({ ask: "site", revision, site });
      }
      show(settled);
    },
    live: (steps) => {
      if (steps.length === 0) {
        // An answer that is still under way belongs to a drag that is over.
        liveNext = undefined;
        turn += 1;
        dragged = undefined;
        if (current !== settled) show(settled);
        return;
      }
      liveNext = steps;
      if (!liveBusy) sendLive();
    },
    tryDevice: (site: Site, device: Detector) =>
      new Promise((settle) => {
        tries?.settle(undefined);
        tryTurn += 1;
        tries = { turn: tryTurn, settle };
        ask({ ask: "device", turn: tryTurn, site, device });
      }),
    place,
    readModel,
  };
}

type LiveAnswer = Extract<ReviewAnswer, { tell: "live" }>;

/** What is known, with what a drag would change in it. */
function overlaid(known: Calculated, live: LiveAnswer): Calculated {
  const rooms = new Map(known.rooms);
  for (const seen of live.coverage) {
    const before = rooms.get(seen.room);
    if (before) rooms.set(seen.room, { ...before, ...seen });
  }
  const zones = new Map(known.zones);
  for (const [id, device] of live.zones) zones.set(id, device);
  return { ...known, rooms, zones };
}

const kept = <T>(map: ReadonlyMap<string, T>, ids: ReadonlySet<string>): ReadonlyMap<string, T> =>
  [...map.keys()].every((id) => ids.has(id)) ? map : new Map([...map].filter(([id]) => ids.has(id)));

/** After a stop the worker gets this long to hand over the best so far: the layout of a hall is judged in seconds where the machine is slow. [ms] */
const grace = 8000;

const place: Calculations["place"] = (site, options, { progress, signal }) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./place-worker.ts", import.meta.url), {
      type: "module",
      name: "place",
    });
    const ask = (question: PlaceQuestion): void => worker.postMessage(question);
    const halt = crossOriginIsolated ? new Int32Array(new SharedArrayBuffer(4)) : undefined;
    let giveUp: ReturnType<typeof setTimeout> | undefined;
    const end = (): void => {
      clearTimeout(giveUp);
      signal.removeEventListener("abort", stop);
      worker.terminate();
    };
    const stop = (): void => {
      ask({ ask: "stop" });
      if (halt) Atomics.store(halt, 0, 1);
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
    ask({ ask: "place", site, options, halt });
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
      reject(new Error(t("home.model.hung")));
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
      else if (data.tell === "failed") reject(new Error(data.sentence));
      else reject(new RefusedFile(data.problems.map(oneLine), data.scan));
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
