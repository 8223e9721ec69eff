import {
  figured,
  type Handover,
  joined,
  partTitle,
  readingRows,
  type SiteEntry,
  type SourceId,
  type StepName,
  type StepSubject,
  type Supply,
  samplingRules,
  say,
  shortSourceTitle,
  sources,
  stageTitles,
  stepTitles,
  type TestLine,
  type Words,
  workStages,
} from "#engine";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { column } from "../wiring/schedules.ts";
import { verifyWords } from "../wiring/sheet-frame.ts";
import { figure } from "./check-rows.ts";
import { isProveDead, proveDeadBlock } from "./prove-dead.ts";
import { type Block, uprightPages } from "./upright-pages.ts";
import { whoWhen } from "./who-when.ts";

export interface TestPagesInput {
  readonly handover: Handover;
  readonly title: Omit<SheetTitle, "page" | "pages">;
  /** Names of who entered what, by the id of the entry. */
  readonly by: ReadonlyMap<string, string>;
}

/**
 * Pages for the test certificate in the order of initial verification: stage by stage, each step with its limit and what was
 * found. What nobody has tested stays blank, to be filled in by hand.
 */
export function testPages({ handover, title, by }: TestPagesInput): readonly UnnumberedSheet[] {
  const { tests, order } = handover;
  if (tests.length === 0) return [];
  const [supply] = order.groups
    .map((group): Supply => group.supply)
    .toSorted((a, b) => b.voltage - a.voltage);
  const used = new Set<SourceId>(tests.map(({ state }) => state.step.source));
  const verify = verifyWords([...used]);
  return uprightPages({
    name: "tests",
    heading: say`Test certificate, initial verification`,
    intro: [
      say`In the order of the work. A blank line is not tested: fill it in by hand, with name and date. What was entered on site stands here as entered.`,
    ],
    blocks: [
      ...workStages.flatMap((stage) => [
        stageBlock(handover, { stage, by }),
        ...(stage === "isolation" && tests.some(isProveDead)
          ? [proveDeadBlock(handover, ({ entries }) => byWords(entries, by))]
          : []),
      ]),
      sampleBlock(handover),
      swapBlock(handover),
      beforeBlock(handover, by),
    ],
    title,
    notes: verify === undefined ? [] : [verify],
    ...(supply ? { supply } : {}),
  });
}

function stageBlock(
  handover: Handover,
  of: { readonly stage: (typeof workStages)[number]; readonly by: TestPagesInput["by"] },
): Block {
  const stage = handover.tests.filter(({ state }) => state.step.stage === of.stage);
  const [dead] = stage.filter(isProveDead);
  // Proving dead is a table of its own: here it keeps its place in the order, once for all detectors.
  const lines = stage.filter((line) => line === dead || !isProveDead(line));
  return {
    heading: stageTitles[of.stage],
    columns: [
      column(say`Step`, 48),
      column(say`Of`, 44),
      column(say`Asked`, 28, "end"),
      column(say`Found`, 24, "end"),
      column(say`By, on`, 28),
    ],
    rows: lines.map((line) =>
      line === dead
        ? deadRow(stage.filter(isProveDead))
        : [
            stepTitles[line.state.step.name],
            aboutWords(handover, line.state.step.about),
            askedWords(line),
            foundWords(handover, line),
            byWords(line.entries, of.by),
          ],
    ),
  };
}

/** All detectors in one line; each has its own in the matrix. */
function deadRow(lines: readonly TestLine[]): readonly Words[] {
  const { length } = lines;
  const proved = lines.filter(({ state }) => state.status === "done").length;
  const failed = lines.some(({ state }) => state.status === "failed");
  const begun = lines.some(({ entries }) => entries.length > 0);
  return [
    stepTitles["prove-dead"],
    length === 1 ? say`1 detector, see below` : say`${length} detectors, see below`,
    say`each pair`,
    failed ? say`! failed` : begun ? say`${proved} of ${length} done` : "",
    "",
  ];
}

/** The sample that a code has tested, where the job is tested by one. */
function sampleBlock({ sample, site }: Handover): Block {
  const tags = (ids: readonly string[]): string =>
    ids.map((id) => site.detectors.find((one) => one.id === id)?.tag ?? id).join(", ");
  const source = sample && sources[samplingRules[sample.rule].source];
  const code = joined(
    sample ? [shortSourceTitle(samplingRules[sample.rule].source), source?.clause ?? ""].filter(Boolean) : [],
    ", ",
  );
  return {
    heading: source?.verify ? say`Sample by ${code} (verify)` : say`Sample by ${code}`,
    columns: [
      column(say`Equal detectors`, 66),
      column(say`Asked for`, 50),
      column(say`Tested`, 24, "end"),
      column(say`Failed`, 32, "end"),
    ],
    rows: (sample?.groups ?? []).map(({ combination, devices, asked, escalated, tested, failed }) => [
      combination,
      escalated ? say`${tags(asked)}, all of the group` : tags(asked),
      say`${tested} of ${devices.length}`,
      String(failed),
    ]),
  };
}

/** Detectors that were exchanged; their steps above are those of the device that hangs there now. */
function swapBlock({ swaps }: Handover): Block {
  return {
    heading: say`Detectors exchanged`,
    columns: [
      column(say`Of`, 20),
      column(say`Was`, 44),
      column(say`Is`, 44),
      column(say`Why`, 36),
      column(say`By, on`, 28),
    ],
    rows: swaps.map(({ tag, from, to, reason, serial, by, time }) => [
      tag,
      from,
      serial === undefined ? to : `${to}, ${serial}`,
      reason,
      whoWhen(by, time),
    ]),
  };
}

/** What was found on devices that are gone. */
function beforeBlock(handover: Handover, by: TestPagesInput["by"]): Block {
  return {
    heading: say`Entered before the exchange, kept`,
    columns: [column(say`Step`, 50), column(say`Of`, 44), column(say`Found`, 50), column(say`By, on`, 28)],
    rows: handover.before.map((entry) => [
      stepTitles[entry.step as StepName],
      aboutWords(handover, entry.about),
      outcomeWords(handover, entry),
      byWords([entry], by),
    ]),
  };
}

const outcomes: Readonly<Record<SiteEntry["outcome"], Words>> = {
  done: say`done`,
  passed: say`passed`,
  failed: say`! failed`,
  seen: say`seen`,
  "not-seen": say`not seen`,
  read: say`read`,
  "not-applicable": say`does not apply`,
  withdrawn: say`withdrawn`,
};

function outcomeWords({ order }: Handover, { step, outcome, value, part }: SiteEntry): Words {
  const result = order.steps.find(({ name }) => name === step)?.result;
  const unit = result?.kind === "reading" ? readingRows[result.reading].unit : "";
  const found = value === undefined ? outcomes[outcome] : figure(value, unit);
  return part === undefined || part === "" ? found : joined([partTitle(part), found], ", ");
}

function aboutWords({ site, wiring }: Handover, { kind, id }: StepSubject): Words {
  switch (kind) {
    case "detector":
      return site.detectors.find((one) => one.id === id)?.tag ?? id;
    case "room": {
      const room = site.rooms.find((one) => one.id === id);
      return [room?.number, room?.name].filter(Boolean).join(" ") || id;
    }
    case "luminaire":
      return site.luminaires.find((one) => one.id === id)?.name ?? id;
    case "circuit": {
      const found = wiring.kind === "built" ? wiring.found.circuits.find((one) => one.id === id) : undefined;
      return id === "unassigned" ? say`circuit not entered` : (found?.name ?? id);
    }
    case "board":
      return (
        (wiring.kind === "built" ? wiring.found.boards.find((one) => one.id === id)?.name : undefined) ?? id
      );
    case "job":
      return say`the whole job`;
  }
}

function askedWords({ state: { step } }: TestLine): Words {
  if (step.result.kind !== "reading") {
    if (step.parts.length > 1) return say`${step.parts.length} parts`;
    return step.wait === undefined ? "" : figured(`${Math.round(step.wait / 6) / 10} min`);
  }
  const { unit } = readingRows[step.result.reading];
  const { least, most } = step.result.limit ?? {};
  const limits = [
    ...(least !== undefined && Number.isFinite(least) ? [joined(["≥", figure(least, "")], " ")] : []),
    ...(most !== undefined && Number.isFinite(most) ? [joined(["≤", figure(most, "")], " ")] : []),
  ];
  if (limits.length > 0) return joined([...limits, unit], " ");
  return step.planned === undefined ? unit : say`planned ${figure(step.planned, unit)}`;
}

/** What counts of what was entered; nothing at all where nobody entered anything. */
function foundWords(handover: Handover, { state, entries }: TestLine): Words {
  const { step, status } = state;
  if (step.name === "walk-test") return walkedWords(handover, step.about.id);
  if (entries.length === 0) return "";
  if (status === "not-applicable") return outcomes["not-applicable"];
  const values = entries.flatMap(({ value }) => (value === undefined ? [] : [value]));
  if (step.result.kind === "reading" && values.length > 0) {
    const unit = readingRows[step.result.reading].unit;
    const found = joined(
      values.map((value) => figure(value, "")),
      ", ",
    );
    return joined([found, unit], " ");
  }
  if (status === "failed") return outcomes.failed;
  if (status === "part") return say`${step.parts.length - state.missing.length} of ${step.parts.length} done`;
  return status === "done" ? (step.result.kind === "verdict" ? outcomes.passed : outcomes.done) : "";
}

function walkedWords({ rooms }: Handover, room: string): Words {
  const walked = rooms.find((one) => one.room.id === room)?.walked;
  if (!walked) return "";
  const { verdict, actual, limit } = walked.check;
  const [passed, all] = [figure(actual, ""), figure(limit, "")];
  return verdict === "pass"
    ? say`passed, ${passed} of ${all}`
    : verdict === "fail"
      ? say`! failed, ${passed} of ${all}`
      : say`not proven, ${passed} of ${all}`;
}

function byWords(entries: readonly SiteEntry[], by: TestPagesInput["by"]): Words {
  const last = entries.toSorted((a, b) => (a.time < b.time ? -1 : 1)).at(-1);
  return whoWhen(by.get(last?.id ?? ""), last?.time);
}

/** How far the tests have come, for the cover and the title blocks. */
export function testStanding({ tests }: Handover): "planned" | "in part" | "tested" {
  const behind = tests.filter(({ state }) => state.status === "done" || state.status === "not-applicable");
  if (tests.length > 0 && behind.length === tests.length) return "tested";
  return tests.some(({ entries }) => entries.length > 0) ? "in part" : "planned";
}
