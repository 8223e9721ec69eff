import type { Room } from "#engine";
import type { OpenJob } from "../contract.ts";
import { LengthField, More } from "../fields/index.ts";
import { numberAt, type PlanningNumber, planningNumbers, withNumber } from "../settings/planning-numbers.ts";
import { t } from "../texts/settings.ts";

interface RoomPlanningProps {
  readonly job: OpenJob;
  readonly room: Room;
}

/** Heights at which people of this room are seen, and what detectors keep clear of: numbers of the whole job, shown where they count. */
export function RoomPlanning({ job, room }: RoomPlanningProps) {
  const kinds = new Set<string>(
    job.site.dwellPlaces.filter((place) => place.room === room.id).map(({ kind }) => kind),
  );
  const heights = planningNumbers.heights.filter(
    ({ path }) => path[1] === "walking" || kinds.has(path[1] ?? ""),
  );
  return (
    <More word={t("card.room.planning")}>
      <div className="stack">
        <p className="hint">{t("card.room.planning.hint")}</p>
        <Numbers job={job} word={t("settings.planning.heights")} numbers={heights} />
        <Numbers job={job} word={t("settings.planning.clearances")} numbers={planningNumbers.clearances} />
      </div>
    </More>
  );
}

function Numbers({
  job,
  word,
  numbers,
}: {
  readonly job: OpenJob;
  readonly word: string;
  readonly numbers: readonly PlanningNumber[];
}) {
  const { defaults } = job.site;
  return (
    <fieldset className="plain-set">
      <legend className="field-label">{word}</legend>
      <div className="fields">
        {numbers.map(({ path, word: label, least, most }) => (
          <LengthField
            key={label}
            label={t(label)}
            value={numberAt(defaults, path)}
            least={least}
            most={most}
            disabled={job.readOnly}
            onChange={(value) => job.setDefaults(withNumber(defaults, path, value))}
          />
        ))}
      </div>
    </fieldset>
  );
}
