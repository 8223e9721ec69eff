import { memo } from "react";
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import { t } from "../texts/index.ts";
import type { Actions } from "./actions.ts";
import { ShowMenu } from "./show-menu.tsx";
import { Sign } from "./signs.tsx";
import { type Panel, type Store, usePart, type Workbench } from "./workbench.ts";

interface TopBarProps {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly onHome: () => void;
  readonly onPrint: () => void;
  /** Hands the job to the person as a file. */
  readonly onSave: (as: "json" | "zip") => void;
  readonly standing: string;
}

/** Job, storey, undo, redo, show, print. */
export const TopBar = memo(function TopBar({
  store,
  actions,
  onHome,
  onPrint,
  onSave,
  standing,
}: TopBarProps) {
  const { job, storey } = usePart(store, (bench) => ({ job: bench.job, storey: bench.storey }));
  const { site } = job;
  const here = site.storeys.find(({ id }) => id === storey);
  // The card holds one thing: what one was drawing is put down.
  const show = (panel: Panel): void => {
    actions.take({ kind: "select" });
    store.set({ panel });
  };
  return (
    <header className="top-bar no-print">
      <MenuTrigger>
        <Button className="bar-word bar-job">
          <span className="bar-cut">{site.name === "" ? t("home.jobs.unnamed") : site.name}</span>
          <Sign name="down" />
        </Button>
        <Popover className="menu-box" placement="bottom start">
          <Menu className="menu" aria-label={t("shell.job")}>
            <MenuItem className="menu-item" onAction={onHome}>
              {t("shell.home")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={() => show({ kind: "settings" })}>
              {t("shell.details")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={() => show({ kind: "models" })}>
              {t("shell.models")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={() => show({ kind: "phone" })}>
              {t("shell.panel.phone")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={() => onSave("json")}>
              {t("shell.save")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={() => onSave("zip")}>
              {t("shell.save-zip")}
            </MenuItem>
            <MenuItem className="menu-item" onAction={onPrint}>
              {t("shell.print")}
            </MenuItem>
          </Menu>
          <p className="menu-note">{standing}</p>
        </Popover>
      </MenuTrigger>
      {site.storeys.length > 1 ? (
        <MenuTrigger>
          <Button className="bar-word bar-storey" aria-label={t("shell.storey", { name: here?.name ?? "" })}>
            <span className="bar-cut">{here?.name ?? t("shell.no-storey")}</span>
            <Sign name="down" />
          </Button>
          <Popover className="menu-box" placement="bottom start">
            <Menu
              className="menu"
              aria-label={t("shell.storeys")}
              selectionMode="single"
              disallowEmptySelection
              selectedKeys={[storey]}
              onAction={(id) => actions.goTo(String(id))}
            >
              {[...site.storeys]
                .sort((a, b) => b.elevation - a.elevation)
                .map(({ id, name }) => (
                  <MenuItem key={id} id={id} className="menu-item">
                    {name}
                  </MenuItem>
                ))}
            </Menu>
          </Popover>
        </MenuTrigger>
      ) : (
        <span className="bar-name bar-cut">{here?.name}</span>
      )}
      <span className="bar-gap" />
      <Button
        className="bar-word bar-sign"
        aria-label={t("shell.undo")}
        isDisabled={!job.canUndo}
        onPress={job.undo}
      >
        <Sign name="undo" />
        <span className="bar-wide">{t("shell.undo")}</span>
      </Button>
      <Button
        className="bar-word bar-sign"
        aria-label={t("shell.redo")}
        isDisabled={!job.canRedo}
        onPress={job.redo}
      >
        <Sign name="redo" />
        <span className="bar-wide">{t("shell.redo")}</span>
      </Button>
      <ShowMenu store={store} />
      <Button className="bar-word bar-sign bar-print" aria-label={t("shell.print")} onPress={onPrint}>
        <Sign name="print" />
        <span className="bar-wide">{t("shell.print")}</span>
      </Button>
    </header>
  );
});
