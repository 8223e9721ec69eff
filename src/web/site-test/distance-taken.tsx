import { useState } from "react";
import { Button } from "react-aria-components";
import { distanceBetween, type Metres, type Point, type Site, type Station } from "#engine";
import { LengthField } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/test.ts";

interface DistanceTakenProps {
  readonly site: Site;
  readonly station: Station;
  readonly store: Store<Workbench>;
  readonly value: Metres | undefined;
  readonly onChange: (value: Metres | undefined) => void;
}

/** Where it reacted: typed, stepped by 10 cm from what is planned, or pointed at on the plan. */
export function DistanceTaken({ site, station, store, value, onChange }: DistanceTakenProps) {
  const [pointing, setPointing] = useState(false);
  const step = (by: Metres): void => {
    const from = value ?? station.planned ?? 0;
    onChange(Math.max(0, Math.round((value === undefined ? from : from + by) * 10) / 10));
  };
  const point = (): void => {
    setPointing(true);
    store.set({
      pointing: {
        for: station.id,
        take: (at) => {
          setPointing(false);
          store.set({ pointing: undefined });
          onChange(Math.round(takenAt(site, station, at) * 100) / 100);
        },
      },
    });
  };
  return (
    <div className="test-distance">
      <LengthField
        label={t(station.expected.kind === "lit-within" ? "test.distance.door" : "test.distance.device")}
        value={value}
        least={0}
        when="typing"
        onChange={onChange}
        onClear={() => onChange(undefined)}
      />
      <Button className="button test-step" aria-label={t("test.distance.less")} onPress={() => step(-0.1)}>
        −
      </Button>
      <Button className="button test-step" aria-label={t("test.distance.more")} onPress={() => step(0.1)}>
        +
      </Button>
      <Button className="button test-point" aria-pressed={pointing} onPress={point}>
        {t(pointing ? "test.distance.pointing" : "test.distance.point")}
      </Button>
    </div>
  );
}

/** Metres that a place on the plan means: along the way from the door, or from the detector. */
export function takenAt(site: Site, station: Station, at: Point): Metres {
  if (station.expected.kind === "seen-from") {
    const device = recordOf(site, "detectors", station.devices[0] ?? "");
    return device ? distanceBetween(device.at, at) : 0;
  }
  // The path begins outside the door; the metres count from the doorway, its second corner.
  let best = { off: Number.POSITIVE_INFINITY, along: 0 };
  let walked = 0;
  const path = station.path.slice(1);
  path.slice(1).forEach((to, i) => {
    const from = path[i] as Point;
    const length = distanceBetween(from, to);
    const share =
      length === 0
        ? 0
        : Math.min(
            1,
            Math.max(
              0,
              ((at[0] - from[0]) * (to[0] - from[0]) + (at[1] - from[1]) * (to[1] - from[1])) / length ** 2,
            ),
          );
    const foot: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    const off = distanceBetween(foot, at);
    if (off < best.off) best = { off, along: walked + share * length };
    walked += length;
  });
  return best.along;
}
