import { Button } from "react-aria-components";
import { english, type WiringReview } from "#engine";
import type { JobBoard, JobCircuit } from "#job";
import type { WiringKnown } from "../calculate/wire-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { More } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { numberText, spoken } from "../texts/index.ts";
import { t } from "../texts/wire.ts";
import { BoardEdit } from "./board-edit.tsx";
import { Caution } from "./caution.tsx";
import { CircuitEdit } from "./circuit-edit.tsx";
import { CircuitRow } from "./circuit-row.tsx";
import { findingsOnCircuit } from "./circuit-verdict.ts";
import { useClearOfCard } from "./clear-of-card.ts";
import { nextName } from "./luminaires-wiring.tsx";
import { OnCircuit } from "./on-circuit.tsx";
import { Prices } from "./prices.tsx";
import { Propose } from "./propose-button.tsx";
import "./wire.css";

export interface WirePanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
}

/** The wiring of the whole job: boards with their circuits, each a row with its verdict. */
export function WirePanel(props: WirePanelProps) {
  const { job, store, actions } = props;
  useClearOfCard(store, actions);
  const wiring = usePart(store, (bench) => bench.wiring);
  if (!wiring)
    return (
      <div className="stack">
        <Caution />
        <p className="hint" role="status">
          {t("wire.calculating")}
        </p>
      </div>
    );
  const { boards, circuits } = job.kept;
  const ids = new Set(boards.map(({ id }) => id));
  const lost = circuits.filter(({ board }) => board === undefined || !ids.has(board));
  const { review } = wiring;
  return (
    <div className="stack wire">
      <Caution />
      {circuits.length > 0 ? <Open {...props} wiring={wiring} /> : null}
      <Propose job={job} />
      {boards.map((board) => (
        <section key={board.id} aria-label={board.name || t("wire.board")} className="wire-board">
          <h3 className="wire-board-head">{board.name || t("wire.board")}</h3>
          <Rows {...props} wiring={wiring} of={circuits.filter((one) => one.board === board.id)} />
          <More word={t("wire.board.edit")}>
            <BoardEdit job={job} board={board} store={store} />
          </More>
        </section>
      ))}
      {lost.length > 0 ? (
        <section aria-label={t("wire.board.none")} className="wire-board">
          <h3 className="wire-board-head">{t("wire.board.none")}</h3>
          <Rows {...props} wiring={wiring} of={lost} />
        </section>
      ) : null}
      {job.readOnly ? null : <Add job={job} store={store} />}
      <More word={t("wire.prices")}>
        <Prices job={job} />
      </More>
      {review && review.standby.perYear > 0 ? (
        <p className="hint">
          {t("wire.standby", {
            energy: numberText(Math.round(10 * review.standby.perYear) / 10),
            unknown: review.standby.unknown.length,
          })}
        </p>
      ) : null}
      {review && circuits.length > 0 ? <TakenForGranted review={review} /> : null}
    </div>
  );
}

/** What is open, as the one thing to do next. */
function Open({ store, wiring: { findings } }: WirePanelProps & { readonly wiring: WiringKnown }) {
  const show = (): void => store.set({ panel: { kind: "findings" } });
  const wrong = findings.filter(({ severity }) => severity !== "note").length;
  if (wrong > 0)
    return (
      <Button className="button button-first wide-button" onPress={show}>
        {t("wire.findings", { count: wrong })}
      </Button>
    );
  if (findings.length > 0)
    return (
      <Button className="button wide-button" onPress={show}>
        {t("wire.findings.notes", { count: findings.length })}
      </Button>
    );
  return <p>{t("wire.nothing-open")}</p>;
}

function Rows({
  job,
  store,
  actions,
  wiring,
  of,
}: WirePanelProps & { readonly wiring: WiringKnown; readonly of: readonly JobCircuit[] }) {
  const opened = usePart(store, (bench) => bench.circuit);
  const showFinding = (index: number): void => {
    store.set({ panel: { kind: "findings" } });
    actions.showFinding(index, store.get().wiring?.findings ?? []);
  };
  return of.map((circuit) => {
    const { id } = circuit;
    const reviewed = wiring.review?.circuits.find((one) => one.id === id);
    if (!reviewed) return null;
    const on = wiring.circuits.get(id);
    return (
      <CircuitRow
        key={id}
        circuit={reviewed}
        assumed={circuit.readings === "assumed"}
        findings={findingsOnCircuit(wiring.findings, id, on)}
        open={opened === id}
        onOpen={(now) => store.set({ circuit: now ? id : undefined })}
        onFinding={showFinding}
      >
        <OnCircuit job={job} circuit={circuit} actions={actions} />
        <CircuitEdit job={job} circuit={circuit} derived={on?.derived} store={store} />
      </CircuitRow>
    );
  });
}

function Add({ job, store }: Pick<WirePanelProps, "job" | "store">) {
  const { boards, circuits } = job.kept;
  const add = (): void => {
    const id = job.newId("circuits");
    const only = boards.length === 1 ? boards[0]?.id : undefined;
    job.keep("wire.edit.add", [
      {
        do: "put",
        kind: "circuits",
        record: { id, name: nextName(circuits), ...(only === undefined ? {} : { board: only }) },
      },
    ]);
    store.set({ circuit: id });
  };
  const addBoard = (): void => {
    const record: Pick<JobBoard, "id" | "name"> = {
      id: job.newId("boards"),
      name: t("wire.board.name", { number: boards.length + 1 }),
    };
    job.keep("wire.edit.add", [{ do: "put", kind: "boards", record }]);
  };
  return (
    <div className="row">
      <Button className="button" onPress={add}>
        {t("wire.circuit.add")}
      </Button>
      <Button className="button" onPress={addBoard}>
        {t("wire.board.add")}
      </Button>
    </div>
  );
}

/** The supply that was calculated with, and all that nobody entered. */
function TakenForGranted({ review: { supply, assumptions } }: { readonly review: WiringReview }) {
  return (
    <div>
      <p className="hint">
        {t("wire.supply", {
          voltage: numberText(supply.voltage),
          frequency: supply.frequency,
          system: supply.system === "unknown" ? t("wire.supply.system-unknown") : supply.system,
        })}
      </p>
      {assumptions.length > 0 ? (
        <More word={t("wire.assumed", { count: assumptions.length })}>
          <ul className="wire-assumed hint">
            {assumptions.map(({ text, records }) => (
              <li key={`${english(text)} ${records.join(" ")}`}>{spoken(text)}</li>
            ))}
          </ul>
        </More>
      ) : null}
    </div>
  );
}
