export type { Command, CommandWorld, Edit, Outcome } from "./commands/command.ts";
export type { SurveyRecords } from "./commands/survey-records.ts";
export type { JobDocument, Snapshot } from "./document/contract.ts";
export * from "./schema/index.ts";
