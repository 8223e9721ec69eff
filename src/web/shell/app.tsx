import { lazy, Suspense, useCallback, useEffect, useState, useSyncExternalStore } from "react";
import { demoModels, toSite } from "#job";
import { type Calculator, startCalculator } from "../calculate/calculator.ts";
import { Say } from "../fields/index.ts";
import { homeShelf } from "../home/home-shelf.ts";
import { documentJob, type JobSource } from "../jobs/open-job.ts";
import { browserNotes, jobs, type StoredJob } from "../storage/index.ts";
import { t } from "../texts/index.ts";
import { JobScreen } from "./job-screen.tsx";
import { Kept, useStanding } from "./kept.tsx";
import { PartBoundary } from "./part-boundary.tsx";

const HomePage = lazy(() => import("../home/index.ts").then((part) => ({ default: part.HomePage })));

const shelf = homeShelf(jobs, {
  notes: browserNotes(),
  demoModels: demoModels.map((model) => toSite("models", model)),
});
const calculator: Calculator = startCalculator();

/** Start page and open job, by the address: #/job/ID is a job, #/job/ID/visit the questions of a call, anything else the start page. */
export function App() {
  const address = useSyncExternalStore(listen, () => location.hash);
  const [, id, panel] = /^#\/job\/([^/]+)(\/visit)?$/.exec(address) ?? [];
  return (
    <PartBoundary>
      <Suspense fallback={<p className="wait">{t("shell.loading")}</p>}>
        {id === undefined ? (
          <Start />
        ) : (
          <OneJob key={id} id={decodeURIComponent(id)} begin={panel ? "visit" : "thing"} />
        )}
      </Suspense>
    </PartBoundary>
  );
}

const listen = (listener: () => void): (() => void) => {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
};

/** Long enough that two of a job's ids never meet. */
const newId = (): string => crypto.randomUUID().replaceAll("-", "").slice(0, 16);

const goHome = (): void => {
  location.hash = "";
};

function Start() {
  const current = useSyncExternalStore(calculator.subscribe, calculator.current);
  return (
    <HomePage
      shelf={shelf}
      calculations={{ ...calculator, current }}
      onOpen={(job, panel) => {
        location.hash = `#/job/${encodeURIComponent(job)}${panel ? `/${panel}` : ""}`;
      }}
    />
  );
}

/** What the card of a job shows first. */
type Begin = "thing" | "visit";

function OneJob({ id, begin }: { readonly id: string; readonly begin: Begin }) {
  const [opened, setOpened] = useState<
    { readonly source: JobSource; readonly stored: StoredJob } | { readonly trouble: string } | undefined
  >();
  useEffect(() => {
    let gone = false;
    let job: StoredJob | undefined;
    const open = async (): Promise<void> => {
      const found = await jobs.open(id);
      if (gone) return found.close();
      job = found;
      const source = await documentJob(id, found.document, newId);
      if (!gone) setOpened({ source, stored: found });
    };
    open().catch((cause: unknown) => {
      if (!gone) setOpened({ trouble: cause instanceof Error ? cause.message : String(cause) });
    });
    return () => {
      gone = true;
      void job?.close();
    };
  }, [id]);
  if (!opened) return <p className="wait">{t("shell.opening")}</p>;
  if ("trouble" in opened)
    return (
      <div className="wait">
        <Say severity="must" live>
          <p>{t("shell.not-opened")}</p>
          <p className="hint">{opened.trouble}</p>
          <a href="#/">{t("shell.home")}</a>
        </Say>
      </div>
    );
  return <Opened source={opened.source} stored={opened.stored} begin={begin} />;
}

interface OpenedProps {
  readonly source: JobSource;
  readonly stored: StoredJob;
  readonly begin: Begin;
}

function Opened({ source, stored, begin }: OpenedProps) {
  const fileOf = useCallback(
    async (as: "json" | "zip"): Promise<string | Uint8Array> => {
      // The file is made of what is kept: the last change must be among it.
      await stored.settled();
      return as === "json" ? shelf.fileText(stored.id) : shelf.packed(stored.id);
    },
    [stored],
  );
  const standing = useStanding(stored);
  return (
    <>
      <JobScreen
        source={source}
        calculator={calculator}
        fileOf={fileOf}
        readCopy={shelf.readFile}
        known={jobs.known}
        onHome={goHome}
        standing={standing}
        begin={begin}
      />
      <Kept stored={stored} />
    </>
  );
}
