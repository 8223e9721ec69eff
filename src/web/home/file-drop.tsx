import { lazy, Suspense, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { intoView, Running, Say } from "../fields/index.ts";
import { t } from "../texts/index.ts";
import type { ReadingWays } from "./use-reading.ts";

const ScanOffer = lazy(() =>
  import("../survey/drawings/scan-offer.tsx").then((part) => ({ default: part.ScanOffer })),
);

interface FileDropProps {
  readonly ways: ReadingWays;
  readonly legend: string;
  readonly invitation: string;
  readonly kinds: readonly string[];
  readonly onFile: (file: File) => void;
  /** A page was made a picture. */
  readonly onPicture: (picture: File) => void;
}

/** Where a file is dropped or chosen; while it is read how far that is, afterwards why it was refused. */
export function FileDrop({ ways, legend, invitation, kinds, onFile, onPicture }: FileDropProps) {
  const { reading, stop } = ways;
  const [over, setOver] = useState(false);
  return (
    <>
      {reading?.state === "reading" ? (
        <Running
          doing={t("home.model.reading", { name: reading.name, doing: reading.doing })}
          share={reading.share}
          onStop={stop}
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
            if (file !== undefined) onFile(file);
          }}
        >
          <legend className="unseen">{legend}</legend>
          <span>{invitation}</span>
          <FileTrigger
            acceptedFileTypes={[...kinds]}
            onSelect={(files) => {
              const file = files?.[0];
              if (file !== undefined) onFile(file);
            }}
          >
            <Button className="button">{t("home.model.choose")}</Button>
          </FileTrigger>
        </fieldset>
      )}
      {reading?.state === "refused" ? (
        <div ref={intoView}>
          <Say severity="must" live>
            <p>{t("home.model.refused", { name: reading.name })}</p>
            {reading.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            {reading.scan ? (
              <Suspense>
                <ScanOffer file={reading.scan.file} scan={reading.scan.page} onPicture={onPicture} />
              </Suspense>
            ) : null}
          </Say>
        </div>
      ) : null}
    </>
  );
}
