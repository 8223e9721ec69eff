import { useState } from "react";
import { Button, Input, Label, Menu, MenuItem, MenuTrigger, Popover, TextField } from "react-aria-components";
import type { JobEntry } from "../contract.ts";
import { t } from "../texts/index.ts";

export interface JobRowsProps {
  readonly jobs: readonly JobEntry[];
  readonly onOpen: (id: string) => void;
  readonly onRename: (id: string, name: string) => void;
  readonly onDuplicate: (job: JobEntry) => void;
  readonly onSave: (job: JobEntry) => void;
  readonly onDelete: (job: JobEntry) => void;
}

const dateOf = new Intl.DateTimeFormat("en", { day: "numeric", month: "short", year: "numeric" });

/** The jobs, newest first; one press opens, the rest is in each row's menu. */
export function JobRows({ jobs, ...ways }: JobRowsProps) {
  const [renaming, setRenaming] = useState<string | undefined>();
  return (
    <ul className="home-jobs">
      {[...jobs]
        .sort((a, b) => (b.changed ?? 0) - (a.changed ?? 0))
        .map((job) => (
          <li key={job.id} className="home-job">
            {renaming === job.id ? (
              <NameForm
                name={job.name}
                onDone={(name) => {
                  setRenaming(undefined);
                  if (name !== undefined && name !== job.name) ways.onRename(job.id, name);
                }}
              />
            ) : (
              <Button className="home-job-open" onPress={() => ways.onOpen(job.id)}>
                <span className="home-job-name">{job.name === "" ? t("home.jobs.unnamed") : job.name}</span>
                <span className="hint">
                  {job.changed === undefined ? "" : `${dateOf.format(job.changed)} · `}
                  {t(`home.jobs.where.${job.where}`)}
                </span>
              </Button>
            )}
            <RowMenu job={job} ways={ways} onRename={() => setRenaming(job.id)} />
          </li>
        ))}
    </ul>
  );
}

interface RowMenuProps {
  readonly job: JobEntry;
  readonly ways: Omit<JobRowsProps, "jobs">;
  readonly onRename: () => void;
}

function RowMenu({ job, ways, onRename }: RowMenuProps) {
  return (
    <MenuTrigger>
      <Button
        className="button button-quiet button-sign"
        aria-label={t("home.jobs.menu", { name: job.name })}
      >
        <svg viewBox="0 0 18 18" aria-hidden="true">
          <path d="M4 5h10M4 9h10M4 13h10" />
        </svg>
      </Button>
      <Popover className="menu-box" placement="bottom end">
        <Menu className="menu">
          <MenuItem className="menu-item" onAction={onRename}>
            {t("home.jobs.rename")}
          </MenuItem>
          <MenuItem className="menu-item" onAction={() => ways.onDuplicate(job)}>
            {t("home.jobs.duplicate")}
          </MenuItem>
          <MenuItem className="menu-item" onAction={() => ways.onSave(job)}>
            {t("home.jobs.save")}
          </MenuItem>
          <MenuItem className="menu-item" onAction={() => ways.onDelete(job)}>
            {t("home.jobs.delete")}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
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
