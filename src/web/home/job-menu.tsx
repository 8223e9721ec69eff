import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import type { JobEntry } from "../contract.ts";
import { t } from "../texts/shelf.ts";

/** What may be done with a job of the list. */
export interface JobWays {
  readonly onOpen: (id: string) => void;
  readonly onRename: (id: string, name: string) => void;
  readonly onDuplicate: (job: JobEntry) => void;
  readonly onSave: (job: JobEntry, as: "json" | "zip") => void;
  readonly onArchive: (job: JobEntry) => void;
  readonly onDelete: (job: JobEntry) => void;
}

interface JobMenuProps {
  readonly job: JobEntry;
  readonly ways: JobWays;
  readonly onRename: () => void;
  /** Asks first. */
  readonly onDelete: () => void;
}

/** What may be done with a job as a whole. */
export function JobMenu({ job, ways, onRename, onDelete }: JobMenuProps) {
  const items: readonly (readonly [word: string, action: () => void])[] = [
    [t("home.jobs.rename"), onRename],
    [t("home.jobs.duplicate"), () => ways.onDuplicate(job)],
    [t(job.archived ? "shelf.bring-back" : "shelf.archive"), () => ways.onArchive(job)],
    [t("shelf.save-json"), () => ways.onSave(job, "json")],
    [t("shelf.save-zip"), () => ways.onSave(job, "zip")],
    [t("home.jobs.delete"), onDelete],
  ];
  return (
    <MenuTrigger>
      <Button
        className="button button-quiet button-sign"
        aria-label={t("home.jobs.menu", { name: job.name || t("home.jobs.unnamed") })}
      >
        <svg viewBox="0 0 18 18" aria-hidden="true">
          <path d="M4 5h10M4 9h10M4 13h10" />
        </svg>
      </Button>
      <Popover className="menu-box" placement="bottom end">
        <Menu className="menu">
          {items.map(([word, action]) => (
            <MenuItem key={word} className="menu-item" onAction={action}>
              {word}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
