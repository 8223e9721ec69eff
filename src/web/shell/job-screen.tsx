import {
  lazy,
  type ReactNode,
  Suspense,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import type { Layout, Site } from "#engine";
import type { Calculator } from "../calculate/calculator.ts";
import { useCalculated } from "../calculate/use-calculated.ts";
import { StoreyCard } from "../cards/storey-card.tsx";
import type { Calculated, EditStep } from "../contract.ts";
import { Say } from "../fields/index.ts";
import type { JobSource } from "../jobs/open-job.ts";
import { nameOf, spokenOf } from "../plan/names.ts";
import { placeOf } from "../plan/pick.ts";
import { Plan } from "../plan/plan.tsx";
import { ThingsList } from "../plan/things-list.tsx";
import { type Insets, toPixel } from "../plan/view.ts";
import { preferences } from "../settings/preferences.ts";
import { t } from "../texts/index.ts";
import { actionsOn } from "./actions.ts";
import { Card, sheetMedia } from "./card.tsx";
import { useClearOfSheet } from "./clear-of-sheet.ts";
import { StageLine } from "./stage-line.tsx";
import { TopBar } from "./top-bar.tsx";
import { firstStorey, type Panel, usePart, workbenchOf } from "./workbench.ts";
import "./shell.css";

const ThingCard = lazy(() => import("../cards/thing-card.tsx").then((part) => ({ default: part.ThingCard })));
const FindingsList = lazy(() =>
  import("../findings/index.ts").then((part) => ({ default: part.FindingsList })),
);
const ModelsEditor = lazy(() =>
  import("../models/index.ts").then((part) => ({ default: part.ModelsEditor })),
);
const EyeView = lazy(() => import("../eye/index.ts").then((part) => ({ default: part.EyeView })));
const SettingsPanel = lazy(() => import("../settings/index.ts").then((part) => ({ default: part.Settings })));
const PlacePanel = lazy(() => import("../place/index.ts").then((part) => ({ default: part.PlacePanel })));

interface JobScreenProps {
  readonly source: JobSource;
  readonly calculator: Calculator;
  readonly fileText: () => Promise<string>;
  readonly onHome: () => void;
  /** How the job stands with the server, in a sentence. */
  readonly standing: string;
}

/** The open job: plan edge to edge, bars above and below, one floating card. */
export function JobScreen({ source, calculator, fileText, onHome, standing }: JobScreenProps) {
  const job = useSyncExternalStore(source.subscribe, source.current);
  const [store] = useState(() => workbenchOf(job));
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
  const onCard = useCallback(() => {
    card.current
      ?.querySelector<HTMLElement>(".card-body input, .card-body button, .card-body select")
      ?.focus();
  }, []);
  const bench = usePart(store, ({ selection, storey, stage, panel, finding }) => ({
    selection,
    storey,
    stage,
    panel,
    finding,
  }));
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
  const onPreview = useCallback(
    (room: string, layout: Layout | undefined): void => {
      store.set({ tried: layout && { room, layout } });
      calculator.live(layout ? triedSteps(store.get().job.site, room, layout) : []);
    },
    [store, calculator],
  );
  const onPrint = useCallback((): void => {
    const { job: now, storey: shown } = store.get();
    import("./print.ts")
      .then(({ printStorey }) => printStorey({ job: now, storey: shown, calculated: calculator.current() }))
      .catch((cause: unknown) => setTrouble(cause instanceof Error ? cause.message : String(cause)));
  }, [store, calculator]);
  useClearOfSheet({ store, actions, card, about: `${bench.panel.kind} ${bench.selection[0]?.id}` });
  const { site } = job;
  const first = bench.selection[0];
  const storey = site.storeys.find(({ id }) => id === bench.storey);
  const place = first && placeOf(site, first);
  const view = store.get().view;
  const eyed = bench.panel.kind === "eye" ? bench.panel.device : "";
  const title = titleOf();
  function titleOf(): string {
    switch (bench.panel.kind) {
      case "place":
      case "findings":
      case "models":
      case "eye":
      case "settings":
        return t(`shell.panel.${bench.panel.kind}`);
      case "thing":
      case "none":
        if (!first) return storey?.name ?? site.name;
        return bench.selection.length > 1
          ? t("card.many", { count: bench.selection.length })
          : nameOf(site, first);
    }
  }
  return (
    <div className="desk">
      <Plan store={store} calculator={calculator} actions={actions} insets={insets} onCard={onCard} />
      <TopBar
        store={store}
        actions={actions}
        fileText={fileText}
        onHome={onHome}
        onPrint={onPrint}
        standing={standing}
      />
      <ThingsList store={store} actions={actions} onPlan={onPlan} />
      <Card
        title={title}
        about={`${bench.panel.kind} ${first?.kind} ${first?.id}`}
        thing={place && toPixel(view, place)}
        size={
          bench.panel.kind === "thing" || bench.panel.kind === "none"
            ? "narrow"
            : bench.panel.kind === "models" || bench.panel.kind === "eye"
              ? "broad"
              : "wide"
        }
        cardRef={(element) => {
          card.current = element;
        }}
        {...(bench.panel.kind === "thing" && !first
          ? {}
          : { onClose: bench.panel.kind === "thing" ? () => actions.select([]) : close })}
      >
        <Suspense fallback={<p className="hint">{t("shell.loading")}</p>}>
          {bench.panel.kind === "place" ? (
            <PlacePanel
              job={job}
              calculations={calculator}
              rooms={bench.panel.rooms}
              onPreview={onPreview}
              onClose={close}
            />
          ) : bench.panel.kind === "findings" ? (
            <FindingsList
              job={job}
              findings={calculating.findings}
              current={bench.finding}
              onShow={(index) => actions.showFinding(index, calculating.findings)}
              onPlace={(room) => onPanel({ kind: "place", rooms: [room] })}
              onClose={close}
            />
          ) : bench.panel.kind === "models" ? (
            <ModelsEditor
              job={job}
              onClose={close}
              {...(bench.panel.model === undefined ? {} : { model: bench.panel.model })}
            />
          ) : bench.panel.kind === "eye" ? (
            <Known calculator={calculator}>
              {(calculated) => <EyeView job={job} device={eyed} calculated={calculated} onClose={close} />}
            </Known>
          ) : bench.panel.kind === "settings" ? (
            <SettingsPanel job={job} onClose={close} />
          ) : first ? (
            <ThingCard
              job={job}
              refs={bench.selection}
              calculator={calculator}
              actions={actions}
              onPanel={onPanel}
            />
          ) : (
            <Known calculator={calculator}>
              {(calculated) => (
                <StoreyCard
                  job={job}
                  storey={bench.storey}
                  stage={bench.stage}
                  calculated={calculated}
                  onPlace={(rooms) => onPanel({ kind: "place", rooms })}
                  onFindings={() => onPanel({ kind: "findings" })}
                  onDraw={() => actions.take({ kind: "add", what: "room" })}
                />
              )}
            </Known>
          )}
        </Suspense>
      </Card>
      {calculating.busy ? (
        <p className="working no-print" role="status">
          {t("shell.calculating")}
        </p>
      ) : null}
      {(trouble ?? calculating.sentence) ? (
        <div className="trouble no-print">
          <Say severity="must" live>
            {t("shell.trouble", { sentence: trouble ?? calculating.sentence ?? "" })}
          </Say>
        </div>
      ) : null}
      <StageLine store={store} actions={actions} findings={calculating.findings} />
      <p className="unseen" role="status">
        {first ? spokenOf(site, first, preferences().units) : ""}
      </p>
    </div>
  );
}

/** A part of the screen that follows all that is known: the rest stays as it is while a drag is calculated. */
function Known({
  calculator,
  children,
}: {
  readonly calculator: Calculator;
  readonly children: (calculated: Calculated) => ReactNode;
}) {
  return children(useSyncExternalStore(calculator.subscribe, calculator.current));
}

/** What taking a layout would do to the detectors of its room. */
const triedSteps = (site: Site, room: string, layout: Layout): EditStep[] => [
  ...site.detectors
    .filter((device) => device.room === room && !layout.devices.some(({ id }) => id === device.id))
    .map(({ id }): EditStep => ({ do: "remove", kind: "detectors", id })),
  ...layout.devices.map((record): EditStep => ({ do: "put", kind: "detectors", record })),
];
