import { useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { Layout, Site } from "#engine";
import { jobFileName } from "#job";
import { whenSettled } from "../calculate/calculated.ts";
import type { Calculator } from "../calculate/calculator.ts";
import { useCalculated } from "../calculate/use-calculated.ts";
import { useFollowed } from "../calculate/use-followed.ts";
import type { EditStep } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { saveFile } from "../fields/save-file.ts";
import type { JobSource } from "../jobs/open-job.ts";
import { inputOn } from "../plan/input.ts";
import { nameOf, spokenOf } from "../plan/names.ts";
import { placeOf } from "../plan/pick.ts";
import { Plan } from "../plan/plan.tsx";
import { ThingsList } from "../plan/things-list.tsx";
import { rest } from "../plan/tools/state.ts";
import { type Insets, toPixel } from "../plan/view.ts";
import { preferences } from "../settings/preferences.ts";
import { t } from "../texts/index.ts";
import { actionsOn } from "./actions.ts";
import { Card, sheetMedia } from "./card.tsx";
import { useClearOfSheet } from "./clear-of-sheet.ts";
import { useKeysToPlan } from "./keys-to-plan.ts";
import { Notice } from "./notice.tsx";
import { type FileOf, type KnownJob, PanelBody, type ReadCopy } from "./panel-body.tsx";
import { StageLine } from "./stage-line.tsx";
import { TopBar } from "./top-bar.tsx";
import { findingsHere, firstStorey, type Panel, usePart, workbenchOf } from "./workbench.ts";
import "./shell.css";

interface JobScreenProps {
  readonly source: JobSource;
  readonly calculator: Calculator;
  /** The whole job as one file: readable, or packed with its history. */
  readonly fileOf: FileOf;
  readonly readCopy: ReadCopy;
  /** The id under which a job is kept here, by its identity. */
  readonly known: KnownJob;
  readonly onHome: () => void;
  /** How the job stands with the server, in a sentence. */
  readonly standing: string;
  /** What the card shows first. */
  readonly begin: "thing" | "visit";
}

/** The open job: plan edge to edge, bars above and below, one floating card. */
export function JobScreen(props: JobScreenProps) {
  const { source, calculator, fileOf, onHome, standing, begin } = props;
  const job = useSyncExternalStore(source.subscribe, source.current);
  const [store] = useState(() => workbenchOf(job, begin));
  const calculating = useCalculated(calculator, ({ busy, trouble: sentence, findings }) => ({
    busy,
    sentence,
    findings,
  }));
  const card = useRef<HTMLElement | null>(null);
  const [trouble, setTrouble] = useState<string | undefined>();

  useEffect(() => {
    const follow = (): void => {
      const now = source.current();
      const { storey } = store.get();
      const there = now.site.storeys.some(({ id }) => id === storey);
      store.set({ job: now, ...(there ? {} : { storey: firstStorey(now) }) });
      calculator.follow(now);
    };
    follow();
    return source.subscribe(follow);
  }, [source, store, calculator]);
  useEffect(() => () => calculator.follow(undefined), [calculator]);

  const besideTrouble = useFollowed({ store, calculator });

  const insets = useCallback((): Insets => {
    const sheet = matchMedia(sheetMedia).matches;
    const beside = !sheet && globalThis.innerWidth > 1000;
    return {
      left: 0,
      right: beside ? Math.min(432, card.current?.offsetWidth ?? 320) + 32 : 0,
      top: 52,
      bottom: sheet ? 201 : 52,
    };
  }, []);
  const actions = useMemo(() => actionsOn(store, insets), [store, insets]);
  const input = useMemo(
    () => inputOn({ store, calculator, actions, insets }),
    [store, calculator, actions, insets],
  );
  const onCard = useCallback(() => {
    card.current
      ?.querySelector<HTMLElement>(".card-body input, .card-body button, .card-body select")
      ?.focus();
  }, []);
  const bench = usePart(store, ({ selection, storey, stage, panel, finding, tool, wiring, settings }) => ({
    selection,
    storey,
    stage,
    panel,
    finding,
    tool,
    wiring,
    settings,
  }));
  const sentence = trouble ?? calculating.sentence ?? besideTrouble;
  const drawing = bench.tool.kind === "add" ? bench.tool : undefined;
  const onPanel = (panel: Panel): void =>
    store.set({ panel, ...(panel.kind === "place" ? {} : { tried: undefined }) });
  const close = (): void => {
    onPanel({ kind: "thing" });
    store.set({ finding: undefined });
    // The keyboard goes on where the panel was called from.
    onPlan();
  };
  const onPlan = useCallback(
    (): void => document.querySelector<HTMLElement>(".plan")?.focus({ preventScroll: true }),
    [],
  );
  useKeysToPlan(bench.tool, onPlan);
  const onPreview = useCallback(
    (room: string, layout: Layout | undefined): void => {
      store.set({ tried: layout && { room, layout } });
      calculator.live(layout ? triedSteps(store.get().job.site, room, layout) : []);
    },
    [store, calculator],
  );
  const onPrint = useCallback((): void => {
    const { storey: shown } = store.get();
    if (calculator.current().busy) store.set({ notice: t("shell.print.waits") });
    Promise.all([import("./print.ts"), whenSettled(calculator)])
      .then(([{ printStorey }, calculated]) => {
        store.set({ notice: undefined });
        return printStorey({ job: store.get().job, storey: shown, calculated });
      })
      .catch((cause: unknown) => setTrouble(cause instanceof Error ? cause.message : String(cause)));
  }, [store, calculator]);
  const onSave = useCallback(
    (as: "json" | "zip"): void => {
      fileOf(as).then(
        (text) =>
          saveFile({
            name: jobFileName(store.get().job.site.name, as),
            text,
            ...(as === "zip" ? { type: "application/zip" } : {}),
          }),
        (cause: unknown) =>
          store.set({
            notice: t("shell.not-saved", { reason: cause instanceof Error ? cause.message : String(cause) }),
          }),
      );
    },
    [store, fileOf],
  );
  useClearOfSheet({ store, actions, card, about: `${bench.panel.kind} ${bench.selection[0]?.id}` });
  const { site } = job;
  const first = bench.selection[0];
  const storey = site.storeys.find(({ id }) => id === bench.storey);
  const place = first && placeOf(site, first);
  const view = store.get().view;
  /** The wiring or the settings of the whole job stand where in other stages the storey does. */
  const whole = bench.stage === "survey" || bench.stage === "place" ? undefined : bench.stage;
  const roomy =
    (whole !== undefined && !first) || (whole === "set" && first?.kind === "detectors") ? whole : undefined;
  const title = titleOf();
  function titleOf(): string {
    if (drawing) return t(`plan.add.${drawing.what}`);
    switch (bench.panel.kind) {
      case "place":
      case "findings":
      case "models":
      case "eye":
      case "settings":
      case "phone":
      case "scan":
      case "day":
      case "walk":
      case "work":
      case "fault":
      case "swap":
      case "call-back":
      case "care":
      case "drawings":
      case "rooms":
      case "visit":
      case "notes":
        return t(`shell.panel.${bench.panel.kind}`);
      case "thing":
      case "none":
        if (!first) return whole ? t(`shell.panel.${whole}`) : (storey?.name ?? site.name);
        return bench.selection.length > 1
          ? t("card.many", { count: bench.selection.length })
          : nameOf(site, first);
    }
  }
  return (
    <div className="desk">
      <Plan
        store={store}
        calculator={calculator}
        actions={actions}
        insets={insets}
        input={input}
        onCard={onCard}
      />
      <TopBar
        store={store}
        actions={actions}
        onSave={onSave}
        onHome={onHome}
        onPrint={onPrint}
        standing={standing}
      />
      <ThingsList store={store} actions={actions} onPlan={onPlan} />
      <Card
        title={title}
        about={drawing ? `add ${drawing.what}` : `${bench.panel.kind} ${first?.kind} ${first?.id}`}
        thing={drawing ? undefined : place && toPixel(view, place)}
        size={
          drawing || ((bench.panel.kind === "thing" || bench.panel.kind === "none") && !roomy)
            ? "narrow"
            : bench.panel.kind === "models" ||
                bench.panel.kind === "eye" ||
                bench.panel.kind === "rooms" ||
                bench.panel.kind === "day"
              ? "broad"
              : "wide"
        }
        drawing={drawing !== undefined}
        onLeave={onPlan}
        cardRef={(element) => {
          card.current = element;
        }}
        {...(drawing
          ? { onClose: () => store.set({ tool: { kind: "select" }, toolState: rest }) }
          : bench.panel.kind === "thing" && !first
            ? {}
            : { onClose: bench.panel.kind === "thing" ? () => actions.select([]) : close })}
      >
        <PanelBody
          job={job}
          store={store}
          actions={actions}
          calculator={calculator}
          findings={findingsHere(bench, calculating)}
          drawing={drawing}
          input={input}
          onPanel={onPanel}
          onPreview={onPreview}
          fileOf={fileOf}
          readCopy={props.readCopy}
          known={props.known}
          onClose={close}
        />
      </Card>
      {calculating.busy ? (
        <p className="working no-print" role="status">
          {t("shell.calculating")}
        </p>
      ) : null}
      {sentence ? (
        <div className="trouble no-print">
          <Say severity="must" live>
            {t("shell.trouble", { sentence })}
          </Say>
        </div>
      ) : null}
      <Notice store={store} />
      <StageLine store={store} actions={actions} findings={calculating.findings} />
      <p className="unseen" role="status">
        {first ? spokenOf(site, first, preferences().units) : ""}
      </p>
    </div>
  );
}

/** What taking a layout would do to the detectors of its room. */
const triedSteps = (site: Site, room: string, layout: Layout): EditStep[] => [
  ...site.detectors
    .filter((device) => device.room === room && !layout.devices.some(({ id }) => id === device.id))
    .map(({ id }): EditStep => ({ do: "remove", kind: "detectors", id })),
  ...layout.devices.map((record): EditStep => ({ do: "put", kind: "detectors", record })),
];
