import { useRef, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Site } from "#engine";
import { planningDefaults, remedyOf, sentenceOf } from "#engine";
import type { Calculations, HomeShelf, ModelRead, PlanWish } from "../contract.ts";
import { Running, Say } from "../fields/index.ts";
import { t } from "../texts/index.ts";
import { ReadReport } from "./read-report.tsx";

type Reading =
  | {
      readonly state: "reading";
      readonly name: string;
      readonly doing: string;
      readonly share: number | undefined;
    }
  | {
      readonly state: "read";
      readonly name: string;
      readonly read: ModelRead;
      /** The file itself: a plan may be read again with other choices. */
      readonly file: File;
      readonly choice: PlanWish;
    }
  | { readonly state: "refused"; readonly name: string; readonly sentences: readonly string[] };

interface ModelStartProps {
  readonly calculations: Calculations;
  readonly shelf: HomeShelf;
  readonly onOpen: (jobId: string) => void;
}

/** Drop a building model, a plan or a job file: it is read apart from the page, can be stopped, and says what it left out. */
export function ModelStart({ calculations, shelf, onOpen }: ModelStartProps) {
  const [reading, setReading] = useState<Reading | undefined>();
  const [over, setOver] = useState(false);
  const stop = useRef<AbortController | undefined>(undefined);
  const read = async (file: File, choice: PlanWish = {}): Promise<void> => {
    stop.current?.abort();
    const own = new AbortController();
    stop.current = own;
    const { name } = file;
    const refuse = (sentences: readonly string[]) => setReading({ state: "refused", name, sentences });
    try {
      if (/\.json$/i.test(name)) {
        const outcome = await shelf.createFromFile(await file.text());
        if ("id" in outcome) onOpen(outcome.id);
        else refuse(outcome.problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`));
        return;
      }
      if (!/\.(ifc|ifczip|dxf|pdf|svgz?)$/i.test(name)) return refuse([t("home.model.other-kind")]);
      setReading({ state: "reading", name, doing: t("home.model.opening"), share: undefined });
      const found = await calculations.readModel(file, {
        progress: (doing, share) => {
          if (!own.signal.aborted) setReading({ state: "reading", name, doing, share });
        },
        signal: own.signal,
        choice,
      });
      if (!own.signal.aborted) setReading({ state: "read", name, read: found, file, choice });
    } catch (trouble) {
      if (own.signal.aborted) return setReading(undefined);
      refuse([trouble instanceof Error ? trouble.message : String(trouble)]);
    }
  };
  const keep = (name: string, { site, drawings }: ModelRead) => {
    const made = siteOf(name.replace(/\.[^.]+$/, ""), site, shelf);
    shelf.create(made, drawings).then(onOpen, (trouble: unknown) =>
      setReading({
        state: "refused",
        name,
        sentences: [trouble instanceof Error ? trouble.message : String(trouble)],
      }),
    );
  };
  return (
    <section className="home-model stack" aria-labelledby="home-model-head">
      <h2 id="home-model-head" className="home-head">
        {t("home.model.title")}
      </h2>
      {reading?.state === "reading" ? (
        <Running
          doing={t("home.model.reading", { name: reading.name, doing: reading.doing })}
          share={reading.share}
          onStop={() => stop.current?.abort()}
        />
      ) : (
        // The button does the same by keyboard and touch.
        <fieldset
          className="home-drop"
          data-drop-target={over || undefined}
          onDragOver={(event) => {
            event.preventDefault();
            event.dataTransfer.dropEffect = "copy";
            setOver(true);
          }}
          onDragLeave={() => setOver(false)}
          onDrop={(event) => {
            event.preventDefault();
            setOver(false);
            const file = event.dataTransfer.files[0];
            if (file !== undefined) void read(file);
          }}
        >
          <legend className="unseen">{t("home.model.title")}</legend>
          <span>{t("home.model.drop")}</span>
          <FileTrigger
            acceptedFileTypes={[".ifc", ".ifczip", ".dxf", ".pdf", ".svg", ".json"]}
            onSelect={(files) => {
              const file = files?.[0];
              if (file !== undefined) void read(file);
            }}
          >
            <Button className="button">{t("home.model.choose")}</Button>
          </FileTrigger>
        </fieldset>
      )}
      {reading?.state === "refused" ? (
        <Say severity="must" live>
          <p>{t("home.model.refused", { name: reading.name })}</p>
          {reading.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Say>
      ) : null}
      {reading?.state === "read" ? (
        <ReadReport
          // A plan read again begins with what was chosen for it.
          key={JSON.stringify(reading.choice)}
          name={reading.name}
          read={reading.read}
          choice={reading.choice}
          onReadAgain={(choice) => void read(reading.file, choice)}
          onKeep={() => keep(reading.name, reading.read)}
          onDrop={() => setReading(undefined)}
        />
      ) : null}
    </section>
  );
}

/** The job that a building model becomes: what was read, the usual planning numbers, the models to start with. */
const siteOf = (name: string, read: ModelRead["site"], shelf: HomeShelf): Site => ({
  name,
  defaults: planningDefaults,
  switches: [],
  ceilingThings: [],
  models: shelf.startModels(),
  detectors: [],
  ...read,
});
