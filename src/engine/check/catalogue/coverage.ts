import type { CatalogueEntry } from "./entry.ts";

/** What the calculation of coverage finds in a room. */
export const coverageProblems = {
  // What is demanded
  "room-without-standing-area": {
    severity: "must",
    message: "Nobody can stand in room {room}: obstacles and walls leave no floor.",
    remedy: "Check the obstacles and the outline.",
  },
  "door-blocked": {
    severity: "must",
    message:
      "Nobody gets into room {room} through {opening}: something stands in the way, or it is too narrow.",
    remedy: "Move the obstacle clear, or correct the width.",
  },
  "cannot-be-walked-to": {
    severity: "note",
    message: "{area} m² of room {room} cannot be walked to from any door; they are not planned for.",
    remedy: "Check the obstacles, or draw the door that leads there.",
  },
  "dwell-place-taken": {
    severity: "must",
    message: "A {kind} in room {room} lies under something tall: nobody can be there.",
    remedy: "Move the place or the obstacle.",
  },
  "manual-override-needed": {
    severity: "note",
    message: "Room {room} is a plant room: somebody working still in it must not be left in the dark.",
    remedy: "Plan a manual switch that the detector cannot switch off.",
  },

  // What is not covered
  "no-detector": {
    severity: "must",
    message: "Room {room} has no detector.",
    remedy: "Run Place, or take the room out of the job.",
  },
  "walk-gap": {
    severity: "must",
    message: "{area} m² in room {room} where people walk are not seen: {cause}.",
    remedy: "Move a detector closer, or add one.",
  },
  "hold-gap": {
    severity: "must",
    message:
      "{area} m² of a {kind} in room {room} are not seen: {cause}. The light goes off on somebody sitting still.",
    remedy: "Move a detector closer, add one, or choose a model that reaches further for seated people.",
  },
  "gaps-tolerated": {
    severity: "note",
    message: "Small gaps in room {room} are within the tolerance: {count} in all, together {area} m².",
    remedy: "Nothing has to be done; placing again would close them.",
  },
  "body-heat-weak": {
    severity: "should",
    message: "Room {room} reaches {temperature} °C: body heat will not be seen reliably here.",
    remedy: "Add a manual switch or a timer, or another kind of detector; verify on a warm day.",
  },
  "bays-need-sound": {
    severity: "should",
    message: "The cubicles of room {room} are closed to view, and no detector in it hears.",
    remedy: "Choose a model with sound, or hang a detector over each cubicle.",
  },

  // Ways in the dark
  "dark-walk-too-long": {
    severity: "should",
    message:
      "From {opening} one walks {metres} m in the dark in room {room} before the light comes on; the limit is {limit} m.",
    remedy: "Move a detector towards that door.",
  },
  "dark-walk-unlit": {
    severity: "must",
    message: "From {opening} one walks {metres} m through room {room} and the light never comes on.",
    remedy: "Place a detector that sees this way.",
  },
  "stair-lit-too-late": {
    severity: "must",
    message:
      "From {opening} the light in room {room} comes on {moment} the first step; it must be {limit} m before.",
    remedy: "Move a detector so that it sees whoever comes before the stair begins.",
  },

  // What should not be seen
  "spill-into-room": {
    severity: "should",
    message: "{tags} in room {room} may see {areas}: passers-by there switch the light on.",
    remedy: "Move the detector away from the door, or mask its lens there.",
  },
  "source-in-view": {
    severity: "should",
    message: "Detector {tag} looks at {kind} {distance} m away in room {room}: it may switch on by itself.",
    remedy: "Move it out of view, or mask its lens there.",
  },
  "source-too-near": {
    severity: "should",
    message: "Detector {tag} is {distance} m from {kind} in room {room}; {limit} m are needed.",
    remedy: "Move it further away.",
  },
} as const satisfies Record<string, CatalogueEntry>;
