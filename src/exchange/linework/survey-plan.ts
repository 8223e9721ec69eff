import { type Metres, type Problem, say } from "#engine";
import { findRooms } from "../rooms-from-lines/find-rooms.ts";
import { surveyOfPlan, usualHeights } from "../rooms-from-lines/found-survey.ts";
import type { DrawingBlock, ImportReport, SurveyRecords } from "../survey.ts";
import type { UnitProposal } from "./linework.ts";
import { luminairesInRooms } from "./luminaires-in-rooms.ts";
import { type PlanTask, readPlan } from "./read-plan.ts";

/** What a person chose of a plan; what is absent is proposed. */
export interface PlanChoice {
  /** Metres in one drawing unit. */
  readonly metres?: Metres;
  /** Denominator of the scale of a printed sheet: 100 is 1 : 100. */
  readonly scale?: number;
  /** Names of the layers that rooms are looked for in. */
  readonly layers?: readonly string[];
  /** Index of the floor where a drawing has several. */
  readonly part?: number;
  readonly storey?: { readonly id: string; readonly name: string; readonly elevation: Metres };
  readonly ceiling?: Metres;
  /** Names of the blocks that are luminaires. */
  readonly luminaires?: readonly string[];
}

/** A plan as a survey, with what was assumed and what else could be chosen. */
export interface PlanSurvey {
  readonly survey: SurveyRecords;
  readonly report: ImportReport;
  readonly plan: {
    readonly unit: UnitProposal;
    /** Metres in one drawing unit, as taken. */
    readonly metres: Metres;
    /** Height of all ceilings, as taken. */
    readonly ceiling: Metres;
    readonly layers: readonly { readonly name: string; readonly lines: number; readonly looked: boolean }[];
    readonly parts: readonly string[];
    /** Part that was taken. */
    readonly part: number;
    readonly pages: number;
    readonly page: number;
  };
}

export type PlanSurveyResult = PlanSurvey | { readonly problems: readonly Problem[] };

/**
 * Reads a plan, finds its rooms and doors, and makes survey records of them, with the plan's lines as an underlay.
 *
 * @param task - The file. @param choice - What a person has settled. @param progress - Step and share done.
 */
export async function surveyPlan(
  task: PlanTask,
  choice: PlanChoice,
  progress: (step: string, share: number) => void,
): Promise<PlanSurveyResult> {
  const read = await readPlan(task, (step, share) => progress(step, 0.5 * share));
  if ("problems" in read) return read;
  const { linework } = read;
  progress("rooms", 0.5);
  const { unit } = linework;
  if (choice.scale !== undefined && unit.paper === undefined)
    return {
      problems: [{ code: "plan-scale-without-paper", values: { format: linework.format.toUpperCase() } }],
    };
  const atScale = choice.scale === undefined ? undefined : choice.scale * unit.paper!;
  const metres = choice.metres ?? atScale ?? unit.metres;
  const ceiling = choice.ceiling ?? usualHeights.ceiling;
  const part = Math.min(Math.max(0, choice.part ?? 0), linework.parts.length - 1);
  const storey = choice.storey ?? {
    id: "ground",
    name: linework.parts[part]?.name || "Ground floor",
    elevation: 0,
  };
  const several = linework.parts.length > 1;
  const found = findRooms(linework, {
    metres,
    ...(choice.layers === undefined ? {} : { layers: choice.layers }),
    ...(several ? { box: linework.parts[part]!.box } : {}),
  });
  const { survey, notes } = surveyOfPlan(found, linework, {
    storey,
    metres,
    ceiling,
    head: usualHeights.head,
    ...(several ? { part: { index: part, box: linework.parts[part]!.box } } : {}),
  });
  const [drawing] = survey.drawings;
  const blocks = drawing?.blocks ?? [];
  const asked = choice.luminaires ?? [];
  const unknown = asked.filter((name) => !blocks.some((block) => sameName(block.name, name)));
  if (unknown.length > 0) return { problems: [blockUnknown(unknown, blocks)] };
  const lit = luminairesInRooms(
    { id: drawing?.id ?? "", blocks },
    asked.map((name) => ({ name })),
    survey.rooms,
  );
  progress("done", 1);
  const settled = choice.metres !== undefined || choice.scale !== undefined;
  const unitNote: readonly Problem[] =
    settled || unit.from === "declared"
      ? []
      : [{ code: "plan-unit-assumed", values: { unit: unit.name, reason: unit.reason } }];
  const { pages, page } = { pages: 1, page: 1, ...read.report };
  return {
    survey: { ...survey, luminaires: lit.luminaires },
    report: {
      file: linework.file,
      schema: linework.format.toUpperCase(),
      unit: settled ? `${metres} m` : unit.name,
      storeys: [{ name: storey.name, elevation: storey.elevation, rooms: survey.rooms.length }],
      rooms: survey.rooms.map((room, index) => ({
        id: room.id,
        name: room.name || room.number,
        storey: room.storey,
        area: found.rooms[index]!.area,
        height: room.ceilingHeight,
      })),
      openings: survey.openings.length,
      obstacles: 0,
      luminaires: lit.luminaires.length,
      leftOut: [
        ...read.report.leftOut,
        ...(lit.outside > 0 ? [{ what: say`luminaire`, why: say`lies in no room`, count: lit.outside }] : []),
      ],
      // The reason for the unit says what the file declares as well: once is enough.
      notes: [
        ...read.report.notes.filter(({ code }) => unitNote.length === 0 || code !== "dxf-unit-doubted"),
        ...unitNote,
        ...notes,
      ],
    },
    plan: {
      unit,
      metres,
      ceiling,
      layers: linework.layers.map(({ name, lines }) => ({
        name,
        lines,
        looked: found.layers.includes(name),
      })),
      parts: linework.parts.map(({ name }) => name),
      part,
      pages,
      page,
    },
  };
}

const sameName = (one: string, other: string): boolean => one.toUpperCase() === other.toUpperCase();

/** More names than this nobody reads in one sentence. */
const mostNamed = 12;

const blockUnknown = (asked: readonly string[], blocks: readonly DrawingBlock[]): Problem => ({
  code: "plan-block-unknown",
  values: {
    asked: asked.join(", "),
    blocks:
      blocks.length === 0
        ? say`none`
        : [
            ...blocks.slice(0, mostNamed).map(({ name, places }) => `${name} (${places.length})`),
            ...(blocks.length > mostNamed ? ["…"] : []),
          ].join(", "),
  },
});
