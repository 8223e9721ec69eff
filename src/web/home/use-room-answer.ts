import { useEffect, useState } from "react";
import type { PlacementResult, Site } from "#engine";
import type { Calculations, DeviceZones } from "../contract.ts";
import { tagged } from "../place/take-layout.ts";

/** What is known of the room that was typed: being placed, placed, or why not. */
export type RoomAnswer =
  | { readonly state: "placing"; readonly best: number | undefined }
  | {
      readonly state: "placed";
      readonly site: Site;
      readonly result: PlacementResult;
      readonly zones: ReadonlyMap<string, DeviceZones>;
    }
  | { readonly state: "failed"; readonly message: string };

/** The answer has to come at once: what is not proved by then is said to be not proved. [s] */
export const atOnce = 8;
/** For one who asks for it. [s] */
export const withPatience = 60;
/** Long enough that a figure of two digits is not placed after its first. */
const pauseBeforePlacing = 350;

/** Places the one room of a site whenever the site changes; the older run is stopped. */
export function useRoomAnswer(
  site: Site | undefined,
  calculations: Calculations,
  seconds: number,
): RoomAnswer | undefined {
  const [answer, setAnswer] = useState<RoomAnswer | undefined>();
  const { place, tryDevice } = calculations;
  useEffect(() => {
    if (site === undefined) {
      setAnswer(undefined);
      return;
    }
    const stop = new AbortController();
    setAnswer({ state: "placing", best: undefined });
    const timer = setTimeout(() => {
      run({ site, seconds }, { place, tryDevice }, stop.signal, setAnswer).catch((trouble: unknown) => {
        if (!stop.signal.aborted)
          setAnswer({
            state: "failed",
            message: trouble instanceof Error ? trouble.message : String(trouble),
          });
      });
    }, pauseBeforePlacing);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [site, seconds, place, tryDevice]);
  return answer;
}

async function run(
  { site, seconds }: { readonly site: Site; readonly seconds: number },
  calculations: Pick<Calculations, "place" | "tryDevice">,
  signal: AbortSignal,
  say: (answer: RoomAnswer) => void,
): Promise<void> {
  const room = site.rooms[0]!.id;
  const found = await calculations.place(
    site,
    { room, seconds, seed: 1, bound: "candidates", alternatives: 0 },
    {
      progress: ({ best }) => {
        if (!signal.aborted) say({ state: "placing", best });
      },
      signal,
    },
  );
  if (signal.aborted) return;
  const best = found.best && { ...found.best, devices: tagged(site, found.best.devices) };
  const result: PlacementResult = { ...found, best };
  const zones = new Map<string, DeviceZones>();
  say({ state: "placed", site, result, zones });
  const devices = result.best?.devices ?? [];
  for (const device of devices) {
    const zone = await calculations.tryDevice({ ...site, detectors: devices }, device);
    if (signal.aborted) return;
    if (zone !== undefined) zones.set(device.id, zone);
  }
  say({ state: "placed", site: { ...site, detectors: devices }, result, zones: new Map(zones) });
}
