import type { OpenJob, RecordRef } from "../contract.ts";
import { recordOf } from "../plan/pick.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/wire.ts";
import { Caution } from "./caution.tsx";
import { DetectorsWiring } from "./detector-wiring.tsx";
import { LuminairesWiring } from "./luminaires-wiring.tsx";
import { SwitchWiring } from "./switch-wiring.tsx";
import "./wire.css";

/** What the wiring has to say of selected things: of rooms it means the luminaires in them. */
export function WireSelection({
  job,
  refs,
  store,
}: {
  readonly job: OpenJob;
  readonly refs: readonly RecordRef[];
  readonly store: Store<Workbench>;
}) {
  const groups = usePart(store, ({ wiring }) => wiring?.groups) ?? [];
  const { site } = job;
  const rooms = new Set(refs.flatMap(({ kind, id }) => (kind === "rooms" ? [id] : [])));
  const own = new Set(refs.flatMap(({ kind, id }) => (kind === "luminaires" ? [id] : [])));
  const luminaires = site.luminaires.filter(({ id, room }) => own.has(id) || rooms.has(room));
  const detectors = refs.flatMap(({ kind, id }) =>
    kind === "detectors" ? (recordOf(site, "detectors", id) ?? []) : [],
  );
  const switches = refs.flatMap(({ kind, id }) =>
    kind === "switches" ? (recordOf(site, "switches", id) ?? []) : [],
  );
  const key = refs.map(({ kind, id }) => `${kind} ${id}`).join(" ");
  return (
    <div className="stack" key={key}>
      {detectors.length > 0 ? (
        <DetectorsWiring
          job={job}
          records={detectors}
          luminaires={luminaires.map(({ id }) => id)}
          groups={groups}
        />
      ) : null}
      {luminaires.length > 0 ? <LuminairesWiring job={job} records={luminaires} /> : null}
      {switches.map((one) => (
        <SwitchWiring key={one.id} job={job} record={one} />
      ))}
      {luminaires.length + detectors.length + switches.length === 0 ? (
        <p>{t(rooms.size > 0 ? "wire.selection.no-luminaire" : "wire.selection.nothing")}</p>
      ) : null}
      <Caution />
    </div>
  );
}
