import type { CatalogueEntry } from "./entry.ts";

/** What a person should know of rooms that were found in the lines of a plan. */
export const planRoomProblems = {
  "plan-no-rooms": {
    severity: "should",
    message: "No closed rooms were found in {file}; its lines lie under the plan.",
    remedy: "Draw the rooms over them, or read the file again with other layers or another unit.",
  },
  "plan-heights-assumed": {
    severity: "note",
    message:
      "A plan shows no heights: {ceiling} m was taken for the ceilings (rooms: {rooms}), {head} m for the heads of doors (doors: {doors}).",
    remedy: "Enter the measured heights; reach and shadows depend on them.",
  },
  "plan-rooms-unsure": {
    severity: "note",
    message: "Rooms that are not certain ({count}): {rooms}. Reasons: {doubts}.",
    remedy: "Compare them with the lines under them, and redraw what is wrong.",
  },
  "plan-scale-without-paper": {
    severity: "must",
    message:
      "A scale was given, but a {format} drawing is no sheet of paper: its lengths are those of the building.",
    remedy: "Leave the scale out, and give the unit of the drawing if it is another than proposed.",
  },
  "plan-block-unknown": {
    severity: "must",
    message: "No block of the drawing is called {asked}. Blocks that could be luminaires: {blocks}.",
    remedy: "Name one of these, or leave --luminaires out and place the luminaires by hand.",
  },
  "plan-unit-assumed": {
    severity: "note",
    message: "{reason} One unit of the drawing was taken as one {unit}.",
    remedy: "If doors come out too wide or too narrow, read the file again with another unit.",
  },
} as const satisfies Record<string, CatalogueEntry>;
