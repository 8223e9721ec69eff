import { lazy, type ReactNode, Suspense, useSyncExternalStore } from "react";
import type { Finding, Layout } from "#engine";
import type { Calculator } from "../calculate/calculator.ts";
import { StoreyCard } from "../cards/storey-card.tsx";
import type { Calculated, HomeShelf, OpenJob, RecordKind } from "../contract.ts";
import { type Input, rest, type Tool } from "../plan/tools/state.ts";
import type { SurveyPanelProps } from "../survey/panel.ts";
import { t } from "../texts/index.ts";
import type { Actions } from "./actions.ts";
import { PartBoundary } from "./part-boundary.tsx";
import { pasteInView } from "./paste-in-view.ts";
import { type Panel, type Store, usePart, type Workbench } from "./workbench.ts";

const ThingCard = lazy(() => import("../cards/thing-card.tsx").then((part) => ({ default: part.ThingCard })));
const FindingsList = lazy(() =>
  import("../findings/index.ts").then((part) => ({ default: part.FindingsList })),
);
const ModelsEditor = lazy(() =>
  import("../models/index.ts").then((part) => ({ default: part.ModelsEditor })),
);
const EyeView = lazy(() => import("../eye/index.ts").then((part) => ({ default: part.EyeView })));
const SettingsPanel = lazy(() => import("../settings/index.ts").then((part) => ({ default: part.Settings })));
const DayPanel = lazy(() => import("../day/index.ts").then((part) => ({ default: part.DayPanel })));
const PlacePanel = lazy(() => import("../place/index.ts").then((part) => ({ default: part.PlacePanel })));

const WirePanel = lazy(() => import("../wire/index.ts").then((part) => ({ default: part.WirePanel })));
const WireSelection = lazy(() =>
  import("../wire/index.ts").then((part) => ({ default: part.WireSelection })),
);
const SetPanel = lazy(() => import("../set/index.ts").then((part) => ({ default: part.SetPanel })));
const SettingCard = lazy(() => import("../set/index.ts").then((part) => ({ default: part.SettingCard })));
const TestPanel = lazy(() => import("../site-test/index.ts").then((part) => ({ default: part.TestPanel })));
const WorkPanel = lazy(() => import("../site-test/index.ts").then((part) => ({ default: part.WorkPanel })));
const FaultPanel = lazy(() => import("../site-test/index.ts").then((part) => ({ default: part.FaultPanel })));
const WalkPanel = lazy(() => import("../site-test/index.ts").then((part) => ({ default: part.WalkPanel })));
const DeviceAtTest = lazy(() =>
  import("../site-test/index.ts").then((part) => ({ default: part.DeviceAtTest })),
);
const HandOverPanel = lazy(() =>
  import("../hand-over/index.ts").then((part) => ({ default: part.HandOverPanel })),
);
const CallBackPanel = lazy(() =>
  import("../after/index.ts").then((part) => ({ default: part.CallBackPanel })),
);
const CarePanel = lazy(() => import("../after/index.ts").then((part) => ({ default: part.CarePanel })));
const SwapPanel = lazy(() => import("../after/index.ts").then((part) => ({ default: part.SwapPanel })));
const DrawCard = lazy(() => import("./draw-card.tsx").then((part) => ({ default: part.DrawCard })));
const DrawingsPanel = lazy(() =>
  import("../survey/drawings/index.ts").then((part) => ({ default: part.DrawingsPanel })),
);
const RoomsTable = lazy(() =>
  import("../survey/rooms/index.ts").then((part) => ({ default: part.RoomsTable })),
);
const VisitPanel = lazy(() =>
  import("../survey/visit/index.ts").then((part) => ({ default: part.VisitPanel })),
);
const NotesPanel = lazy(() =>
  import("../survey/notes/index.ts").then((part) => ({ default: part.NotesPanel })),
);

const PhonePanel = lazy(() => import("../phone/index.ts").then((part) => ({ default: part.PhonePanel })));
const ScanPanel = lazy(() => import("../label-scan/index.ts").then((part) => ({ default: part.ScanPanel })));

/** The whole job as one file: readable, or packed with its pictures and history. */
export type FileOf = (as: "json" | "zip") => Promise<string | Uint8Array>;
/** The id under which a job is kept here, by its identity; undefined where it is not. */
export type KnownJob = (identity: string) => Promise<string | undefined>;
/** Reads a job out of a file's bytes. */
export type ReadCopy = HomeShelf["readFile"];

/** Things that the wiring has something to say of. */
const wired: ReadonlySet<RecordKind> = new Set(["luminaires", "detectors", "switches", "rooms"]);

interface PanelBodyProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly calculator: Calculator;
  readonly findings: readonly Finding[];
  /** The tool in the hand, while something is drawn. */
  readonly drawing: Extract<Tool, { kind: "add" }> | undefined;
  readonly input: (input: Input) => void;
  readonly onPanel: (panel: Panel) => void;
  readonly onPreview: (room: string, layout: Layout | undefined) => void;
  readonly onClose: () => void;
  readonly fileOf: FileOf;
  readonly readCopy: ReadCopy;
  readonly known: KnownJob;
}

/** What the floating card holds: the panel that was called up, else the selected thing, else the storey. */
export function PanelBody(props: PanelBodyProps) {
  const { job, store, actions, calculator, findings, onPanel, onPreview, onClose } = props;
  const { selection, storey, stage, panel, finding } = usePart(store, (bench) => ({
    selection: bench.selection,
    storey: bench.storey,
    stage: bench.stage,
    panel: bench.panel,
    finding: bench.finding,
  }));
  const first = selection[0];
  // A panel that was called up stays as it is, whatever is chosen on the plan meanwhile; the card of a thing begins anew with another kind.
  const ofThing = panel.kind === "none" || panel.kind === "thing";
  const survey: SurveyPanelProps = { job, store, actions, calculator, onClose };
  return (
    <PartBoundary key={ofThing ? `thing ${first?.kind}` : panel.kind}>
      <Suspense fallback={<p className="hint">{t("shell.loading")}</p>}>
        {props.drawing ? (
          <DrawCard
            key={props.drawing.what}
            store={store}
            tool={props.drawing}
            input={props.input}
            onStop={() => store.set({ tool: { kind: "select" }, toolState: rest })}
          />
        ) : panel.kind === "place" ? (
          <PlacePanel
            job={job}
            calculations={calculator}
            rooms={panel.rooms}
            onPreview={onPreview}
            onModels={() => onPanel({ kind: "models" })}
            onClose={onClose}
          />
        ) : panel.kind === "findings" ? (
          <FindingsList
            job={job}
            findings={findings}
            current={finding}
            onShow={(index) => actions.showFinding(index, findings)}
            {...(stage === "wire" ? { onOpen: (index) => actions.openFinding(index, findings) } : {})}
            onPlace={(room) => onPanel({ kind: "place", rooms: [room] })}
            onClose={onClose}
          />
        ) : panel.kind === "models" ? (
          <ModelsEditor
            job={job}
            onClose={onClose}
            {...(panel.model === undefined ? {} : { model: panel.model })}
          />
        ) : panel.kind === "eye" ? (
          <Known calculator={calculator}>
            {(calculated) => (
              <EyeView job={job} device={panel.device} calculated={calculated} onClose={onClose} />
            )}
          </Known>
        ) : panel.kind === "settings" ? (
          <SettingsPanel job={job} onClose={onClose} />
        ) : panel.kind === "scan" ? (
          <ScanPanel job={job} store={store} actions={actions} known={props.known} onClose={onClose} />
        ) : panel.kind === "phone" ? (
          <PhonePanel
            job={job}
            packed={async () => (await props.fileOf("zip")) as Uint8Array}
            readCopy={props.readCopy}
            onClose={onClose}
          />
        ) : panel.kind === "day" ? (
          <DayPanel
            key={panel.of}
            job={job}
            store={store}
            of={panel.of}
            onPlace={(room) => onPanel({ kind: "place", rooms: [room] })}
            onClose={onClose}
          />
        ) : panel.kind === "walk" ? (
          <WalkPanel
            key={panel.room}
            job={job}
            store={store}
            actions={actions}
            room={panel.room}
            full={panel.full}
            onClose={onClose}
          />
        ) : panel.kind === "swap" ? (
          <SwapPanel
            key={panel.device ?? ""}
            job={job}
            store={store}
            device={panel.device}
            onClose={onClose}
          />
        ) : panel.kind === "care" ? (
          <CarePanel
            job={job}
            store={store}
            actions={actions}
            occasion={panel.occasion}
            room={panel.room}
            onClose={onClose}
          />
        ) : panel.kind === "call-back" ? (
          <CallBackPanel job={job} store={store} onClose={onClose} />
        ) : panel.kind === "fault" ? (
          <FaultPanel
            key={panel.room}
            job={job}
            store={store}
            room={panel.room}
            onClose={() => onPanel({ kind: "walk", room: panel.room })}
          />
        ) : panel.kind === "work" ? (
          <WorkPanel
            key={panel.at.id}
            job={job}
            store={store}
            actions={actions}
            at={panel.at}
            onClose={onClose}
          />
        ) : panel.kind === "drawings" ? (
          <DrawingsPanel {...survey} />
        ) : panel.kind === "rooms" ? (
          <RoomsTable {...survey} />
        ) : panel.kind === "visit" ? (
          <VisitPanel {...survey} />
        ) : panel.kind === "notes" ? (
          <NotesPanel {...survey} />
        ) : first && stage === "wire" && wired.has(first.kind) ? (
          <WireSelection job={job} refs={selection} store={store} />
        ) : stage === "set" && selection.length === 1 && first?.kind === "detectors" ? (
          <SettingCard job={job} device={first.id} store={store} actions={actions} />
        ) : first ? (
          <>
            {stage === "test" && selection.length === 1 && first.kind === "detectors" ? (
              <DeviceAtTest job={job} device={first.id} store={store} />
            ) : null}
            <ThingCard
              job={job}
              refs={selection}
              calculator={calculator}
              actions={actions}
              store={store}
              onPanel={onPanel}
            />
          </>
        ) : stage === "wire" ? (
          <WirePanel job={job} store={store} actions={actions} />
        ) : stage === "set" ? (
          <SetPanel job={job} store={store} actions={actions} />
        ) : stage === "test" ? (
          <TestPanel job={job} store={store} actions={actions} />
        ) : stage === "hand-over" ? (
          <HandOverPanel job={job} store={store} calculations={calculator} />
        ) : (
          <Known calculator={calculator}>
            {(calculated) => (
              <StoreyCard
                job={job}
                storey={storey}
                stage={stage}
                calculated={calculated}
                onPlace={(rooms) => onPanel({ kind: "place", rooms })}
                onFindings={() => onPanel({ kind: "findings" })}
                onPanel={(kind) => onPanel({ kind })}
                onDraw={(what) =>
                  actions.take({ kind: "add", what, after: what === "drawnRoom" ? "again" : "away" })
                }
                actions={actions}
                onPaste={() => void pasteInView(store, actions)}
              />
            )}
          </Known>
        )}
      </Suspense>
    </PartBoundary>
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
