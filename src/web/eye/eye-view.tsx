import { useState } from "react";
import { Button } from "react-aria-components";
import type { LensMask, Room } from "#engine";
import { radiansOf } from "#engine";
import type { EyeViewProps } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { t } from "../texts/eye.ts";
import { EyeDisc } from "./eye-disc.tsx";
import { MaskFields } from "./mask-fields.tsx";
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
  const [selected, setSelected] = useState<number | undefined>();
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
      <Outcome room={room} calculated={calculated} />
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
    </div>
  );
}

interface OutcomeProps extends Pick<EyeViewProps, "calculated"> {
  readonly room: Room;
}

/** What the masks lead to: whether the room is still watched. */
function Outcome({ room, calculated }: OutcomeProps) {
  const coverage = calculated.rooms.get(room.id);
  if (coverage === undefined || calculated.busy) return <p className="hint">{t("eye.calculating")}</p>;
  const gaps = coverage.gaps.filter(({ tolerated }) => !tolerated).length;
  return (
    <div role="status">
      {gaps === 0 ? <p>{t("eye.no-gaps")}</p> : <Say severity="must">{t("eye.gaps", { count: gaps })}</Say>}
    </div>
  );
}
