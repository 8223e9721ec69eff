import { useState } from "react";
import { Button } from "react-aria-components";
import type { LensMask, Room, RoomCoverage } from "#engine";
import { radiansOf } from "#engine";
import type { EyeViewProps } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { t } from "../texts/eye.ts";
import { areaText, type Units } from "../texts/index.ts";
import { EyeDisc } from "./eye-disc.tsx";
import { MaskFields } from "./mask-fields.tsx";
import { MaskTargets } from "./mask-targets.tsx";
import { PrintTemplate } from "./print-template.tsx";
import "./eye.css";

/** A mask to begin with where nobody drags one: a twelfth of a turn at the horizon. */
const firstMask: LensMask = {
  from: radiansOf(345),
  to: radiansOf(15),
  inner: radiansOf(60),
  outer: radiansOf(90),
};

/** What a detector sees of its room, from straight down in the middle to the horizon at the rim; masks are drawn into it. */
export function EyeView({ job, device, calculated, onClose }: EyeViewProps) {
  const detector = job.site.detectors.find(({ id }) => id === device);
  const room = job.site.rooms.find(({ id }) => id === detector?.room);
  const units = useUnits();
  const [selected, setSelected] = useState<number | undefined>();
  const [before, setBefore] = useState<Covered | undefined>();
  if (detector === undefined || room === undefined)
    return (
      <div className="eye stack">
        <Say severity="should">{t("eye.gone")}</Say>
        <Button className="button" onPress={onClose}>
          {t("eye.close")}
        </Button>
      </div>
    );
  const setMasks = (masks: readonly LensMask[]) =>
    job.edit("eye.edit.masks", [{ do: "set", kind: "detectors", id: detector.id, fields: { masks } }]);
  const add = (mask: LensMask) => {
    setMasks([...detector.masks, mask]);
    setSelected(detector.masks.length);
  };
  const coverage = calculated.rooms.get(room.id);
  const blind = (masks: readonly LensMask[]) => {
    setBefore(coverage?.covered);
    setMasks([...detector.masks, ...masks]);
    setSelected(undefined);
  };
  return (
    <div className="eye stack">
      <div className="row row-apart">
        <h2 className="eye-title">{t("eye.title", { tag: detector.tag })}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("eye.close")}
        </Button>
      </div>
      <EyeDisc
        site={job.site}
        detector={detector}
        room={room}
        zones={calculated.zones.get(detector.id) ?? {}}
        selected={selected}
        onSelect={setSelected}
        onDraw={job.readOnly ? undefined : add}
      />
      <p className="hint">
        {(["towards", "seated"] as const)
          .filter((kind) => calculated.zones.get(detector.id)?.[kind] !== undefined)
          .map((kind) => (
            <span key={kind} className={`zone-word zone-word-${kind}`}>
              {t(`zone.${kind}`)}
            </span>
          ))}
        {t(job.readOnly ? "eye.how.look" : "eye.how")}
      </p>
      <Outcome room={room} calculated={calculated} before={before} units={units} />
      {job.readOnly ? null : (
        <MaskTargets
          site={job.site}
          detector={detector}
          coverage={calculated.busy ? undefined : coverage}
          units={units}
          onMask={blind}
        />
      )}
      <MaskFields
        masks={detector.masks}
        selected={selected}
        readOnly={job.readOnly}
        onSelect={setSelected}
        onAdd={() => add(firstMask)}
        onChange={(index, mask) => setMasks(detector.masks.map((old, at) => (at === index ? mask : old)))}
        onRemove={(index) => {
          setMasks(detector.masks.filter((_, at) => at !== index));
          setSelected(undefined);
        }}
      />
      {detector.masks.length === 0 ? null : <PrintTemplate job={job} device={detector.id} />}
    </div>
  );
}

type Covered = RoomCoverage["covered"];

interface OutcomeProps extends Pick<EyeViewProps, "calculated"> {
  readonly room: Room;
  /** Before masks were made at a press; undefined: none were. */
  readonly before: Covered | undefined;
  readonly units: Units;
}

/** Less than this is rounding. [m²] */
const noArea = 0.005;

/** What the masks lead to: whether the room is still watched. */
function Outcome({ room, calculated, before, units }: OutcomeProps) {
  const coverage = calculated.rooms.get(room.id);
  if (coverage === undefined || calculated.busy) return <p className="hint">{t("eye.calculating")}</p>;
  const gaps = coverage.gaps.filter(({ tolerated }) => !tolerated).length;
  return (
    <div role="status">
      {gaps === 0 ? <p>{t("eye.no-gaps")}</p> : <Say severity="must">{t("eye.gaps", { count: gaps })}</Say>}
      {before === undefined ? null : <Lost before={before} after={coverage.covered} units={units} />}
    </div>
  );
}

interface LostProps {
  readonly before: Covered;
  readonly after: Covered;
  readonly units: Units;
}

/** What masks took besides what they were made for. */
function Lost({ before, after, units }: LostProps) {
  const [walk, hold] = [Math.max(0, before.walk - after.walk), Math.max(0, before.hold - after.hold)];
  if (walk < noArea && hold < noArea) return <p>{t("eye.lost.none")}</p>;
  const figures = { walk: areaText(walk, units), hold: areaText(hold, units) };
  const kind = hold < noArea ? "walk" : walk < noArea ? "hold" : "both";
  return <Say severity="should">{t(`eye.lost.${kind}`, figures)}</Say>;
}
