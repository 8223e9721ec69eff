import type { Calculator } from "../calculate/calculator.ts";
import type { OpenJob, RecordRef } from "../contract.ts";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import type { Actions } from "../shell/actions.ts";
import type { Panel, Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/index.ts";
import { DetectorCard } from "./detector-card.tsx";
import { EditDeeds } from "./edit-deeds.tsx";
import { Figures } from "./figures.tsx";
import { LuminaireCard, LuminairesCard } from "./luminaire-card.tsx";
import { OpeningCard } from "./opening-card.tsx";
import { RoomCard } from "./room-card.tsx";
import {
  CeilingThingCard,
  DwellCard,
  FloorPieceCard,
  ObstacleCard,
  SourceCard,
  SwitchCard,
} from "./thing-cards.tsx";
import "./cards.css";

interface ThingCardProps {
  readonly job: OpenJob;
  readonly refs: readonly RecordRef[];
  readonly calculator: Calculator;
  readonly actions: Actions;
  readonly store: Store<Workbench>;
  readonly onPanel: (panel: Panel) => void;
}

/** What there is to know and to do about the selected things. */
export function ThingCard(props: ThingCardProps) {
  const { job, refs, actions, store } = props;
  const first = refs[0];
  if (!first) return null;
  return (
    <div className="stack" key={`${first.kind} ${first.id}`}>
      {refs.length === 1 ? <OneCard {...props} of={first} /> : <ManyCard job={job} refs={refs} />}
      {refs.length > 1 ? <ManyLuminaires job={job} refs={refs} /> : null}
      {job.readOnly ? null : <EditDeeds job={job} refs={refs} actions={actions} store={store} />}
    </div>
  );
}

/** How many of each kind there are among the selected things. */
function ManyCard({ job, refs }: Pick<ThingCardProps, "job" | "refs">) {
  const counts = new Map<string, number>();
  for (const ref of refs) {
    const kind =
      ref.kind === "rooms"
        ? t("card.storey.rooms")
        : ref.kind === "detectors"
          ? t("card.storey.detectors")
          : nameOf(job.site, ref);
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  const most = [...counts].sort((a, b) => b[1] - a[1]);
  const rest = most.slice(8).reduce((sum, [, count]) => sum + count, 0);
  const rows = most.slice(0, 8).map(([kind, count]) => [kind, String(count)] as const);
  return <Figures rows={rest > 0 ? [...rows, [t("edit.others"), String(rest)]] : rows} />;
}

/** What may be said of several luminaires at once. */
function ManyLuminaires({ job, refs }: Pick<ThingCardProps, "job" | "refs">) {
  const luminaires = refs.flatMap(({ kind, id }) =>
    kind === "luminaires" ? (recordOf(job.site, "luminaires", id) ?? []) : [],
  );
  return luminaires.length > 1 && !job.readOnly ? <LuminairesCard job={job} records={luminaires} /> : null;
}

function OneCard({ job, calculator, store, onPanel, of }: ThingCardProps & { readonly of: RecordRef }) {
  const { site } = job;
  switch (of.kind) {
    case "detectors": {
      const device = recordOf(site, "detectors", of.id);
      return device ? (
        <DetectorCard
          job={job}
          device={device}
          calculator={calculator}
          onEye={() => onPanel({ kind: "eye", device: of.id })}
          onDay={() => onPanel({ kind: "day", of: of.id })}
          onModel={(model) => onPanel({ kind: "models", model })}
        />
      ) : null;
    }
    case "rooms": {
      const room = recordOf(site, "rooms", of.id);
      return room ? (
        <RoomCard
          job={job}
          room={room}
          calculator={calculator}
          store={store}
          onPlace={() => onPanel({ kind: "place", rooms: [of.id] })}
          onDay={() => onPanel({ kind: "day", of: of.id })}
        />
      ) : null;
    }
    case "openings": {
      const opening = recordOf(site, "openings", of.id);
      return opening ? <OpeningCard job={job} opening={opening} /> : null;
    }
    case "obstacles": {
      const record = recordOf(site, "obstacles", of.id);
      return record ? <ObstacleCard job={job} record={record} /> : null;
    }
    case "dwellPlaces": {
      const record = recordOf(site, "dwellPlaces", of.id);
      return record ? <DwellCard job={job} record={record} /> : null;
    }
    case "interference": {
      const record = recordOf(site, "interference", of.id);
      return record ? <SourceCard job={job} record={record} /> : null;
    }
    case "luminaires": {
      const record = recordOf(site, "luminaires", of.id);
      return record ? <LuminaireCard job={job} record={record} /> : null;
    }
    case "switches": {
      const record = recordOf(site, "switches", of.id);
      return record ? <SwitchCard job={job} record={record} /> : null;
    }
    case "ceilingThings": {
      const record = recordOf(site, "ceilingThings", of.id);
      return record ? <CeilingThingCard job={job} record={record} /> : null;
    }
    case "floorPieces": {
      const record = recordOf(site, "floorPieces", of.id);
      return record ? <FloorPieceCard job={job} record={record} /> : null;
    }
    case "storeys":
    case "models":
      return <p>{nameOf(site, of)}</p>;
  }
}
