import type { Layout, Site } from "#engine";

import { Say } from "../fields/index.ts";
import { countedModels } from "../home/room-answer.tsx";
import { useUnits } from "../settings/preferences.ts";
import { areaText, durationText } from "../texts/index.ts";
import { t } from "../texts/place.ts";
import { remedyOf, sentenceOf } from "../texts/problems.ts";
import { LayoutChoice } from "./layout-choice.tsx";
import { measuredAgainst } from "./measured-against.ts";
import type { RoomRun } from "./room-run.ts";

interface RoomResultProps {
  readonly site: Site;
  readonly run: RoomRun | undefined;
  readonly models: readonly string[];
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

/** What placing one room came to: the count, what it is measured against, and the layouts to choose from. */
export function RoomResult({ site, run, models, chosen, onChoose }: RoomResultProps) {
  const units = useUnits();
  if (run === undefined || (run.state !== "done" && run.state !== "failed")) return null;
  if (run.state === "failed")
    return (
      <Say severity="must" live>
        <p>{t("place.failed")}</p>
        <p className="hint">{run.message}</p>
      </Say>
    );
  const { result } = run;
  const layouts: readonly Layout[] = result.best === undefined ? [] : [result.best, ...result.alternatives];
  const layout = layouts[chosen] ?? layouts[0];
  const inPlay = site.models.filter(({ id }) => models.includes(id));
  return (
    <div className="stack place-result" role="status">
      {layout === undefined ? (
        <Say severity="must">{t(result.cancelled ? "place.stopped-early" : "place.none")}</Say>
      ) : (
        <div>
          <p className="place-count">{t("count.detectors", { count: layout.devices.length })}</p>
          <p>{countedModels(site, layout)}</p>
          <p className="hint">
            {measuredAgainst(result, inPlay)} {t("place.took", { time: durationText(result.seconds) })}
            {result.cancelled ? ` ${t("place.stopped")}` : ""}
          </p>
        </div>
      )}
      {layout !== undefined && layout.gaps.length > 0 ? (
        <Say severity="must">
          {t("place.gaps", {
            count: layout.gaps.length,
            area: areaText(
              layout.gaps.reduce((sum, { area }) => sum + area, 0),
              units,
            ),
          })}
        </Say>
      ) : null}
      {result.problems.map((problem) => (
        <Say key={`${problem.code} ${problem.records?.join(" ") ?? ""}`} severity="should">
          <p>{sentenceOf(problem)}</p>
          <p className="hint">{remedyOf(problem)}</p>
        </Say>
      ))}
      {layouts.length > 1 ? <LayoutChoice layouts={layouts} chosen={chosen} onChoose={onChoose} /> : null}
    </div>
  );
}
