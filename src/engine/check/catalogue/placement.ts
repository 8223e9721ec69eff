import type { CatalogueEntry } from "./entry.ts";

/** Why placing found nothing, or less than was asked. */
export const placementProblems = {
  "no-models": {
    severity: "must",
    message: "No detector model may be used in room {room}.",
    remedy: "Add a model from its data sheet, or choose more models for placing.",
  },
  "no-model-for-height": {
    severity: "must",
    message: "The ceiling of room {room} is {height} m high; the chosen models hang at {least} to {most} m.",
    remedy: "Choose a model for this height, or correct the ceiling height.",
  },
  "too-warm-to-place": {
    severity: "must",
    message:
      "Room {room} reaches {temperature} °C: body heat will not be seen reliably here, however many detectors hang in it.",
    remedy: "Switch this room by hand, by a timer or by its door, or correct its highest temperature.",
  },
  "nothing-to-watch": {
    severity: "note",
    message: "Room {room} has nothing that must be seen; no detector is placed.",
    remedy: "Draw a door, or ask for walk or hold in the room.",
  },
  "no-place-on-ceiling": {
    severity: "must",
    message: "No place on the ceiling of room {room} is free: {reasons}.",
    remedy: "Make clearances or forbidden areas smaller, or move what hangs there.",
  },
  "cannot-be-watched": {
    severity: "must",
    message: "{area} m² in room {room} cannot be seen from any allowed place with the chosen models.",
    remedy: "Allow more places, choose a model that reaches further, or move what stands in the way.",
  },
  "clearance-of-walls-reduced": {
    severity: "note",
    message:
      "In room {room} detectors hang nearer to walls than {clearance} m, because the room cannot be covered otherwise.",
    remedy: "Nothing has to be done if the ceiling can be drilled there.",
  },
  "source-cannot-be-avoided": {
    severity: "should",
    message: "In room {room} no layout keeps heaters and air curtains out of view.",
    remedy: "Mask the lens towards them, or accept that they may switch the light.",
  },
  "dark-walk-not-kept": {
    severity: "should",
    message:
      "In room {room} the way in the dark from {opening} is {metres} m with the fewest detectors ({count}); {limit} m are wanted.",
    remedy: "Take the alternative with more detectors, or pin one nearer to that door.",
  },
  "devices-at-one-place": {
    severity: "should",
    message: "In room {room} two detectors hang closer together than they can be mounted.",
    remedy: "Move one of them aside, or place again with other models or places.",
  },
  "placing-stopped": {
    severity: "should",
    message: "Placing in room {room} was stopped before every gap was closed.",
    remedy: "Run it again with more time.",
  },
} as const satisfies Record<string, CatalogueEntry>;
