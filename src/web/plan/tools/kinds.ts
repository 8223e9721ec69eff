/** Everything that one can draw, with the gesture that sets it down. */
export const addKinds = {
  room: "box",
  lRoom: "box",
  roomChain: "chain",
  drawnRoom: "touch",
  wall: "line",
  door: "touch",
  passage: "touch",
  window: "touch",
  glazing: "touch",
  partition: "line",
  glassScreen: "line",
  rackRow: "line",
  lockers: "line",
  benches: "line",
  cubicles: "line",
  showers: "line",
  deskGroup: "box",
  meetingTable: "box",
  column: "touch",
  obstacle: "box",
  dwellPlace: "touch",
  duct: "line",
  beam: "line",
  luminaire: "touch",
  luminaireRow: "line",
  luminaireGrid: "box",
  smokeHead: "touch",
  sprinkler: "touch",
  ceilingThing: "touch",
  ceilingGrid: "touch",
  heater: "touch",
  fan: "touch",
  airOutlet: "touch",
  flight: "line",
  landing: "box",
  switch: "touch",
  detector: "touch",
} as const satisfies Readonly<Record<string, Gesture>>;

/** A touch; two ends of a line; two corners of a rectangle; a corner after the other until the ring closes. */
export type Gesture = "touch" | "line" | "box" | "chain";

export type AddKind = keyof typeof addKinds;

export const gestureOf = (what: AddKind): Gesture => addKinds[what];

/** What can be drawn in a stage, by the heading under which the menu shows it. */
export const addMenu = {
  survey: [
    ["rooms", ["roomChain", "room", "lRoom", "drawnRoom", "wall"]],
    ["openings", ["door", "passage", "window", "glazing"]],
    [
      "furniture",
      ["deskGroup", "meetingTable", "rackRow", "lockers", "benches", "partition", "glassScreen", "obstacle"],
    ],
    ["wet", ["cubicles", "showers"]],
    ["building", ["column", "duct", "beam", "flight", "landing"]],
    ["warm", ["heater", "fan", "airOutlet"]],
    [
      "ceiling",
      ["ceilingGrid", "luminaire", "luminaireRow", "luminaireGrid", "smokeHead", "sprinkler", "ceilingThing"],
    ],
    ["other", ["dwellPlace", "switch"]],
  ],
  place: [["place", ["detector", "dwellPlace", "obstacle", "heater"]]],
  wire: [
    ["ceiling", ["luminaire", "luminaireRow", "luminaireGrid"]],
    ["other", ["switch"]],
  ],
  set: [
    ["place", ["detector"]],
    ["openings", ["window", "glazing"]],
    ["other", ["switch"]],
  ],
  test: [["place", ["detector", "obstacle", "heater"]]],
  "hand-over": [["place", ["detector"]]],
} as const satisfies Readonly<Record<string, readonly (readonly [string, readonly AddKind[]])[]>>;
