import { useState } from "react";
import { Button, Input, Label, TextField } from "react-aria-components";
import type { HomeShelf, JobEntry } from "../contract.ts";
import { spokenLanguage } from "../texts/language.ts";
import { t } from "../texts/shelf.ts";
import { JobMenu, type JobWays } from "./job-menu.tsx";
import { JobPicture } from "./job-picture.tsx";

export interface JobRowsProps extends JobWays {
  readonly jobs: readonly JobEntry[];
  readonly shelf: Pick<HomeShelf, "picture">;
}

/** Within this time of a change here, the server's time is that of the same change arriving there. [ms] */
const arriving = 60_000;
/** Whether the picture may be of an older plan than the server's. */
const older = (job: JobEntry): boolean =>
  job.here !== undefined && job.changed !== undefined && job.changed > job.here + arriving;

const timeOf = (): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat(spokenLanguage(), {
    day: "numeric",
    month: "short",
    hour: "2-digit",
    minute: "2-digit",
  });
const dateOf = (): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat(spokenLanguage(), { day: "numeric", month: "short", year: "numeric" });

/** The jobs, newest first; one press opens, the rest is in each row's menu. */
export function JobRows({ jobs, shelf, ...ways }: JobRowsProps) {
  const [asked, setAsked] = useState<{ readonly id: string; readonly what: "name" | "delete" } | undefined>();
  const done = (): void => setAsked(undefined);
  return (
    <ul className="home-jobs">
      {[...jobs]
        .sort((a, b) => (b.changed ?? 0) - (a.changed ?? 0))
        .map((job) => {
          const what = asked?.id === job.id ? asked.what : undefined;
          const name = job.name === "" ? t("home.jobs.unnamed") : job.name;
          return (
            <li key={job.id} className="home-job">
              <JobPicture job={job} shelf={shelf} />
              {what === "name" ? (
                <NameForm
                  name={job.name}
                  onDone={(typed) => {
                    done();
                    if (typed !== undefined && typed !== job.name) ways.onRename(job.id, typed);
                  }}
                />
              ) : what === "delete" ? (
                <div className="home-job-sure" role="alert">
                  <span>{t("shelf.delete.sure", { name })}</span>
                  <span className="row">
                    <Button
                      className="button"
                      onPress={() => {
                        done();
                        ways.onDelete(job);
                      }}
                    >
                      {t("shelf.delete.yes")}
                    </Button>
                    <Button className="button button-quiet" onPress={done} autoFocus>
                      {t("shelf.delete.no")}
                    </Button>
                  </span>
                </div>
              ) : (
                <Button className="home-job-open" onPress={() => ways.onOpen(job.id)}>
                  <span className="home-job-name">{name}</span>
                  <span className="hint">
                    {job.changed === undefined ? "" : `${dateOf().format(job.changed)} · `}
                    {t(`home.jobs.where.${job.where}`)}
                  </span>
                  {older(job) ? (
                    <span className="hint">
                      {t("shelf.picture.older", { date: timeOf().format(job.here) })}
                    </span>
                  ) : null}
                </Button>
              )}
              {what === undefined ? (
                <JobMenu
                  job={job}
                  ways={ways}
                  onRename={() => setAsked({ id: job.id, what: "name" })}
                  onDelete={() => setAsked({ id: job.id, what: "delete" })}
                />
              ) : null}
            </li>
          );
        })}
    </ul>
  );
}

function NameForm({
  name,
  onDone,
}: {
  readonly name: string;
  readonly onDone: (name: string | undefined) => void;
}) {
  const [typed, setTyped] = useState(name);
  const finish = () => onDone(typed.trim() === "" ? undefined : typed.trim());
  return (
    <TextField className="home-job-rename field" value={typed} onChange={setTyped} autoFocus>
      <Label className="unseen">{t("home.jobs.new-name")}</Label>
      <span className="field-box">
        <Input
          className="field-input"
          onBlur={finish}
          onKeyDown={(event) => {
            if (event.key === "Enter") finish();
            if (event.key === "Escape") onDone(undefined);
          }}
        />
      </span>
    </TextField>
  );
}
