import { useEffect, useRef, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Problem } from "#engine";
import type { DayLine } from "../calculate/day-line.ts";
import { Choice, FigureField, Problems, Running, Say } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { spanText } from "./clock.ts";
import { type DayDraft, type DaySource, usualChance } from "./day-draft.ts";
import { ClockField } from "./stay-fields.tsx";

interface SourceFieldsProps {
  readonly draft: DayDraft;
  /** For what takes long. */
  readonly line: DayLine;
  readonly onSource: (source: DaySource, seed?: number) => void;
  readonly onEmpty: () => void;
}

type Reading =
  | { readonly state: "reading"; readonly file: string }
  | { readonly state: "refused"; readonly file: string; readonly problems: readonly Problem[] };

const minute = 60;

/** Where the presence comes from: a usual day, chance, a log, or one's own hand. */
export function SourceFields({ draft, line, onSource, onEmpty }: SourceFieldsProps) {
  const [reading, setReading] = useState<Reading | undefined>();
  const [over, setOver] = useState(false);
  const own = useRef<HTMLFieldSetElement>(null);
  const read = async (file: File): Promise<void> => {
    setReading({ state: "reading", file: file.name });
    const answer = await line.ask({ ask: "log", bytes: await file.arrayBuffer() });
    if (answer?.tell === "log") {
      setReading(undefined);
      // The first day that has anybody in it: a log often begins with a night.
      const first = answer.log.stays[0]?.from ?? 0;
      onSource({ kind: "log", file: file.name, log: answer.log, day: Math.floor(first / 86_400) });
    } else if (answer?.tell === "refused")
      setReading({ state: "refused", file: file.name, problems: answer.problems });
    else setReading(undefined);
  };
  const onFile = useRef(read);
  onFile.current = read;
  // A log may be let go anywhere over the day: beside the place for it the browser would leave the page for the file.
  useEffect(() => {
    const place = own.current?.closest<HTMLElement>(".day");
    if (!place) return;
    const listening = new AbortController();
    const { signal } = listening;
    place.addEventListener(
      "dragover",
      (event) => {
        event.preventDefault();
        if (event.dataTransfer) event.dataTransfer.dropEffect = "copy";
        setOver(true);
      },
      { signal },
    );
    place.addEventListener("dragleave", () => setOver(false), { signal });
    place.addEventListener(
      "drop",
      (event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer?.files[0];
        if (file !== undefined) void onFile.current(file);
      },
      { signal },
    );
    return () => listening.abort();
  }, []);
  return (
    <fieldset ref={own} className="plain-set stack day-source" data-drop-target={over || undefined}>
      <legend className="unseen">{t("day.source")}</legend>
      <div className="row">
        <Button className="button" onPress={() => onSource({ kind: "usual" })}>
          {t("day.source.usual")}
        </Button>
        <Button className="button" onPress={() => onSource(usualChance.turns)}>
          {t("day.source.chance")}
        </Button>
        <FileTrigger
          acceptedFileTypes={[".csv", ".txt", "text/csv"]}
          onSelect={(files) => {
            const file = files?.[0];
            if (file !== undefined) void read(file);
          }}
        >
          <Button className="button">{t("day.source.log")}</Button>
        </FileTrigger>
        <Button className="button button-quiet" onPress={onEmpty}>
          {t("day.source.empty")}
        </Button>
      </div>
      {reading?.state === "reading" ? (
        <Running
          doing={t("day.log.reading", { file: reading.file })}
          share={undefined}
          onStop={() => {
            line.stop();
            setReading(undefined);
          }}
        />
      ) : null}
      {reading?.state === "refused" ? (
        <Say severity="must" live>
          <p>{t("day.log.refused", { file: reading.file })}</p>
          <Problems of={reading.problems.slice(0, 5)} />
        </Say>
      ) : null}
      <About draft={draft} onSource={onSource} />
    </fieldset>
  );
}

/** What the presence on show is, in a sentence, and what may be set of it. */
function About({ draft, onSource }: Pick<SourceFieldsProps, "draft" | "onSource">) {
  const { source, seed } = draft;
  switch (source.kind) {
    case "usual":
    case "hand":
      return <p className="hint">{t(`day.source.${source.kind}.about`)}</p>;
    case "log":
      return (
        <div className="stack">
          <p className="hint">
            {t("day.source.log.about", {
              file: source.file,
              begins: source.log.begins,
              rows: source.log.times.length,
              step: spanText(source.log.step),
            })}
          </p>
          {source.log.days > 1 ? (
            <div className="row">
              <Button
                className="button"
                isDisabled={source.day === 0}
                onPress={() => onSource({ ...source, day: source.day - 1 })}
              >
                {t("day.log.before")}
              </Button>
              <span role="status">{t("day.log.day", { day: source.day + 1, days: source.log.days })}</span>
              <Button
                className="button"
                isDisabled={source.day >= source.log.days - 1}
                onPress={() => onSource({ ...source, day: source.day + 1 })}
              >
                {t("day.log.after")}
              </Button>
            </div>
          ) : null}
          {source.log.notes.length > 0 ? (
            <Say severity="note">
              <Problems of={source.log.notes.slice(0, 3)} />
            </Say>
          ) : null}
        </div>
      );
    case "profile":
    case "turns":
      return (
        <div className="stack">
          <Choice
            label={t("day.chance.model")}
            value={source.kind}
            options={[
              { value: "turns", word: t("day.chance.turns") },
              { value: "profile", word: t("day.chance.profile") },
            ]}
            onChange={(kind) => onSource(usualChance[kind])}
          />
          <p className="hint">{t(`day.chance.${source.kind}.about`)}</p>
          <div className="fields">
            {source.kind === "profile" ? (
              <FigureField
                label={t("day.chance.mobility")}
                value={source.mobility}
                least={0}
                most={0.99}
                onChange={(mobility) => onSource({ ...source, mobility })}
              />
            ) : (
              <>
                <FigureField
                  label={t("day.chance.occupied")}
                  value={Math.round((source.means.occupied / minute) * 10) / 10}
                  unit="min"
                  least={1}
                  most={1440}
                  onChange={(there) =>
                    onSource({ ...source, means: { ...source.means, occupied: there * minute } })
                  }
                />
                <FigureField
                  label={t("day.chance.vacant")}
                  value={Math.round((source.means.vacant / minute) * 10) / 10}
                  unit="min"
                  least={1}
                  most={1440}
                  onChange={(away) =>
                    onSource({ ...source, means: { ...source.means, vacant: away * minute } })
                  }
                />
                <ClockField
                  label={t("day.chance.from")}
                  time={source.hours.from}
                  onChange={(from) =>
                    onSource({
                      ...source,
                      hours: { ...source.hours, from: Math.min(from, source.hours.to - 3600) },
                    })
                  }
                />
                <ClockField
                  label={t("day.chance.to")}
                  time={source.hours.to}
                  onChange={(to) =>
                    onSource({
                      ...source,
                      hours: {
                        ...source.hours,
                        to: Math.max(to === 0 ? 86_400 : to, source.hours.from + 3600),
                      },
                    })
                  }
                />
              </>
            )}
            <FigureField
              label={t("day.chance.seed")}
              value={seed}
              least={0}
              most={999_999}
              whole
              onChange={(next) => onSource(source, next)}
            />
          </div>
        </div>
      );
  }
}
