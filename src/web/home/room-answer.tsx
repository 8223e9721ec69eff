import { Button } from "react-aria-components";
import type { Layout, PlacementResult, Site } from "#engine";
import { Problems, Say } from "../fields/index.ts";
import { measuredAgainst } from "../place/measured-against.ts";
import { squareMetresOf } from "../preview/outline-area.ts";
import { PlanPreview } from "../preview/plan-preview.tsx";
import { useUnits } from "../settings/preferences.ts";
import { areaText, lengthText, t, type Units } from "../texts/index.ts";
import type { RoomAnswer } from "./use-room-answer.ts";

interface RoomAnswerProps {
  /** Calculates again with more time; undefined once that was done. */
  readonly onMoreTime: (() => void) | undefined;
  readonly answer: RoomAnswer | undefined;
  readonly site: Site | undefined;
}

/** The room with its detectors, how many and where, and the reason in one sentence. */
export function RoomAnswerView({ answer, site, onMoreTime }: RoomAnswerProps) {
  const units = useUnits();
  if (site === undefined)
    return (
      <div className="home-answer">
        <Say severity="note">{t("home.room.too-narrow")}</Say>
      </div>
    );
  const placed = answer?.state === "placed" ? answer : undefined;
  const layout = placed?.result.best;
  return (
    <div className="home-answer">
      <div className="home-answer-plan">
        <PlanPreview
          site={site}
          room={site.rooms[0]!.id}
          devices={layout?.devices ?? []}
          {...(placed === undefined ? {} : { zones: placed.zones })}
          gaps={layout?.gaps ?? []}
          label={t("home.room.plan", { room: site.rooms[0]!.name, count: layout?.devices.length ?? 0 })}
        />
      </div>
      <div className="home-answer-text" aria-live="polite">
        {answer === undefined || answer.state === "placing" ? (
          <p className="hint">
            {answer?.best === undefined
              ? t("home.room.placing")
              : t("home.room.placing-best", { best: answer.best })}
          </p>
        ) : answer.state === "failed" ? (
          <Say severity="must">
            {t("home.room.failed")} <span className="hint">{answer.message}</span>
          </Say>
        ) : (
          <>
            <Placed site={answer.site} result={answer.result} units={units} />
            {answer.result.fewest || onMoreTime === undefined ? null : (
              <div>
                <Button className="button" onPress={onMoreTime}>
                  {t("home.room.more-time")}
                </Button>
              </div>
            )}
          </>
        )}
      </div>
    </div>
  );
}

interface PlacedProps {
  readonly site: Site;
  readonly result: PlacementResult;
  readonly units: Units;
}

function Placed({ site, result, units }: PlacedProps) {
  const { best, problems } = result;
  const room = site.rooms[0]!;
  if (best === undefined)
    return (
      <Say severity="must">{problems.length === 0 ? t("home.room.none") : <Problems of={problems} />}</Say>
    );
  return (
    <>
      <p className="home-answer-count">{t("count.detectors", { count: best.devices.length })}</p>
      <p>{countedModels(site, best)}</p>
      <p className="hint">
        {measuredAgainst(result, site.models)}{" "}
        {best.gaps.length === 0
          ? t("home.room.reason", { area: areaText(squareMetresOf(room), units), margin: marginWords(site) })
          : t("home.room.gaps", { count: best.gaps.length })}
      </p>
      <ol className="home-places">
        {best.devices.map(({ id, tag, at }) => (
          <li key={id}>
            {t("home.room.place", { tag, x: lengthText(at[0], units), y: lengthText(at[1], units) })}
          </li>
        ))}
      </ol>
    </>
  );
}

/** 2 × round, 8 m across at 2.5 m */
export function countedModels(site: Pick<Site, "models">, layout: Layout): string {
  const counts = new Map<string, number>();
  for (const { model } of layout.devices) counts.set(model, (counts.get(model) ?? 0) + 1);
  return [...counts]
    .map(([id, count]) => `${count} × ${site.models.find((model) => model.id === id)?.title ?? id}`)
    .join(", ");
}

const marginWords = ({ defaults }: Site): string => `${Math.round(defaults.margin.towards * 100)} %`;
