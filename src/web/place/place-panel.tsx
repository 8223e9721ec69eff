import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { Site } from "#engine";
import type { PlacePanelProps } from "../contract.ts";
import { Choice, Running, Say } from "../fields/index.ts";
import { t } from "../texts/place.ts";
import { type PlaceChoices, PlaceOptions, startChoices } from "./place-options.tsx";
import { RoomResult } from "./room-result.tsx";
import { RoomResults } from "./room-results.tsx";
import { usePlacing } from "./room-run.ts";
import { runningWords } from "./running-words.ts";
import { siteAsked, stepsToTake, type Taken } from "./take-layout.ts";
import "./place.css";

/** Choose models and demands, place one room or many, compare what was found, and take it in one undoable step. */
export function PlacePanel({
  job,
  calculations,
  rooms: asked,
  onPreview,
  onModels,
  onClose,
}: PlacePanelProps) {
  const [whole, setWhole] = useState(false);
  const building = wholeBuilding(job.site, asked);
  const rooms = whole ? building : asked;
  const [choices, setChoices] = useState<PlaceChoices>(() => startChoices(job.site, rooms));
  const [chosen, setChosen] = useState<ReadonlyMap<string, number>>(new Map());
  const [placedSite, setPlacedSite] = useState<Site | undefined>();
  const { runs, running, start, stop, clear } = usePlacing(calculations);
  const shown = rooms.flatMap((id) => job.site.rooms.find((room) => room.id === id) ?? []);
  const one = shown.length === 1 ? shown[0] : undefined;
  const begin = () => {
    const site = siteAsked(job.site, rooms, choices.demand);
    setPlacedSite(job.site);
    setChosen(new Map());
    for (const room of rooms) onPreview(room, undefined);
    start(site, rooms, {
      models: choices.models,
      seconds: choices.seconds,
      seed: 1,
      bound: choices.bound,
      alternatives: 2,
    });
  };
  const layoutOf = (room: string) => {
    const run = runs.get(room);
    if (run?.state !== "done" || run.result.best === undefined) return undefined;
    return [run.result.best, ...run.result.alternatives][chosen.get(room) ?? 0];
  };
  const takeable = shown.flatMap(({ id, demand }): Taken[] => {
    const layout = layoutOf(id);
    return layout === undefined ? [] : [{ room: id, layout, demand: choices.demand ?? demand }];
  });
  const choose = (room: string, index: number) => setChosen((known) => new Map(known).set(room, index));
  // The newest layout of a single room shows itself on the plan; taking or closing takes the picture away.
  const picture = one === undefined ? undefined : layoutOf(one.id);
  const pictured = one?.id;
  useEffect(() => {
    if (pictured === undefined) return;
    onPreview(pictured, picture);
    return () => onPreview(pictured, undefined);
  }, [pictured, picture, onPreview]);
  const take = (layouts: readonly Taken[]) => {
    job.edit(
      "place.edit.take",
      stepsToTake(job.site, layouts, () => job.newId("detectors")),
    );
    for (const { room } of layouts) onPreview(room, undefined);
    onClose();
  };
  const over = runs.size > 0 && !running;
  const changedSince = over && placedSite !== undefined && placedSite !== job.site;
  return (
    <div className="place stack">
      <h2 className="place-title">
        {one === undefined
          ? t("place.title.many", { count: shown.length })
          : t("place.title.one", { room: one.name })}
      </h2>
      {runs.size === 0 && building.length > asked.length ? (
        <Choice
          label={t("place.scope")}
          value={whole ? "building" : "storey"}
          onChange={(scope) => {
            setWhole(scope === "building");
            setChoices(startChoices(job.site, scope === "building" ? building : asked));
          }}
          options={[
            { value: "storey", word: t("place.scope.storey", { count: asked.length }) },
            { value: "building", word: t("place.scope.building", { count: building.length }) },
          ]}
        />
      ) : null}
      {runs.size === 0 ? (
        <PlaceOptions
          site={job.site}
          rooms={shown}
          choices={choices}
          onChange={setChoices}
          onModels={onModels}
        />
      ) : null}
      {running ? <Running {...runningWords(shown, runs)} onStop={stop} /> : null}
      {one === undefined ? (
        runs.size > 0 ? (
          <RoomResults
            site={job.site}
            rooms={shown}
            runs={runs}
            models={choices.models}
            chosen={chosen}
            onChoose={choose}
            onPreview={onPreview}
          />
        ) : null
      ) : (
        <RoomResult
          site={job.site}
          run={runs.get(one.id)}
          models={choices.models}
          chosen={chosen.get(one.id) ?? 0}
          onChoose={(index) => choose(one.id, index)}
        />
      )}
      {changedSince ? <Say severity="should">{t("place.changed-since")}</Say> : null}
      <div className="row place-ways">
        {over && takeable.length > 0 ? (
          <Button className="button button-first" onPress={() => take(takeable)} isDisabled={job.readOnly}>
            {one === undefined ? t("place.take-all", { count: takeable.length }) : t("place.take")}
          </Button>
        ) : null}
        {running ? null : runs.size === 0 ? (
          <Button
            className="button button-first"
            onPress={begin}
            isDisabled={choices.models.length === 0 || shown.length === 0}
          >
            {t("place.run")}
          </Button>
        ) : (
          <Button className="button" onPress={clear}>
            {t("place.again")}
          </Button>
        )}
        <Button className="button button-quiet" onPress={onClose}>
          {t("place.close")}
        </Button>
      </div>
    </div>
  );
}

/** With several rooms asked for: these, and those of the other storeys that no detector watches yet. One room stays alone. */
function wholeBuilding(site: Site, asked: readonly string[]): readonly string[] {
  if (asked.length < 2) return asked;
  const storeys = new Set(site.rooms.filter(({ id }) => asked.includes(id)).map(({ storey }) => storey));
  const watched = new Set(site.detectors.flatMap(({ controls }) => controls));
  const others = site.rooms.filter(({ id, storey }) => !storeys.has(storey) && !watched.has(id));
  return [...asked, ...others.map(({ id }) => id)];
}
