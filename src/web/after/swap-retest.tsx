import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { controlledRooms, type Detector, roomTitle } from "#engine";
import type { PlannedWalk } from "../calculate/walk-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { saveFile } from "../fields/save-file.ts";
import { makePapers, type PapersUnderWay } from "../hand-over/make-papers.ts";
import { recordOf } from "../plan/pick.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { useWalks } from "../site-test/use-walks.ts";
import { verdictOf } from "../site-test/verdicts.ts";
import { workOf } from "../site-test/work.ts";
import { t } from "../texts/after.ts";

interface SwapRetestProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly device: Detector;
}

/** What is to be done once a device was exchanged: its setting sheet, its steps, and the stations that name it. */
export function SwapRetest({ job, store, device }: SwapRetestProps) {
  const { settings, walks } = usePart(store, (bench) => ({ settings: bench.settings, walks: bench.walks }));
  const [work] = useState(workOf);
  const rooms = controlledRooms(device);
  const trouble = useWalks(store, rooms);
  const state = work(job, settings);
  const group = state.order.groups.find(({ detectors }) => detectors.some(({ id }) => id === device.id));
  const own = [...state.steps.values()].filter(
    ({ step }) => step.about.kind === "detector" && step.about.id === device.id,
  );
  const open = own.filter(({ status }) => status !== "done" && status !== "not-applicable").length;
  return (
    <section className="stack" aria-label={t("after.swap.next")}>
      <h3 className="test-stage">{t("after.swap.next")}</h3>
      <SheetButton job={job} device={device} />
      {group ? (
        <Button
          className="button wide-button"
          onPress={() =>
            store.set({ stage: "test", panel: { kind: "work", at: { kind: "group", id: group.id } } })
          }
        >
          {open === 0
            ? t("after.swap.steps.none", { tag: device.tag })
            : t("after.swap.steps", { count: open })}
        </Button>
      ) : null}
      {trouble ? <p className="hint">{trouble}</p> : null}
      {rooms.map((room) => {
        const planned = walks.of === job.site ? walks.rooms.get(room) : undefined;
        const retest = planned && retestOf(job, planned, device.id);
        return (
          <Button
            key={room}
            className="button wide-button"
            isDisabled={!retest}
            onPress={() =>
              store.set({
                stage: "test",
                panel: { kind: "walk", room, ...(retest?.all === 0 ? { full: true as const } : {}) },
              })
            }
          >
            {retestWords(roomTitle(recordOf(job.site, "rooms", room)), device.tag, retest)}
          </Button>
        );
      })}
    </section>
  );
}

interface Retest {
  readonly all: number;
  readonly open: number;
}

/** Stations of a room's test that name a device, and those of them that nobody has walked since it hangs there. */
function retestOf(job: OpenJob, planned: PlannedWalk, device: string): Retest {
  const own = verdictOf(job, planned).stations.filter(({ station }) => station.devices.includes(device));
  return { all: own.length, open: own.filter(({ check }) => check.verdict === "not-proven").length };
}

function retestWords(room: string, tag: string, retest: Retest | undefined): string {
  if (!retest) return t("after.swap.walk.planning", { room });
  if (retest.all === 0) return t("after.swap.walk.full", { room, tag });
  return retest.open === 0
    ? t("after.swap.walk.done", { room, count: retest.all })
    : t("after.swap.walk", { room, count: retest.open });
}

/** The setting sheet of one device, made on this device. */
function SheetButton({ job, device }: { readonly job: OpenJob; readonly device: Detector }) {
  const [said, setSaid] = useState("");
  const underWay = useRef<PapersUnderWay | undefined>(undefined);
  useEffect(() => () => underWay.current?.stop(), []);
  const make = (): void => {
    setSaid(t("after.swap.sheet.making"));
    const now = makePapers(job, {
      only: ["setting-sheets.pdf"],
      device: device.id,
      progress: () => undefined,
    });
    underWay.current = now;
    now.made.then(
      ({ name, type, bytes }) => {
        const file = name.replace(".pdf", `-${device.tag.replace(/[^\w.-]+/g, "-")}.pdf`);
        saveFile({ name: file, text: bytes, type });
        setSaid(t("after.swap.sheet.saved", { file }));
      },
      (cause: unknown) =>
        setSaid(
          t("after.swap.sheet.trouble", { reason: cause instanceof Error ? cause.message : String(cause) }),
        ),
    );
  };
  return (
    <>
      <Button className="button button-first wide-button" onPress={make}>
        {t("after.swap.sheet", { tag: device.tag })}
      </Button>
      {said === "" ? null : (
        <p className="hint" role="status">
          {said}
        </p>
      )}
    </>
  );
}
