import { lazy, Suspense } from "react";
import type { Site } from "#engine";
import { planningDefaults, remedyOf, sentenceOf } from "#engine";
import type { Calculations, HomeShelf, ModelRead } from "../contract.ts";
import { t } from "../texts/index.ts";
import { FileDrop } from "./file-drop.tsx";
import { type Reading, useReading } from "./use-reading.ts";

const ReadReport = lazy(() => import("./read-report.tsx").then((part) => ({ default: part.ReadReport })));

interface ModelStartProps {
  readonly calculations: Calculations;
  readonly shelf: HomeShelf;
  readonly onOpen: (jobId: string) => void;
}

/** Drop a building model, a plan or a job file: it is read apart from the page, can be stopped, and says what it left out. */
export function ModelStart({ calculations, shelf, onOpen }: ModelStartProps) {
  const ways = useReading(calculations);
  const { reading } = ways;
  const fail = (name: string) => (trouble: unknown) =>
    ways.refuse(name, [trouble instanceof Error ? trouble.message : String(trouble)]);
  const take = async (file: File): Promise<void> => {
    if (!/\.json$/i.test(file.name)) return ways.read(file);
    const outcome = await shelf.createFromFile(await file.text());
    if ("id" in outcome) onOpen(outcome.id);
    else
      ways.refuse(
        file.name,
        outcome.problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`),
      );
  };
  const keep = ({ name, read: { site, drawings }, choice }: Extract<Reading, { state: "read" }>): void => {
    const made = siteOf(name.replace(/\.[^.]+$/, ""), site, shelf);
    shelf.create(made, { drawings, file: name, choice }).then(onOpen, fail(name));
  };
  return (
    <section className="home-model stack" aria-labelledby="home-model-head">
      <h2 id="home-model-head" className="home-head">
        {t("home.model.title")}
      </h2>
      <FileDrop
        ways={ways}
        legend={t("home.model.title")}
        invitation={t("home.model.drop")}
        kinds={[".ifc", ".ifczip", ".dxf", ".pdf", ".svg", ".json"]}
        onFile={(file) => void take(file).catch(fail(file.name))}
      />
      {reading?.state === "read" ? (
        <Suspense>
          <ReadReport
            // A plan read again begins with what was chosen for it.
            key={JSON.stringify(reading.choice)}
            name={reading.name}
            read={reading.read}
            choice={reading.choice}
            onReadAgain={(choice) => void ways.read(reading.file, choice)}
            keepWord={t("home.report.open")}
            onKeep={() => keep(reading)}
            onDrop={ways.drop}
          />
        </Suspense>
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
