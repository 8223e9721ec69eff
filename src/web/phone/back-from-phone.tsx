import { lazy, Suspense, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Problem } from "#engine";
import type { FileJob, HomeShelf } from "../contract.ts";
import { Problems, Say } from "../fields/index.ts";
import { t } from "../texts/phone.ts";
import "../home/home.css";

const FileJobCard = lazy(() =>
  import("../home/file-job.tsx").then((part) => ({ default: part.FileJobCard })),
);

export type ReadCopy = HomeShelf["readFile"];

type Read =
  | { readonly file: string; readonly job: FileJob }
  | { readonly file: string; readonly problems: readonly Problem[] }
  | { readonly file: string; readonly sentence: string };

/** A copy of this job that comes back is merged into it; what else a file may be is said. */
export function BackFromPhone({ job, readCopy }: { readonly job: string; readonly readCopy: ReadCopy }) {
  const [read, setRead] = useState<Read | undefined>();
  const fail = (file: string) => (cause: unknown) =>
    setRead({ file, sentence: cause instanceof Error ? cause.message : String(cause) });
  const take = async (file: File): Promise<void> => {
    const found = await readCopy(new Uint8Array(await file.arrayBuffer()));
    if ("problems" in found) setRead({ file: file.name, problems: found.problems });
    else if (found.copyOf?.id !== job)
      setRead({ file: file.name, sentence: t("phone.back.other-job", { name: found.name }) });
    else setRead({ file: file.name, job: found });
  };
  return (
    <section className="stack" aria-label={t("phone.back")}>
      <h3 className="phone-head">{t("phone.back")}</h3>
      <p className="hint">{t("phone.back.what")}</p>
      <FileTrigger
        acceptedFileTypes={[".zip", ".json"]}
        onSelect={(files) => {
          const file = files?.[0];
          if (file) void take(file).catch(fail(file.name));
        }}
      >
        <Button className="button wide-button">{t("phone.back.choose")}</Button>
      </FileTrigger>
      {read === undefined ? null : "job" in read ? (
        <Suspense>
          <FileJobCard
            key={read.file}
            file={read.file}
            job={read.job}
            onOpen={() => setRead(undefined)}
            onTrouble={fail(read.file)}
            onRefused={(problems) => setRead({ file: read.file, problems })}
            onChanged={() => undefined}
            onDrop={() => setRead(undefined)}
          />
        </Suspense>
      ) : (
        <Say severity="must" live>
          <p>{t("phone.back.refused", { file: read.file })}</p>
          {"problems" in read ? <Problems of={read.problems} /> : <p>{read.sentence}</p>}
        </Say>
      )}
    </section>
  );
}
