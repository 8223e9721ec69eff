import type { RoomCoverage, Site } from "#engine";
import { breath } from "../breath.ts";
import type { DeviceZones } from "../contract.ts";
import { applied } from "../jobs/apply.ts";
import { allFindings, roomKeeper, zonesOf } from "./engine-ways.ts";
import type { ReviewAnswer, ReviewQuestion } from "./protocol.ts";
import { roomParts, sameParts } from "./room-key.ts";

/** Calculates the open job room by room, and what a drag would do in between. Only what changed is calculated again. */
interface Known {
  readonly parts: readonly unknown[];
  readonly coverage: RoomCoverage;
  readonly zones: readonly (readonly [string, DeviceZones])[];
}

let site: Site | undefined;
let revision = 0;
const known = new Map<string, Known>();
const rooms = roomKeeper();
let waiting: string[] = [];
let live: Extract<ReviewQuestion, { ask: "live" }> | undefined;
let device: Extract<ReviewQuestion, { ask: "device" }> | undefined;
let running = false;

const tell = (answer: ReviewAnswer): void => postMessage(answer);

addEventListener("message", ({ data }: MessageEvent<ReviewQuestion>) => {
  switch (data.ask) {
    case "site":
      known.clear();
      rooms.forget();
      take(data.site, data.revision);
      break;
    case "change":
      if (!site) return;
      take(
        { ...applied(site, data.steps), ...(data.defaults ? { defaults: data.defaults } : {}) },
        data.revision,
      );
      break;
    case "live":
      live = data;
      break;
    case "device":
      device = data;
  }
  if (!running) void work();
});

function take(next: Site, to: number): void {
  site = next;
  revision = to;
  live = undefined;
  waiting = next.rooms.map(({ id }) => id);
  const there = new Set(waiting);
  for (const id of known.keys()) if (!there.has(id)) known.delete(id);
  // Without rooms there is nothing to wait for.
  if (waiting.length === 0) tellDone(next);
}

/** One room at a time; between two rooms newer questions are heard. A drag comes before the rest. */
async function work(): Promise<void> {
  running = true;
  while (live || device || waiting.length > 0) {
    try {
      if (live) answerLive();
      else if (device) answerDevice();
      else reviewNext();
    } catch (trouble) {
      tell({
        tell: "trouble",
        revision,
        sentence: trouble instanceof Error ? trouble.message : String(trouble),
      });
      live = undefined;
      device = undefined;
    }
    await breath();
  }
  running = false;
}

function reviewNext(): void {
  const id = waiting.shift();
  if (!site || id === undefined) return;
  const parts = roomParts(site, id);
  let result = known.get(id);
  if (!result || !sameParts(result.parts, parts)) {
    const own = site;
    const coverage = rooms.coverage(own, id);
    const zones = own.detectors
      .filter(({ room }) => room === id)
      .map((one) => [one.id, zonesOf(own, one)] as const);
    result = { parts, coverage, zones };
    known.set(id, result);
    tell({ tell: "room", revision, coverage, zones });
  }
  if (waiting.length === 0) tellDone(site);
}

function tellDone(of: Site): void {
  const findings = allFindings(
    of,
    [...known.values()].map(({ coverage }) => coverage),
  );
  tell({ tell: "done", revision, findings, rooms: [...known.keys()] });
}

function answerLive(): void {
  const question = live;
  live = undefined;
  if (!question || !site || question.revision !== revision || question.steps.length === 0) return;
  const next = applied(site, question.steps);
  const [before, after] = [byId(site), byId(next)];
  const moved = next.detectors.filter((one) => before.get(one.id) !== one);
  const gone = site.detectors.filter((one) => after.get(one.id) !== one);
  const there = new Set(next.rooms.map(({ id }) => id));
  const touched = new Set(
    [...moved, ...gone].flatMap(({ room, controls }) => [room, ...controls]).filter((id) => there.has(id)),
  );
  const zones = moved.map((one) => [one.id, zonesOf(next, one)] as const);
  tell({
    tell: "live",
    turn: question.turn,
    zones,
    coverage: [...touched].map((id) => {
      const { demand: _, checks: __, problems: ___, ...seen } = rooms.coverage(next, id);
      return seen;
    }),
  });
}

const byId = (of: Site): ReadonlyMap<string, Site["detectors"][number]> =>
  new Map(of.detectors.map((one) => [one.id, one]));

function answerDevice(): void {
  const question = device;
  device = undefined;
  if (!question) return;
  const { detectors } = question.site;
  const there = detectors.some(({ id }) => id === question.device.id);
  const next = {
    ...question.site,
    detectors: there
      ? detectors.map((one) => (one.id === question.device.id ? question.device : one))
      : [...detectors, question.device],
  };
  tell({ tell: "device", turn: question.turn, zones: zonesOf(next, question.device) });
}
