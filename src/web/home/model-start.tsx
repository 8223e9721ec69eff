import { lazy, Suspense, useEffect, useState } from "react";
import type { Problem, Site } from "#engine";
import { planningDefaults } from "#engine";
import type { Calculations, FileJob, HomeShelf, ModelRead } from "../contract.ts";
import type { SmallPicture } from "../survey/drawings/picture-file.ts";
import { t } from "../texts/index.ts";
import { FileDrop } from "./file-drop.tsx";
import { type Reading, useReading } from "./use-reading.ts";

const FileJobCard = lazy(() => import("./file-job.tsx").then((part) => ({ default: part.FileJobCard })));
const PictureStart = lazy(() =>
  import("./picture-start.tsx").then((part) => ({ default: part.PictureStart })),
);
const ReadReport = lazy(() => import("./read-report.tsx").then((part) => ({ default: part.ReadReport })));

interface ModelStartProps {
  readonly calculations: Calculations;
  readonly shelf: HomeShelf;
  readonly onOpen: (jobId: string) => void;
  /** The list of jobs is another now. */
  readonly onChanged: () => void;
  /** Whether something was read that waits to be opened. */
  readonly onWaiting: (waits: boolean) => void;
}

/** Drop a building model, a plan or a job file: it is read apart from the page, can be stopped, and says what it left out. */
export function ModelStart({ calculations, shelf, onOpen, onChanged, onWaiting }: ModelStartProps) {
  const ways = useReading(calculations);
  const { reading } = ways;
  const [copy, setCopy] = useState<{ readonly file: string; readonly job: FileJob } | undefined>();
  const [picture, setPicture] = useState<SmallPicture | undefined>();
  const waits = reading?.state === "read" || copy !== undefined || picture !== undefined;
  useEffect(() => onWaiting(waits), [waits, onWaiting]);
  const fail = (name: string) => (trouble: unknown) =>
    ways.refuse(name, [trouble instanceof Error ? trouble.message : String(trouble)]);
  const refuse = (name: string, problems: readonly Problem[]): void => {
    setCopy(undefined);
    void import("../fields/problem-words.tsx").then(({ wordsOf }) =>
      ways.refuse(name, problems.map(wordsOf)),
    );
  };
  const takePicture = async (file: File): Promise<void> => {
    const { smallPicture } = await import("../survey/drawings/picture-file.ts");
    const small = await smallPicture(file);
    if ("sentences" in small) return ways.refuse(file.name, small.sentences);
    ways.drop();
    setPicture(small);
  };
  const take = async (file: File): Promise<void> => {
    setCopy(undefined);
    setPicture(undefined);
    if (/\.(png|jpe?g)$/i.test(file.name)) return takePicture(file);
    if (!/\.(json|zip)$/i.test(file.name)) return ways.read(file);
    ways.drop();
    const job = await shelf.readFile(new Uint8Array(await file.arrayBuffer()));
    if ("problems" in job) refuse(file.name, job.problems);
    else if (job.copyOf === undefined && job.notes.length === 0) onOpen(await job.keep());
    else setCopy({ file: file.name, job });
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
        kinds={[".ifc", ".ifczip", ".dxf", ".pdf", ".svg", ".png", ".jpg", ".jpeg", ".json", ".zip"]}
        onFile={(file) => void take(file).catch(fail(file.name))}
        onPicture={(file) => void takePicture(file).catch(fail(file.name))}
      />
      {copy ? (
        <Suspense>
          <FileJobCard
            key={copy.file}
            {...copy}
            onOpen={onOpen}
            onTrouble={(trouble) => {
              setCopy(undefined);
              fail(copy.file)(trouble);
            }}
            onRefused={(problems) => refuse(copy.file, problems)}
            onChanged={onChanged}
            onDrop={() => setCopy(undefined)}
          />
        </Suspense>
      ) : null}
      {picture ? (
        <Suspense>
          <PictureStart
            picture={picture}
            shelf={shelf}
            onOpen={onOpen}
            onTrouble={fail(picture.name)}
            onDrop={() => setPicture(undefined)}
          />
        </Suspense>
      ) : null}
      {reading?.state === "read" ? (
        <Suspense>
          <ReadReport
            // A plan read again begins with what was chosen for it.
            key={JSON.stringify(reading.choice)}
            file={reading.file}
            read={reading.read}
            choice={reading.choice}
            onReadAgain={(choice) => void ways.read(reading.file, choice)}
            keepWord={t("home.report.open")}
            onKeep={() => keep(reading)}
            onDrop={ways.drop}
            onPicture={(made) => void takePicture(made).catch(fail(made.name))}
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
