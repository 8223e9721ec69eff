import { useMemo } from "react";
import { Button } from "react-aria-components";
import {
  type Detector,
  type LensMask,
  lookUp,
  maskAgainstSource,
  masksAgainstFloor,
  type RoomCoverage,
  roomTitle,
  type Site,
} from "#engine";
import { t } from "../texts/eye.ts";
import { areaText, lengthText } from "../texts/index.ts";

interface MaskTargetsProps {
  readonly site: Site;
  readonly detector: Detector;
  readonly coverage: RoomCoverage | undefined;
  readonly units: "metric" | "imperial";
  readonly onMask: (masks: readonly LensMask[]) => void;
}

/** What the detector sees and should not: a mask for each at a press. */
export function MaskTargets({ site, detector, coverage, units, onMask }: MaskTargetsProps) {
  const targets = useMemo(
    () => (coverage === undefined ? [] : targetsOf(site, detector, coverage, units)),
    [site, detector, coverage, units],
  );
  if (coverage === undefined) return null;
  return (
    <section className="stack" aria-label={t("eye.blind")}>
      <h3 className="eye-part">{t("eye.blind")}</h3>
      {targets.length === 0 ? <p className="hint">{t("eye.blind.none")}</p> : null}
      <div className="row">
        {targets.map(({ key, word, masks }) =>
          masks === undefined ? (
            <p key={key} className="hint">
              {t("eye.blind.cannot", { name: word })}
            </p>
          ) : (
            <Button key={key} className="button" onPress={() => onMask(masks)}>
              {word}
            </Button>
          ),
        )}
      </div>
    </section>
  );
}

interface Target {
  readonly key: string;
  readonly word: string;
  /** Undefined: no mask helps. */
  readonly masks: readonly LensMask[] | undefined;
}

function targetsOf(
  site: Site,
  detector: Detector,
  coverage: RoomCoverage,
  units: MaskTargetsProps["units"],
): readonly Target[] {
  const look = lookUp(site);
  const rooms = coverage.spill
    .filter(({ devices }) => devices.includes(detector.id))
    .map(
      ({ room, region, area }): Target => ({
        key: `room ${room ?? ""}`,
        word: t("eye.blind.room", {
          name: room === null ? t("eye.blind.outside") : roomTitle(site.rooms.find(({ id }) => id === room)),
          area: areaText(area, units),
        }),
        masks: masksAgainstFloor(look, detector, { room, region }),
      }),
    );
  const sources = coverage.interference
    .filter(({ device }) => device === detector.id)
    .flatMap(({ source, distance }): readonly Target[] => {
      const found = site.interference.find(({ id }) => id === source);
      if (!found) return [];
      const mask = maskAgainstSource(look, detector, found);
      return [
        {
          key: `source ${source}`,
          word: t("eye.blind.source", {
            name: t(`interference.${found.kind}`),
            distance: lengthText(distance, units),
          }),
          masks: mask && [mask],
        },
      ];
    });
  return [...rooms, ...sources];
}
