import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { roomTitle, type Site, type SwitchedLoad } from "#engine";
import type { OpenJob } from "../contract.ts";
import { Pick } from "../fields/index.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/day.ts";
import { LoadDay } from "./load-day.tsx";
import { loadsOf } from "./set-loads.ts";

export interface DayPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  /** A detector whose light is simulated, or a room. */
  readonly of: string;
  readonly onPlace: (room: string) => void;
  readonly onClose: () => void;
}

/** A simulated day of what some detectors switch together. */
export function DayPanel({ job, store, of, onPlace, onClose }: DayPanelProps) {
  const { site } = job;
  const known = usePart(store, (bench) => bench.settings);
  const loads = useMemo(() => (known ? loadsOf(site, known.devices) : undefined), [site, known]);
  const [picked, setPicked] = useState<string | undefined>();
  const meant = loads?.find(({ load }) => concerns(load, of));
  const set = loads?.find(({ load }) => load.id === picked) ?? meant;
  return (
    <div className="stack day">
      <div className="row row-apart">
        <h2 className="panel-title">{t("day.title")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      {!loads ? (
        <p className="hint" role="status">
          {t("day.running")}
        </p>
      ) : set && meant ? (
        <>
          {loads.length > 1 ? (
            <Pick
              label={t("day.load")}
              value={set.load.id}
              options={loads.map(({ load }) => ({ value: load.id, word: loadName(site, load) }))}
              onChange={setPicked}
              wide
            />
          ) : null}
          <LoadDay key={set.load.id} job={job} store={store} set={set} />
        </>
      ) : (
        <NoDetector site={site} of={of} onPlace={onPlace} />
      )}
    </div>
  );
}

const concerns = (load: SwitchedLoad, of: string): boolean =>
  load.rooms.includes(of) || load.devices.some(({ id }) => id === of);

/** Rooms and detectors of a load; of many, the first ones. */
function loadName(site: Site, load: SwitchedLoad): string {
  const rooms = load.rooms.map((id) => roomTitle(site.rooms.find((room) => room.id === id)));
  const names = (list: readonly string[]): string =>
    list.length > 3
      ? t("day.and-more", { first: list.slice(0, 3).join(", "), count: list.length - 3 })
      : list.join(", ");
  return `${names(rooms)} · ${names(load.devices.map(({ tag }) => tag))}`;
}

function NoDetector({
  site,
  of,
  onPlace,
}: { readonly site: Site; readonly of: string } & Pick<DayPanelProps, "onPlace">) {
  const room = site.rooms.find(({ id }) => id === of);
  return (
    <div className="stack">
      <p>{t("day.no-detector")}</p>
      {room ? (
        <Button className="button button-first" onPress={() => onPlace(room.id)}>
          {t("day.no-detector.place")}
        </Button>
      ) : null}
    </div>
  );
}
