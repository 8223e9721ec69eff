import { useState } from "react";
import { Button } from "react-aria-components";
import type { Problem } from "#engine";
import type { JobUnderlay } from "#job";
import { Say } from "../../fields/index.ts";
import { ProblemWords } from "../../fields/problem-words.tsx";
import { FileDrop } from "../../home/file-drop.tsx";
import { ReadReport } from "../../home/read-report.tsx";
import { useReading } from "../../home/use-reading.ts";
import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";
import { DrawingFields } from "./drawing-fields.tsx";
import { type SmallPicture, smallPicture } from "./picture-file.ts";
import { PictureScale } from "./picture-scale.tsx";
import { isPicture, pictureUnderlay } from "./picture-underlay.ts";
import "../../home/home.css";

/** Drawings and pictures that lie under the plan of the storey, and a way for more of them. */
export function DrawingsPanel({ job, store, actions, calculator, onClose }: SurveyPanelProps) {
  const { storey } = store.get();
  const ways = useReading(calculator);
  const { reading } = ways;
  const [picture, setPicture] = useState<SmallPicture | undefined>();
  /** What is to be said of what was taken last. */
  const [said, setSaid] = useState<readonly Problem[]>([]);
  const here = job.site.storeys.find(({ id }) => id === storey);
  const own = job.kept.underlays.filter((underlay) => underlay.storey === storey);
  const read = (file: File, choice = knownChoice(job.kept.underlays, file.name)): Promise<void> =>
    ways.read(file, { ...choice, ...(here ? { storey: here } : {}) });
  const taken = async (file: File): Promise<void> => {
    const small = await smallPicture(file);
    if ("sentences" in small) ways.refuse(file.name, small.sentences);
    else {
      ways.drop();
      setPicture(small);
    }
  };
  return (
    <div className="stack">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.drawings")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      {own.length === 0 ? <p className="hint">{t("drawings.none")}</p> : null}
      {own.map((underlay) => (
        <DrawingFields key={underlay.id} job={job} underlay={underlay} />
      ))}
      {picture ? (
        <PictureScale
          picture={picture}
          word={t("drawings.take", { storey: here?.name ?? "" })}
          onTake={(map) => {
            job.keep("drawings.picture", [
              {
                do: "put",
                kind: "underlays",
                record: pictureUnderlay(picture, { map, id: job.newId("underlays"), storey }),
              },
            ]);
            setPicture(undefined);
            actions.showAll();
          }}
          onDrop={() => setPicture(undefined)}
        />
      ) : null}
      {job.readOnly || picture ? null : (
        <FileDrop
          ways={ways}
          legend={t("drawings.add")}
          invitation={t("drawings.drop")}
          kinds={[".ifc", ".ifczip", ".dxf", ".pdf", ".svg", ".png", ".jpg", ".jpeg"]}
          onFile={(file) => void (isPicture(file) ? taken(file) : read(file))}
          onPicture={(file) => void taken(file)}
        />
      )}
      {reading?.state === "read" ? (
        <ReadReport
          // A plan read again begins with what was chosen for it.
          key={JSON.stringify(reading.choice)}
          file={reading.file}
          read={reading.read}
          choice={reading.choice}
          onReadAgain={(choice) => void read(reading.file, choice)}
          keepWord={t("drawings.take", { storey: here?.name ?? "" })}
          onKeep={() => {
            const { storey: _, ...choice } = reading.choice;
            void job
              .take(reading.read, { file: reading.name, choice })
              .then((problems) => {
                setSaid(problems);
                ways.drop();
                actions.showAll();
              })
              .catch((trouble: unknown) => ways.refuse(reading.name, [String(trouble)]));
          }}
          onDrop={ways.drop}
          onPicture={(made) => void taken(made)}
        />
      ) : null}
      {said.length > 0 && reading === undefined ? (
        <Say severity="note" live>
          <ProblemWords of={said} />
        </Say>
      ) : null}
      {own.length > 0 && reading === undefined ? <p className="hint">{t("drawings.again")}</p> : null}
    </div>
  );
}

/** What was chosen when a file of this name was read before. */
const knownChoice = (underlays: readonly JobUnderlay[], file: string): object =>
  underlays.find((underlay) => underlay.file === file)?.choice ?? {};
