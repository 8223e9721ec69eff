import { Button } from "react-aria-components";
import type { Calculated, OpenJob } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { roomArea } from "../plan/shapes.ts";
import { useUnits } from "../settings/preferences.ts";
import type { Actions } from "../shell/actions.ts";
import { type Stage, type SurveyPanel, surveyPanels } from "../shell/workbench.ts";
import { asbestosIsOpen } from "../survey/visit/open-points.ts";
import { areaText, t } from "../texts/index.ts";
import { Figures } from "./figures.tsx";
import { StoreyFields } from "./storey-fields.tsx";

interface StoreyCardProps {
  readonly job: OpenJob;
  readonly storey: string;
  readonly stage: Stage;
  readonly calculated: Calculated;
  readonly onPlace: (rooms: readonly string[]) => void;
  readonly onFindings: () => void;
  readonly onDraw: (what: "roomChain" | "drawnRoom") => void;
  readonly onPanel: (panel: SurveyPanel) => void;
  readonly actions: Actions;
  readonly onPaste: () => void;
}

/** Nothing is selected: the storey as a whole, and what to do next. */
export function StoreyCard(props: StoreyCardProps) {
  const { job, storey, stage, calculated, onPlace, onFindings, onDraw, onPanel, actions, onPaste } = props;
  const fields = <StoreyFields key={storey} job={job} storey={storey} actions={actions} onPaste={onPaste} />;
  const units = useUnits();
  const rooms = job.site.rooms.filter((room) => room.storey === storey);
  const ids = new Set(rooms.map(({ id }) => id));
  const devices = job.site.detectors.filter(({ room }) => ids.has(room));
  const findings = calculated.findings.filter(({ room }) => room !== undefined && ids.has(room));
  const gaps = rooms.reduce(
    (sum, { id }) => sum + (calculated.rooms.get(id)?.gaps.reduce((part, { area }) => part + area, 0) ?? 0),
    0,
  );
  const over = job.underlays.some((one) => one.storey === storey);
  if (rooms.length === 0)
    return (
      <div className="stack">
        <p>{t(over ? "card.storey.empty-over" : "card.storey.empty")}</p>
        <Button
          className="button button-first wide-button"
          onPress={() => onDraw(over ? "drawnRoom" : "roomChain")}
        >
          {t(over ? "card.storey.draw-over" : "card.storey.draw")}
        </Button>
        <SurveyPanels onPanel={onPanel} />
        {fields}
      </div>
    );
  const watched = new Set(job.site.detectors.flatMap(({ controls }) => controls));
  const empty = rooms.filter(({ id }) => !watched.has(id));
  return (
    <div className="stack">
      <Figures
        rows={[
          [t("card.storey.rooms"), String(rooms.length)],
          [
            t("card.storey.area"),
            areaText(
              rooms.reduce((sum, room) => sum + roomArea(room), 0),
              units,
            ),
          ],
          [t("card.storey.detectors"), String(devices.length)],
          ...(devices.length > 0 ? [[t("card.storey.gaps"), areaText(gaps, units)] as const] : []),
        ]}
      />
      {stage === "survey" ? (
        <>
          <p className="hint">{t("card.storey.survey")}</p>
          {asbestosIsOpen(job.kept.visit) ? (
            <Say severity="should">
              <p>{t("visit.asbestos.short")}</p>
            </Say>
          ) : null}
          <SurveyPanels onPanel={onPanel} />
        </>
      ) : empty.length > 0 ? (
        <Button
          className="button button-first wide-button"
          onPress={() => onPlace(empty.map(({ id }) => id))}
        >
          {t("card.storey.place", { count: empty.length })}
        </Button>
      ) : findings.length > 0 ? (
        <Button className="button button-first wide-button" onPress={onFindings}>
          {t("card.storey.findings", { count: findings.length })}
        </Button>
      ) : (
        <Button className="button wide-button" onPress={() => onPlace([...ids])}>
          {t("card.storey.place-again")}
        </Button>
      )}
      {fields}
    </div>
  );
}

/** Ways into the parts of the survey that are not on the plan itself. */
function SurveyPanels({ onPanel }: Pick<StoreyCardProps, "onPanel">) {
  return (
    <div className="survey-panels">
      {surveyPanels.map((kind) => (
        <Button key={kind} className="button" onPress={() => onPanel(kind)}>
          {t(`shell.panel.${kind}`)}
        </Button>
      ))}
    </div>
  );
}
