import { Button } from "react-aria-components";
import { type Room, type RoomRules, type RuleSpace, ruleSpaces, spaceByName, spacesOf } from "#engine";
import type { JobDetails } from "#job";
import type { OpenJob } from "../contract.ts";
import { FigureField, More, Pick } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { t } from "../texts/set.ts";

interface RuleFactsProps {
  readonly job: OpenJob;
  /** Rooms of which a rule speaks. */
  readonly rooms: readonly RoomRules[];
}

/** What rules must know and the plan does not say: the kind of each space, and the plant's output for the building. */
export function RuleFacts({ job, rooms }: RuleFactsProps) {
  const judged = new Map(rooms.map(({ room, title }) => [room, title]));
  const own = job.site.rooms.filter(({ id }) => judged.has(id));
  const open = own.filter((room) => spacesOf(room)?.length !== 1);
  const offered = open.flatMap((room): (readonly [Room, RuleSpace])[] => {
    const space = spaceByName(room);
    return space === undefined ? [] : [[room, space]];
  });
  const takeOffered = (): void =>
    job.edit(
      "set.spaces.take",
      offered.map(([{ id }, space]) => setStep("rooms", id, { space })),
    );
  const plant = job.file.details.plantPower;
  const setPlant = (plantPower: number | undefined): void =>
    job.setDetails({ plantPower } as Partial<JobDetails>);
  return (
    <More word={t("set.spaces", { open: open.length })}>
      <div className="stack">
        <p className="hint">{t("set.spaces.hint")}</p>
        {offered.length > 0 && !job.readOnly ? (
          <>
            <Button className="button" onPress={takeOffered}>
              {t("set.spaces.offered", { count: offered.length })}
            </Button>
            <p className="hint">
              {offered
                .map(([room, space]) => `${judged.get(room.id)}: ${t(`set.space.${space}`)}`)
                .join(" · ")}
            </p>
          </>
        ) : null}
        <div className="fields fields-roomy">
          {own.map((room) => (
            <SpacePick key={room.id} job={job} room={room} title={judged.get(room.id) ?? ""} />
          ))}
          <FigureField
            label={t("set.plant")}
            value={plant === undefined ? undefined : plant / 1000}
            unit="kW"
            least={0}
            most={1_000_000}
            placeholder={t("fields.unknown")}
            disabled={job.readOnly}
            wide
            onChange={(kilowatts) => setPlant(kilowatts * 1000)}
            onClear={() => setPlant(undefined)}
          />
        </div>
      </div>
    </More>
  );
}

const byUse = "";

function SpacePick({
  job,
  room,
  title,
}: {
  readonly job: OpenJob;
  readonly room: Room;
  readonly title: string;
}) {
  const { space: _, ...unchosen } = room;
  const possible = spacesOf(unchosen);
  const derived =
    possible === undefined
      ? t("set.spaces.any")
      : possible.length > 3
        ? t("set.spaces.one-of", { count: possible.length })
        : t("set.spaces.by-use", { spaces: possible.map((one) => t(`set.space.${one}`)).join(" / ") });
  return (
    <Pick<RuleSpace | typeof byUse>
      label={title}
      value={room.space ?? byUse}
      options={[
        { value: byUse, word: derived },
        ...ruleSpaces.map((value) => ({ value, word: t(`set.space.${value}`) })),
      ]}
      onChange={(next) => {
        if (!job.readOnly)
          job.edit("set.spaces.choose", [
            setStep("rooms", room.id, { space: next === byUse ? undefined : next }),
          ]);
      }}
    />
  );
}
