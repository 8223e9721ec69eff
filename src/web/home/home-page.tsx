import { useCallback, useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { jobFileName } from "#job";
import type { HomeProps, JobEntry } from "../contract.ts";
import { More, Say } from "../fields/index.ts";
import { saveFile } from "../fields/save-file.ts";
import { t } from "../texts/shelf.ts";
import { Cautions } from "./cautions.tsx";
import { emptySite } from "./empty-site.ts";
import type { JobWays } from "./job-menu.tsx";
import { JobRows } from "./job-rows.tsx";
import { ModelStart } from "./model-start.tsx";
import { RoomStart } from "./room-start.tsx";
import { StorageTold } from "./storage-told.tsx";
import "./home.css";

interface Deleted {
  readonly name: string;
  readonly restore: () => Promise<void>;
}

/** The start page: the jobs, and three ways to begin one. */
export function HomePage({ calculations, shelf, onOpen }: HomeProps) {
  const [jobs, setJobs] = useState<readonly JobEntry[] | undefined>();
  const [trouble, setTrouble] = useState<string | undefined>();
  const [waiting, setWaiting] = useState(false);
  const [deleted, setDeleted] = useState<Deleted | undefined>();
  const fail = useCallback(
    (cause: unknown) => setTrouble(cause instanceof Error ? cause.message : String(cause)),
    [],
  );
  const look = useCallback(() => {
    shelf.list().then(setJobs, (cause: unknown) => {
      setJobs((known) => known ?? []);
      fail(cause);
    });
  }, [shelf, fail]);
  useEffect(look, [look]);
  const then = (work: Promise<unknown>) => {
    setTrouble(undefined);
    work.then(look, fail);
  };
  const ways: JobWays = {
    onOpen,
    onRename: (id, name) => then(shelf.rename(id, name)),
    onDuplicate: ({ id, name }) => then(shelf.duplicate(id, t("home.jobs.copy-of", { name }))),
    onArchive: ({ id, archived }) => then(shelf.archive(id, archived ? "back" : "aside")),
    onSave: ({ id, name }, as) =>
      then(
        as === "json"
          ? shelf.fileText(id).then((text) => saveFile({ name: jobFileName(name, as), text }))
          : shelf
              .packed(id)
              .then((bytes) =>
                saveFile({ name: jobFileName(name, as), text: bytes, type: "application/zip" }),
              ),
      ),
    onDelete: ({ id, name }) => then(shelf.remove(id).then(({ restore }) => setDeleted({ name, restore }))),
  };
  const aside = jobs?.filter(({ archived }) => archived) ?? [];
  return (
    <div className="home">
      <header className="home-top">
        <h1 className="home-title">{t("home.title")}</h1>
        <p className="home-purpose">{t("home.purpose")}</p>
      </header>
      {trouble === undefined ? null : (
        <Say severity="must" live>
          <p>{t("home.trouble")}</p>
          <p className="hint">{trouble}</p>
        </Say>
      )}
      {deleted === undefined ? null : (
        <div className="home-undo row row-apart" role="status">
          {t("home.jobs.deleted", { name: deleted.name })}
          <Button
            className="button"
            onPress={() => {
              setDeleted(undefined);
              then(deleted.restore());
            }}
          >
            {t("home.jobs.undo")}
          </Button>
        </div>
      )}
      <RoomStart calculations={calculations} shelf={shelf} onOpen={onOpen} onTrouble={fail} aside={waiting} />
      <div className="home-beside">
        <section className="home-list stack" aria-labelledby="home-jobs-head" aria-busy={jobs === undefined}>
          <div className="row row-apart">
            <h2 id="home-jobs-head" className="home-head">
              {t("home.jobs.title")}
            </h2>
            <span className="row">
              <Button
                className="button"
                onPress={() => shelf.create(emptySite(shelf.startModels())).then(onOpen, fail)}
              >
                {t("home.empty.open")}
              </Button>
              <Button
                className="button"
                onPress={() =>
                  shelf.create(emptySite(shelf.startModels())).then((id) => onOpen(id, "visit"), fail)
                }
              >
                {t("home.call.open")}
              </Button>
              <Button className="button" onPress={() => shelf.demo().then(onOpen, fail)}>
                {t("home.demo.open")}
              </Button>
            </span>
          </div>
          {jobs === undefined ? (
            <p className="hint">{t("home.jobs.looking")}</p>
          ) : jobs.length === 0 ? (
            <p className="hint">{t("home.jobs.none")}</p>
          ) : (
            <>
              <JobRows jobs={jobs.filter(({ archived }) => !archived)} shelf={shelf} {...ways} />
              {aside.length === 0 ? null : (
                <More word={t("shelf.archived", { count: aside.length })}>
                  <JobRows jobs={aside} shelf={shelf} {...ways} />
                </More>
              )}
            </>
          )}
          <StorageTold about={jobs} />
        </section>
        <ModelStart
          calculations={calculations}
          shelf={shelf}
          onOpen={onOpen}
          onChanged={look}
          onWaiting={setWaiting}
        />
      </div>
      <Cautions />
    </div>
  );
}
