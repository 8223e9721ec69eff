import { memo, useEffect, useRef } from "react";
import { Button, Header, Menu, MenuItem, MenuSection, MenuTrigger, Popover } from "react-aria-components";
import type { Finding, Metres } from "#engine";
import { addMenu } from "../plan/tools/kinds.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText, t } from "../texts/index.ts";
import type { Actions } from "./actions.ts";
import { Sign } from "./signs.tsx";
import { type Stage, type Store, usePart, type Workbench } from "./workbench.ts";

const stages: readonly Stage[] = ["survey", "place", "wire", "set", "test", "hand-over"];

interface StageLineProps {
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly findings: readonly Finding[];
}

/** The stages as a line of words, in the order of the job; each with what is still open in it. */
export const StageLine = memo(function StageLine({ store, actions, findings }: StageLineProps) {
  const { stage, tool, readOnly, measured, wiring, settings } = usePart(store, (bench) => ({
    stage: bench.stage,
    tool: bench.tool,
    readOnly: bench.job.readOnly,
    measured: measuredIn(bench),
    wiring: bench.wiring?.findings,
    settings: bench.settings?.findings,
  }));
  const units = useUnits();
  const line = useRef<HTMLElement | null>(null);
  const counts = countsOf(findings, { wire: wiring ?? [], set: settings ?? [] });
  const shown = `${stage} ${counts.place} ${counts.wire} ${counts.set}`;
  // On a phone the line is longer than the screen: the stage that one is in stays in sight.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks again when another stage or count stands in the line
  useEffect(() => {
    const word = line.current?.querySelector<HTMLElement>("[aria-current]");
    if (line.current && word)
      line.current.scrollLeft =
        word.offsetLeft - line.current.offsetLeft - (line.current.clientWidth - word.offsetWidth) / 2;
  }, [shown]);
  const goTo = (next: Stage): void => {
    actions.take({ kind: "select" });
    // A stage that brings a panel of its own shows it; findings are numbered anew in each list.
    const fresh = next !== stage && [next, stage].some((one) => one !== "survey" && one !== "place");
    store.set({
      stage: next,
      ...(fresh ? { pointing: undefined, finding: undefined, selection: [], panel: { kind: "thing" } } : {}),
    });
  };
  return (
    <footer className="stage-line no-print">
      <nav ref={line} className="stages" aria-label={t("shell.stages")}>
        {stages.map((one) => (
          <span key={one} className="stage-item">
            <Button
              className="stage-word"
              {...(stage === one ? { "aria-current": "step" as const } : {})}
              onPress={() => goTo(one)}
            >
              {t(`shell.stage.${one}`)}
            </Button>
            {counts[one] > 0 ? (
              <Button
                className="stage-count"
                aria-label={t("shell.open-findings", { count: counts[one] })}
                onPress={() => {
                  goTo(one);
                  store.set({ panel: { kind: "findings" } });
                }}
              >
                {counts[one]}
              </Button>
            ) : null}
          </span>
        ))}
      </nav>
      <span className="bar-gap" />
      {readOnly ? (
        <span className="hint">{t("shell.read-only")}</span>
      ) : tool.kind === "add" || tool.kind === "measure" ? (
        <span className={tool.kind === "add" ? "tool-now tool-add" : "tool-now"} role="status">
          <span className="bar-cut">
            {tool.kind === "add"
              ? t(`plan.add.${tool.what}.how`)
              : measured === 0
                ? t("plan.measure.how")
                : t("plan.measure.is", { length: lengthText(measured, units) })}
          </span>
          {tool.kind === "measure" ? (
            <Button className="bar-word tool-end" onPress={() => actions.take({ kind: "select" })}>
              {t("plan.measure.end")}
            </Button>
          ) : (
            <Button className="bar-word" onPress={actions.letGo}>
              {t("plan.add.stop")}
            </Button>
          )}
        </span>
      ) : (
        <MenuTrigger>
          <Button className="bar-word" aria-label={t("plan.add")}>
            <Sign name="plus" />
            <span className="bar-roomy">{t("plan.add")}</span>
          </Button>
          <Popover className="menu-box" placement="top end">
            <Menu
              className={addMenu[stage].length > 1 ? "menu menu-columns" : "menu"}
              aria-label={t("plan.add")}
            >
              {addMenu[stage].map(([group, kinds]) => (
                <MenuSection key={group} className="menu-group">
                  <Header className="menu-head">{t(`plan.add.group.${group}`)}</Header>
                  {kinds.map((what) => (
                    <MenuItem
                      key={what}
                      className="menu-item"
                      onAction={() => actions.take({ kind: "add", what })}
                    >
                      {t(`plan.add.${what}`)}
                    </MenuItem>
                  ))}
                </MenuSection>
              ))}
            </Menu>
          </Popover>
        </MenuTrigger>
      )}
      <Button
        className="bar-word bar-sign"
        aria-label={t("plan.measure")}
        aria-pressed={tool.kind === "measure"}
        onPress={() => actions.take(tool.kind === "measure" ? { kind: "select" } : { kind: "measure" })}
      >
        <Sign name="measure" />
        <span className="bar-wide">{t("plan.measure")}</span>
      </Button>
      <span className="zoom-keys">
        <Button
          className="bar-word bar-sign"
          aria-label={t("plan.zoom.out")}
          onPress={() => actions.zoom(0.8)}
        >
          <Sign name="minus" />
        </Button>
        <Button className="bar-word bar-sign" aria-label={t("plan.zoom.fit")} onPress={actions.showAll}>
          <Sign name="fit" />
        </Button>
        <Button
          className="bar-word bar-sign"
          aria-label={t("plan.zoom.in")}
          onPress={() => actions.zoom(1.25)}
        >
          <Sign name="plus" />
        </Button>
      </span>
    </footer>
  );
});

/** What was measured, once the hand has let go; 0: nothing yet. */
function measuredIn({ toolState }: Workbench): Metres {
  if (toolState.on !== "measure" || toolState.held !== "set") return 0;
  return Math.hypot(toolState.to[0] - toolState.from[0], toolState.to[1] - toolState.from[1]);
}

/** Findings about how the plan was drawn or read belong to the survey, the others to placing. */
export function stageOf(finding: Finding): "survey" | "place" {
  return surveyCodes.test(finding.code) ? "survey" : "place";
}

const surveyCodes = /^(room|opening|obstacle|outline|storey|floor-piece|dwell-place|job|record|luminaire)/;

function countsOf(
  findings: readonly Finding[],
  own: Readonly<Record<"wire" | "set", readonly Finding[]>>,
): Readonly<Record<Stage, number>> {
  const open = (list: readonly Finding[]): number =>
    list.filter(({ severity }) => severity !== "note").length;
  const counts = { survey: 0, place: 0, wire: open(own.wire), set: open(own.set), test: 0, "hand-over": 0 };
  for (const finding of findings) if (finding.severity !== "note") counts[stageOf(finding)] += 1;
  return counts;
}
