import { Button } from "react-aria-components";
import type { PlacementOptions, Room, Site } from "#engine";
import { Choice, FigureField, More, Say, Tick } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/place.ts";

/** What a person may decide before placing; all of it has a sensible start. */
export interface PlaceChoices {
  readonly models: readonly string[];
  /** Undefined: what the card of each room says. A corridor and an office are not placed for the same. */
  readonly demand: Room["demand"] | undefined;
  readonly seconds: number;
  readonly bound: PlacementOptions["bound"];
}

/** All models that may hang at these heights, the rooms' own demands, and time enough for an answer. */
export function startChoices(site: Site, rooms: readonly string[]): PlaceChoices {
  const shown = site.rooms.filter(({ id }) => rooms.includes(id));
  const fitting = site.models.filter(({ mounting }) =>
    shown.some(({ ceilingHeight }) => fits(ceilingHeight, mounting)),
  );
  return {
    models: fitting.map(({ id }) => id),
    demand: shown.length === 1 ? shown[0]?.demand : undefined,
    seconds: rooms.length === 1 ? 20 : 10,
    bound: "candidates",
  };
}

interface PlaceOptionsProps {
  readonly site: Site;
  readonly rooms: readonly Room[];
  readonly choices: PlaceChoices;
  readonly onChange: (change: (choices: PlaceChoices) => PlaceChoices) => void;
  /** Goes to the detector models of the job. */
  readonly onModels: () => void;
}

const demands = ["catch", "walk", "hold"] as const;

/** Models in sight, the rest behind "more". */
export function PlaceOptions({ site, rooms, choices, onChange, onModels }: PlaceOptionsProps) {
  const units = useUnits();
  const { demand: asked } = choices;
  const held = site.detectors.filter(
    ({ room, pinned }) => rooms.some(({ id }) => id === room) && pinned,
  ).length;
  const giving = site.detectors.filter(
    ({ room, pinned }) => rooms.some(({ id }) => id === room) && !pinned,
  ).length;
  return (
    <div className="stack place-options">
      <fieldset className="place-models">
        <legend className="field-label">{t("place.models")}</legend>
        {site.models.length === 0 ? (
          <Say severity="should">
            <p>{t("place.no-models")}</p>
            <div>
              <Button className="button" onPress={onModels}>
                {t("place.models.open")}
              </Button>
            </div>
          </Say>
        ) : null}
        {site.models.map((model) => {
          const suits = rooms.filter(({ ceilingHeight }) => fits(ceilingHeight, model.mounting)).length;
          return (
            <Tick
              key={model.id}
              on={choices.models.includes(model.id)}
              disabled={suits === 0}
              onChange={(on) =>
                onChange((now) => ({
                  ...now,
                  models: site.models
                    .map(({ id }) => id)
                    .filter((id) => (id === model.id ? on : now.models.includes(id))),
                }))
              }
            >
              {model.title}{" "}
              {suits < rooms.length ? (
                <span className="hint">
                  {t("place.mounting", {
                    min: lengthText(model.mounting.min, units),
                    max: lengthText(model.mounting.max, units),
                  })}
                </span>
              ) : null}
            </Tick>
          );
        })}
      </fieldset>
      {giving > 0 || held > 0 ? <p className="hint">{t("place.standing", { giving, held })}</p> : null}
      <More>
        <div className="stack">
          <fieldset className="place-models">
            <legend className="field-label">{t("place.demands")}</legend>
            {asked === undefined ? (
              <p className="hint">{t("place.demands.own")}</p>
            ) : (
              demands.map((demand) => (
                <Tick
                  key={demand}
                  on={asked[demand]}
                  onChange={(on) => onChange((now) => ({ ...now, demand: { ...asked, [demand]: on } }))}
                >
                  {t(`place.demand.${demand}`)}
                </Tick>
              ))
            )}
          </fieldset>
          <Choice
            label={t("place.measured")}
            value={choices.bound}
            options={(["candidates", "any-position"] as const).map((value) => ({
              value,
              word: t(`place.measured.${value}`),
            }))}
            onChange={(bound) => onChange((now) => ({ ...now, bound }))}
          />
          <div className="fields">
            <FigureField
              label={t("place.seconds")}
              value={choices.seconds}
              unit="s"
              least={1}
              most={600}
              onChange={(seconds) => onChange((now) => ({ ...now, seconds }))}
            />
          </div>
        </div>
      </More>
    </div>
  );
}

const fits = (height: number, mounting: { readonly min: number; readonly max: number }): boolean =>
  height >= mounting.min - 1e-6 && height <= mounting.max + 1e-6;
