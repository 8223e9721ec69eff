import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a foreign file, and what the reader had to assume or mend in it. */
export const exchangeProblems = {
  "file-empty": {
    severity: "must",
    message: "The file is empty.",
    remedy: "Export it again, or copy it again from where it came.",
  },
  "detectors-of-unknown-model": {
    severity: "note",
    message:
      "The file shows detectors of model “{model}”, which this job does not know: {tags} ({count} in all) were not taken over.",
    remedy: "Add the model with its data sheet and read the file again, or place detectors anew.",
  },
  "ifc-not-step": {
    severity: "must",
    message: "This is no IFC file: it does not begin with ISO-10303-21 but looks like {found}.",
    remedy: "Export the building model as IFC 2x3 or IFC4 in the STEP form (.ifc) or zipped (.ifczip).",
  },
  "ifc-wrong-encoding": {
    severity: "must",
    message: "The file is written in {encoding}, but IFC is written in single bytes.",
    remedy: "Export it again. If it was opened in a text editor, save it there as UTF-8 or plain text.",
  },
  "ifc-schema-unknown": {
    severity: "must",
    message: "The file says that its schema is “{schema}”, which is not read here.",
    remedy: "Export the building model as IFC 2x3 or IFC4.",
  },
  "ifc-truncated": {
    severity: "must",
    message: "The file stops in the middle, after {where} (line {line}).",
    remedy: "Copy or download it again; if it is still short, export it again.",
  },
  "ifc-comment-open": {
    severity: "must",
    message: "A comment that begins in line {line} never ends.",
    remedy: "Export the file again, or close the comment with */ in a text editor.",
  },
  "ifc-text-open": {
    severity: "must",
    message: "A text that begins in line {line}, in {where}, has no closing quote.",
    remedy: "Export the file again, or mend that line in a text editor.",
  },
  "ifc-broken-line": {
    severity: "must",
    message: "Line {line} is not written as IFC is written, in or after {where}.",
    remedy: "Export the file again, or mend that line in a text editor.",
  },
  "ifc-id-twice": {
    severity: "must",
    message:
      "Record #{id} stands in the file twice, the second time in line {line}: nobody can tell which one counts.",
    remedy: "Export the file again from the program that made it.",
  },
  "ifc-loop": {
    severity: "must",
    message: "Record #{id} refers to itself, through {steps} others.",
    remedy: "Export the file again from the program that made it.",
  },
  "ifc-too-large": {
    severity: "must",
    message: "The file is larger than the limit of {limit}.",
    remedy: "Export only the storeys that are needed, without terrain, piping and reinforcement.",
  },
  "ifc-nothing-inside": {
    severity: "must",
    message:
      "The file can be read, but there is no room and no wall in it that has a shape ({records} records).",
    remedy: "Export it again with rooms (spaces) and walls, and with their geometry.",
  },
  "ifc-shape-reader-failed": {
    severity: "must",
    message: "The shapes in the file cannot be worked out: {reason}.",
    remedy: "Export it again with simple (extruded or faceted) geometry, or leave out what is not needed.",
  },
  "ifc-time-over": {
    severity: "must",
    message: "The file was not read within {seconds} s.",
    remedy: "Allow more time, or export only the storeys that are needed.",
  },
  "ifc-memory-over": {
    severity: "must",
    message: "Reading the file needs more than {megabytes} MB of memory.",
    remedy: "Allow more memory, or export only the storeys that are needed.",
  },
  "ifczip-broken": {
    severity: "must",
    message: "The zip file cannot be unpacked: {reason}.",
    remedy: "Copy or download it again, or unpack it by hand and give the .ifc file.",
  },
  "ifczip-no-model": {
    severity: "must",
    message: "There is no .ifc file in the zip file.",
    remedy: "Put exactly one .ifc file into it.",
  },
  "ifczip-several-models": {
    severity: "must",
    message: "There are {count} .ifc files in the zip file.",
    remedy: "Unpack it and give them one by one.",
  },
  "ifczip-too-large": {
    severity: "must",
    message: "Unpacked, the zip file is {size} larger than the limit ({limit}).",
    remedy: "Check where the file comes from. If it is sound, unpack it by hand and give the .ifc file.",
  },
  "ifc-no-rooms": {
    severity: "should",
    message: "There are no rooms in the file; its walls are shown as an underlay on {storeys} storeys.",
    remedy: "Draw the rooms over the underlay, or export the model again with rooms (spaces).",
  },
  "ifc-no-storeys": {
    severity: "note",
    message: "The file names no storeys; one was made up.",
    remedy: "Rename it, or move rooms to storeys of your own.",
  },
  "ifc-no-unit": {
    severity: "should",
    message: "The file does not say its unit of length; metres were assumed.",
    remedy: "Check one room's size before anything else.",
  },
  "ifc-room-without-outline": {
    severity: "should",
    message: "Room {room} has no outline that can be used: {reason}.",
    remedy: "Draw it by hand, or export the model again with that room mended.",
  },
  "ifc-room-doubled": {
    severity: "should",
    message: "Room {room} covers the same floor as room {other}; it was left out.",
    remedy: "If both exist, draw the second one by hand.",
  },
  "ifc-rooms-overlap": {
    severity: "should",
    message: "Rooms {room} and {other} overlap by {area} m².",
    remedy: "Move their outlines apart.",
  },
  "ifc-room-in-parts": {
    severity: "note",
    message: "The floor of room {room} is in {count} parts that do not touch; each became a room.",
    remedy: "Join or rename them where that is wrong.",
  },
  "ifc-ceiling-uneven": {
    severity: "note",
    message: "The ceiling of room {room} is not level; its mean height of {height} m was taken.",
    remedy: "Enter the height at which detectors can hang.",
  },
  "ifc-outline-simplified": {
    severity: "note",
    message: "The outline of {thing} had {before} corners; {after} were kept, off by up to {off} m.",
    remedy: "Check it where it matters.",
  },
  "ifc-identity-twice": {
    severity: "note",
    message: "{thing} has the same identity as another record; it was given a new one.",
    remedy: "Nothing needs to be done here; the model's author may want to know.",
  },
  "ifc-door-swing-assumed": {
    severity: "note",
    message:
      "The file does not say how doors open (number of such doors: {count}); a hinge at the beginning, into the first room, was assumed.",
    remedy: "Set the swing of the doors whose open leaf may hide something.",
  },
  "ifc-walls-centred": {
    severity: "note",
    message:
      "Rooms {room} and {other} touch without a wall between them at door {door}; its thickness is taken as 0.",
    remedy: "Check whether the outlines run along the middle of the walls; rooms are then larger than built.",
  },
  "ifc-dwell-guessed": {
    severity: "note",
    message: "{count} places where people stay were made from the names of furniture.",
    remedy: "Look through them; add those that are missing.",
  },
  "model-of-another-building": {
    severity: "must",
    message: "{file} has none of the storeys and rooms of this job.",
    remedy: "Give the building model that the job was read from, or leave it out: then a new one is written.",
  },
  "model-filled-already": {
    severity: "must",
    message: "{file} has detectors of this job in it already.",
    remedy: "Give the model as it came from its designers, without what was added before.",
  },
  "model-without-structure": {
    severity: "must",
    message: "{file} has no storey or no shapes that a detector could be placed by.",
    remedy: "Leave the model out: then a new one is written.",
  },
} as const satisfies Record<string, CatalogueEntry>;
