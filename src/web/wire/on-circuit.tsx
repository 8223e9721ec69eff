import { Button } from "react-aria-components";
import { roomTitle } from "#engine";
import type { JobCircuit } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, Tick } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { t } from "../texts/wire.ts";
import { assignSteps, circuitOf } from "./assign.ts";

/** Rooms with luminaires: which of them this circuit feeds. On the plan one does the same by selecting. */
export function OnCircuit({
  job,
  circuit,
  actions,
}: {
  readonly job: OpenJob;
  readonly circuit: JobCircuit;
  readonly actions: Actions;
}) {
  const own = job.site.luminaires.filter((one) => circuitOf(job, one) === circuit.id);
  const rooms = job.site.rooms.flatMap((room) => {
    const there = job.site.luminaires.filter((one) => one.room === room.id);
    return there.length === 0
      ? []
      : [{ room, there, here: there.filter((one) => own.some(({ id }) => id === one.id)) }];
  });
  return (
    <div>
      {own.length > 0 ? (
        <Button
          className="button button-quiet"
          onPress={() => actions.select(own.map(({ id }) => ({ kind: "luminaires", id })))}
        >
          {t("wire.on.select", { count: own.length })}
        </Button>
      ) : null}
      <More word={t("wire.on.rooms")}>
        <div className="wire-rooms">
          {rooms.map(({ room, there, here }) => (
            <Tick
              key={room.id}
              on={here.length === there.length}
              disabled={job.readOnly}
              onChange={(on) =>
                job.edit(
                  "wire.edit.assign",
                  assignSteps(job.kept.circuits, on ? there : here, on ? circuit : undefined),
                )
              }
            >
              {roomTitle(room)}{" "}
              <span className="hint">{t("wire.on.count", { here: here.length, there: there.length })}</span>
            </Tick>
          ))}
        </div>
        <p className="hint">{t("wire.on.hint")}</p>
      </More>
    </div>
  );
}
