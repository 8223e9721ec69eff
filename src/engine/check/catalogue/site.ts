import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a plan as it was drawn or read. */
export const siteProblems = {
  // Records and what they refer to
  "duplicate-id": {
    severity: "must",
    message: "{count} {kind} share the id {id}.",
    remedy: "Delete the copies; only the first is used.",
  },
  "duplicate-tag": {
    severity: "must",
    message: "Tag {tag} is on {count} detectors.",
    remedy: "Give each detector a tag of its own before labels and schedules are printed.",
  },
  "duplicate-room-number": {
    severity: "should",
    message: "Room number {number} is used {count} times on storey {storey}.",
    remedy: "Correct the numbers, so that schedules and labels point to one room only.",
  },
  "storey-missing": {
    severity: "must",
    message: "Room {room} stands on a storey that does not exist.",
    remedy: "Assign the room to a storey.",
  },
  "record-in-deleted-room": {
    severity: "must",
    message: "{what} belongs to a room that does not exist any more.",
    remedy: "Delete it, or assign it to the room it stands in.",
  },
  "detector-in-deleted-room": {
    severity: "must",
    message: "Detector {tag} hangs in a room that does not exist any more.",
    remedy: "Delete it, or assign it to the room it hangs in.",
  },
  "controls-deleted-room": {
    severity: "must",
    message: "Detector {tag} is to switch the light of a room that does not exist any more.",
    remedy: "Take that room off the list of rooms that the detector switches.",
  },
  "opening-to-deleted-room": {
    severity: "must",
    message: "{opening} leads to a room that does not exist any more.",
    remedy: "Choose the room on the other side, or set it to outside.",
  },
  "model-unknown": {
    severity: "must",
    message: "Detector {tag} is of a model that is not in the list of models.",
    remedy: "Choose a model from the list, or add its data sheet.",
  },
  "number-missing": {
    severity: "must",
    message: "{what}: {field} is not a number.",
    remedy: "Enter {field} again.",
  },
  "default-out-of-range": {
    severity: "must",
    message: "Planning number {field} is {value}; it must lie between {least} and {most}.",
    remedy: "Correct it under Settings, Planning numbers.",
  },

  // Outlines
  "outline-corners-missing": {
    severity: "must",
    message: "{what} has {count} different corners; it needs at least 3.",
    remedy: "Draw it again.",
  },
  "outline-not-a-number": {
    severity: "must",
    message: "{what}: corner {corner} has no usable coordinates.",
    remedy: "Delete that corner, or draw it again.",
  },
  "outline-doubled-corner": {
    severity: "should",
    message: "{what}: corner {corner} lies on top of the one before it.",
    remedy: "Delete one of the two corners.",
  },
  "outline-self-crossing": {
    severity: "must",
    message: "{what} crosses itself near ({x}, {y}).",
    remedy: "Move the corners there so that the lines no longer cross.",
  },
  "outline-without-area": {
    severity: "must",
    message: "{what} encloses no area.",
    remedy: "Move its corners apart, or delete it.",
  },
  "hole-outside-room": {
    severity: "must",
    message: "A hole in the outline of room {room} reaches outside it.",
    remedy: "Move the hole inside, or cut the outline there.",
  },

  // Rooms
  "rooms-overlap": {
    severity: "must",
    message: "Rooms {room} and {other} overlap by {area} m².",
    remedy: "Move the wall between them; each place belongs to one room.",
  },
  "ceiling-height-missing": {
    severity: "must",
    message: "Room {room} has no usable ceiling height ({height} m).",
    remedy: "Enter the height from the finished floor to the ceiling.",
  },
  "ceiling-height-unusual": {
    severity: "should",
    message: "Room {room} is {height} m high.",
    remedy: "Check the height and its unit; detectors are planned for what is entered.",
  },
  "room-without-door": {
    severity: "should",
    message:
      "Room {room} has no door or passage. Its largest part is taken as the floor that people stand on, and the walk in the dark cannot be calculated.",
    remedy: "Draw the door through which people come in.",
  },
  "temperature-unknown": {
    severity: "note",
    message: "Room {room} may get warm, and its highest temperature is not entered; 22 °C is used.",
    remedy: "Enter the highest temperature: above it a body stands out less and detectors reach less far.",
  },
  "floor-piece-outside-room": {
    severity: "must",
    message: "A {kind} of room {room} reaches outside the room.",
    remedy: "Move it inside the outline.",
  },
  "flight-does-not-rise": {
    severity: "must",
    message: "A flight of room {room} does not rise from its foot to its head.",
    remedy: "Set the foot lower than the head, and mark both at different edges.",
  },

  // Openings
  "opening-off-wall": {
    severity: "must",
    message: "{opening} does not lie on a wall of room {room}; it is {distance} m away.",
    remedy: "Drag it onto the wall.",
  },
  "opening-misses-second-room": {
    severity: "must",
    message: "{opening} does not reach room {room} on the other side: {distance} m of wall are missing.",
    remedy: "Correct the wall thickness, or choose the room that it leads to.",
  },
  "opening-wider-than-wall": {
    severity: "must",
    message: "{opening} is {width} m wide and reaches past the end of its wall.",
    remedy: "Make it narrower, or move it along the wall.",
  },
  "opening-without-width": {
    severity: "must",
    message: "{opening} is {width} m wide.",
    remedy: "Draw it from jamb to jamb.",
  },
  "door-too-narrow": {
    severity: "must",
    message: "{opening} is {width} m wide: nobody gets through.",
    remedy: "Correct its width, or make it a window or glazing.",
  },
  "opening-upside-down": {
    severity: "must",
    message: "{opening} begins at {sill} m and ends at {head} m above the floor.",
    remedy: "Set its upper edge above its lower edge.",
  },
  "opening-above-ceiling": {
    severity: "should",
    message: "{opening} is {head} m high, the ceiling of room {room} only {ceiling} m.",
    remedy: "Check both heights; the opening is taken as ending at the ceiling.",
  },
  "door-above-floor": {
    severity: "should",
    message: "{opening} begins {sill} m above the floor.",
    remedy: "Check whether it is a door; people are expected to walk through it.",
  },
  "opening-thickness-unusual": {
    severity: "should",
    message: "The wall at {opening} is {thickness} m thick.",
    remedy: "Check the wall thickness and its unit.",
  },
  "opening-joins-same-room": {
    severity: "must",
    message: "{opening} has room {room} on both sides.",
    remedy: "Choose the room on the other side, or outside.",
  },
  "openings-overlap": {
    severity: "should",
    message: "{opening} and {other} overlap in the same wall.",
    remedy: "Delete one, or move them apart.",
  },
  "door-swings-elsewhere": {
    severity: "should",
    message: "{opening} swings into a room that it does not lead to.",
    remedy: "Choose one of its two sides.",
  },

  // Things in a room
  "obstacle-outside-room": {
    severity: "must",
    message: "{obstacle} reaches {area} m² outside room {room}.",
    remedy: "Move it inside, or assign it to the room it stands in.",
  },
  "obstacle-upside-down": {
    severity: "must",
    message: "{obstacle} begins at {base} m and ends at {top} m above the floor.",
    remedy: "Set its upper edge above its lower edge.",
  },
  "obstacle-above-ceiling": {
    severity: "should",
    message: "{obstacle} is {top} m high, the ceiling of room {room} only {ceiling} m.",
    remedy: "Check both heights.",
  },
  "see-through-obstacle": {
    severity: "note",
    message: "{obstacle} is marked as see-through: mesh or open shelving is not taken as hiding anybody.",
    remedy: "Verify on site, shelves filled.",
  },
  "dwell-place-outside-room": {
    severity: "must",
    message: "A {kind} stands outside room {room}.",
    remedy: "Drag it back inside, or assign it to the room it stands in.",
  },
  "dwell-place-without-size": {
    severity: "must",
    message: "A {kind} in room {room} has a radius of {radius} m.",
    remedy: "Enter how far around the place one moves.",
  },
  "thing-outside-room": {
    severity: "should",
    message: "A {kind} lies outside room {room}.",
    remedy: "Drag it back inside, or assign it to the room it belongs to.",
  },
  "luminaire-above-ceiling": {
    severity: "must",
    message: "Luminaire {name} hangs at {height} m, the ceiling of room {room} is at {ceiling} m.",
    remedy: "Correct the height of its underside.",
  },

  // Detectors and their models
  "detector-outside-room": {
    severity: "must",
    message: "Detector {tag} lies outside room {room}.",
    remedy: "Drag it back inside, or assign it to the room it stands in.",
  },
  "detector-above-ceiling": {
    severity: "must",
    message: "Detector {tag} is set at {height} m, the ceiling of room {room} is at {ceiling} m.",
    remedy: "Set its height to that of the ceiling, or below.",
  },
  "detector-outside-mounting-limits": {
    severity: "must",
    message:
      "Detector {tag} hangs at {height} m; its data sheet allows {min} to {max} m. It does not count as seeing anything.",
    remedy: "Choose a model for this height, or hang it within the limits.",
  },
  "detector-above-top-row": {
    severity: "should",
    message:
      "Detector {tag} hangs at {height} m; its data sheet gives reach up to {top} m only. That reach is used.",
    remedy: "Verify: ask for the reach at this height, or prove it in the walk test.",
  },
  "detector-in-obstacle": {
    severity: "must",
    message: "Detector {tag} sits inside {obstacle}.",
    remedy: "Move it clear, or correct the height of the obstacle.",
  },
  "detector-where-none-may-be": {
    severity: "must",
    message: "Detector {tag} lies in a part of the ceiling of room {room} where nothing may be mounted.",
    remedy: "Move it out of the barred area, or change that area.",
  },
  "detector-height-missing": {
    severity: "must",
    message: "Detector {tag} has no usable height ({height} m).",
    remedy: "Enter the height of its lens above the floor.",
  },
  "model-without-zones": {
    severity: "must",
    message: "Model {model} has no reach towards or across: it sees nobody.",
    remedy: "Enter the diameters from its data sheet.",
  },
  "model-mounting-limits-crossed": {
    severity: "must",
    message: "Model {model} has mounting limits from {min} to {max} m.",
    remedy: "Enter the lowest and the highest mounting height of its data sheet.",
  },
  "model-row-unusable": {
    severity: "must",
    message: "Model {model}, {zone}, row {row}: {fault}.",
    remedy: "Correct the row from its data sheet.",
  },
  "demo-model-planned": {
    severity: "should",
    message: "The invented model {model} is planned (detectors: {count}).",
    remedy: "Choose real models before ordering.",
  },
} as const satisfies Record<string, CatalogueEntry>;
