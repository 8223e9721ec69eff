import { Button } from "react-aria-components";
import type { WiringReview } from "#engine";
import type { OpenJob } from "../contract.ts";
import { More } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { numberText } from "../texts/index.ts";
import { t } from "../texts/wire.ts";
import { Caution } from "./caution.tsx";
import { CircuitRow } from "./circuit-row.tsx";
import { findingsOnCircuit } from "./circuit-verdict.ts";
import "./wire.css";

export interface WirePanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
}

/** The wiring of the whole job: boards with their circuits, each a row with its verdict. */
export function WirePanel({ job, store, actions }: WirePanelProps) {
  const { wiring, circuit: opened } = usePart(store, (bench) => ({
    wiring: bench.wiring,
    circuit: bench.circuit,
  }));
  const open = (id: string | undefined): void => store.set({ circuit: id });
  const showFindings = (): void => store.set({ panel: { kind: "findings" } });
  const showFinding = (index: number): void => {
    store.set({ panel: { kind: "findings" } });
    actions.showFinding(index, store.get().wiring?.findings ?? []);
  };
  if (!wiring)
    return (
      <div className="stack">
        <Caution />
        <p className="hint" role="status">
          {t("wire.calculating")}
        </p>
      </div>
    );
  const { review, findings } = wiring;
  const wrong = findings.filter(({ severity }) => severity !== "note").length;
  const notes = findings.length - wrong;
  const { boards, circuits } = job.kept;
  const known = new Map((review?.circuits ?? []).map((one) => [one.id, one]));
  const ids = new Set(boards.map(({ id }) => id));
  const lost = circuits.filter(({ board }) => board === undefined || !ids.has(board));
  const rows = (of: typeof circuits) =>
    of.map(({ id }) => {
      const reviewed = known.get(id);
      return reviewed ? (
        <CircuitRow
          key={id}
          circuit={reviewed}
          findings={findingsOnCircuit(findings, id, wiring.circuits.get(id))}
          open={opened === id}
          onOpen={(now) => open(now ? id : undefined)}
          onFinding={showFinding}
        >
          {null}
        </CircuitRow>
      ) : null;
    });
  return (
    <div className="stack wire">
      <Caution />
      {wrong > 0 ? (
        <Button className="button button-first wide-button" onPress={showFindings}>
          {t("wire.findings", { count: wrong })}
        </Button>
      ) : notes > 0 ? (
        <Button className="button wide-button" onPress={showFindings}>
          {t("wire.findings.notes", { count: notes })}
        </Button>
      ) : review ? (
        <p>{t("wire.nothing-open")}</p>
      ) : null}
      {boards.map((board) => (
        <section key={board.id} aria-label={board.name} className="wire-board">
          <h3 className="wire-board-head">
            {board.name}{" "}
            <span className="hint">
              {t("wire.board.circuits", { count: circuits.filter((one) => one.board === board.id).length })}
            </span>
          </h3>
          {rows(circuits.filter((one) => one.board === board.id))}
        </section>
      ))}
      {lost.length > 0 ? (
        <section aria-label={t("wire.board.none")} className="wire-board">
          <h3 className="wire-board-head">{t("wire.board.none")}</h3>
          {rows(lost)}
        </section>
      ) : null}
      {review ? <TakenForGranted review={review} /> : null}
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
              <li key={`${text} ${records.join(" ")}`}>{text}</li>
            ))}
          </ul>
        </More>
      ) : null}
    </div>
  );
}
