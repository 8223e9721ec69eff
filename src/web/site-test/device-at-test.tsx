import { useState } from "react";
import { Button } from "react-aria-components";
import { roomTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { type Panel, type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/test.ts";
import { placeName } from "./step-words.ts";
import { stepsAt, type WorkPlace, workOf } from "./work.ts";
import "./site-test.css";

interface DeviceAtTestProps {
  readonly job: OpenJob;
  readonly device: string;
  readonly store: Store<Workbench>;
}

/** What is to be done at a detector on site: where its label leads. */
export function DeviceAtTest({ job, device, store }: DeviceAtTestProps) {
  const settings = usePart(store, (bench) => bench.settings);
  const [work] = useState(workOf);
  const record = job.site.detectors.find(({ id }) => id === device);
  const room = job.site.rooms.find(({ id }) => id === record?.room);
  if (!record || !room) return null;
  const state = work(job, settings);
  const show = (panel: Panel): void => store.set({ panel });
  // The groups of circuits that have a step at this very device, and its room with the power on.
  const groups = new Set(
    state.order.steps
      .filter(({ about }) => about.kind === "detector" && about.id === device)
      .flatMap((step) => step.groups),
  );
  const places: readonly WorkPlace[] = [
    ...[...groups].map((id): WorkPlace => ({ kind: "group", id })),
    { kind: "room", id: room.id },
  ];
  return (
    <div className="test-ways test-ways-above">
      <Button className="button" onPress={() => show({ kind: "walk", room: room.id })}>
        {t("test.work.walk", { room: roomTitle(room) })}
      </Button>
      {places
        .filter((at) => stepsAt(state, at).length > 0)
        .map((at) => (
          <Button key={at.id} className="button" onPress={() => show({ kind: "work", at })}>
            {t("test.work.at", { place: placeName(job, state, at) })}
          </Button>
        ))}
      <Button className="button" onPress={() => show({ kind: "fault", room: room.id })}>
        {t("test.wrong")}
      </Button>
    </div>
  );
}
