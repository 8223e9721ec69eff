import { Button } from "react-aria-components";
import { INSPECTION_YEARS, type Occasion } from "#engine";
import type { OpenJob } from "../contract.ts";
import { FigureField, More } from "../fields/index.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { VerdictWord } from "../site-test/verdict-word.tsx";
import { t } from "../texts/after.ts";
import { dayText } from "../texts/index.ts";
import { type CareKnown, careKnown, progressOfCare } from "./care-known.ts";
import { visitTitle } from "./care-words.ts";
import "../site-test/site-test.css";

/** Visits after hand-over by their days, and what else falls due. */
export function DueList({ job, store }: { readonly job: OpenJob; readonly store: Store<Workbench> }) {
  const { settings } = usePart(store, (bench) => ({ settings: bench.settings }));
  const known = careKnown(job, settings);
  if (known.handedOver === undefined) return <p className="hint">{t("after.due.none")}</p>;
  const { emergency, inspection } = known.due;
  return (
    <div className="test">
      {known.occasions.map((occasion) => (
        <Visit
          key={occasion.id}
          known={known}
          occasion={occasion}
          onOpen={() => store.set({ panel: { kind: "care", occasion: occasion.id } })}
        />
      ))}
      <ul className="test-plain">
        {emergency === undefined ? null : <li>{t("after.due.emergency", { day: dayText(emergency) })}</li>}
        {inspection === undefined ? null : (
          <li>
            {t("after.due.inspection", { day: dayText(inspection) })}
            {job.file.details.inspectionYears === undefined ? (
              <span className="hint test-of">{t("after.due.verify")}</span>
            ) : null}
          </li>
        )}
      </ul>
      {job.readOnly ? null : <Interval job={job} />}
    </div>
  );
}

/** From one periodic inspection to the next, where local rules ask for another interval than the usual one. */
function Interval({ job }: { readonly job: OpenJob }) {
  const { inspectionYears } = job.file.details;
  const set = (years: number | undefined): void =>
    job.keep("after.edit.interval", [{ do: "details", fields: { inspectionYears: years } }]);
  return (
    <More word={t("after.due.interval")}>
      <FigureField
        label={t("after.due.interval.years")}
        value={inspectionYears}
        placeholder={String(INSPECTION_YEARS)}
        unit={t("after.due.interval.unit")}
        least={0.5}
        most={40}
        onChange={set}
        onClear={() => set(undefined)}
      />
    </More>
  );
}

interface VisitProps {
  readonly known: CareKnown;
  readonly occasion: Occasion;
  readonly onOpen: () => void;
}

function Visit({ known, occasion, onOpen }: VisitProps) {
  const states = [
    ...known.rooms(occasion).flatMap((room) => known.states(occasion, room)),
    ...known.states(occasion),
  ];
  const { all, looked, failed } = progressOfCare(states);
  const isLate = occasion.due <= known.today && looked < all;
  return (
    <Button className="line-button test-room" onPress={onOpen}>
      <span className="test-room-name">{visitTitle(occasion)}</span>
      <span className="hint">
        {t(isLate ? "after.due.late" : "after.due.on", { day: dayText(occasion.due) })}
        {looked > 0 ? ` · ${t("after.rooms.begun", { looked, all })}` : ""}
      </span>
      {failed > 0 ? (
        <VerdictWord verdict="fail" />
      ) : all > 0 && looked === all ? (
        <VerdictWord verdict="pass" />
      ) : null}
    </Button>
  );
}
