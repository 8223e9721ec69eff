import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a plan as PDF, SVG or picture, and what its reader had to leave out. */
export const planFileProblems = {
  "plan-too-large": {
    severity: "must",
    message: "The file is larger than the limit of {limit}.",
    remedy: "Export only the page or the storey that is needed.",
  },
  "plan-too-much": {
    severity: "must",
    message: "There are more {what} in the drawing than the limit of {limit}.",
    remedy: "Export only the storey that is needed, without hatching, terrain and furniture.",
  },
  "plan-not-pdf": {
    severity: "must",
    message: "This is no PDF file; it looks like {found}.",
    remedy: "Give the plan as PDF, SVG, DXF, PNG or JPEG, with the matching ending.",
  },
  "plan-pdf-locked": {
    severity: "must",
    message: "The PDF file is locked with a password.",
    remedy: "Ask its author for a copy without a password, or print it into a new PDF file.",
  },
  "plan-pdf-damaged": {
    severity: "must",
    message: "The PDF file cannot be read: {reason}.",
    remedy: "Copy or download it again, or print it into a new PDF file.",
  },
  "plan-pdf-no-page": {
    severity: "must",
    message: "There is no page {page}: the pages of the file are 1 to {pages}.",
    remedy: "Choose a page that exists.",
  },
  "plan-pdf-scan": {
    severity: "must",
    message: "Page {page} holds a picture and no lines: the plan was scanned.",
    remedy: "Lay the page under the plan as a picture, and draw the rooms over it.",
  },
  "plan-pdf-scan-refused": {
    severity: "must",
    message: "The picture on page {page} cannot be laid under the plan: {reason}.",
    remedy: "Save the page as PNG or JPEG, and bring that in as a picture.",
  },
  "plan-pdf-page-empty": {
    severity: "must",
    message: "Page {page} of {pages} holds no lines.",
    remedy: "Choose another page, or export the plan again with its lines.",
  },
  "plan-pdf-picture": {
    severity: "note",
    message: "Page {page} holds pictures beside its lines; they were left out.",
    remedy: "If a part of the plan is missing, take the page as a picture, and draw the rooms over it.",
  },
  "plan-changed-stays": {
    severity: "note",
    message:
      "What was changed or removed here since the file was read before stays so: {changed} changed ({names}), {removed} removed.",
    remedy: "Compare it with the file where the file is a newer one.",
  },
  "plan-pdf-partly-read": {
    severity: "should",
    message: "A part of page {page} cannot be read and was left out: {reason}.",
    remedy: "Compare it with the page, and export the plan again if something is missing.",
  },
  "plan-pdf-first-page": {
    severity: "note",
    message: "The file has {pages} pages; the first was read.",
    remedy: "Choose another page if the plan is not on the first.",
  },
  "plan-not-svg": {
    severity: "must",
    message: "This is no SVG drawing; it looks like {found}.",
    remedy: "Give the plan as PDF, SVG, DXF, PNG or JPEG, with the matching ending.",
  },
  "plan-svg-damaged": {
    severity: "must",
    message: "The SVG file cannot be read, in line {line}: {reason}.",
    remedy: "Export it again, or mend that line in a text editor.",
  },
  "plan-svg-too-deep": {
    severity: "must",
    message: "The SVG file nests more than {limit} elements inside one another.",
    remedy: "Export it again without groups, or with its groups dissolved.",
  },
  "plan-svg-empty": {
    severity: "must",
    message: "The SVG drawing holds no lines ({elements} elements).",
    remedy: "Export the plan again with its lines.",
  },
  "plan-svg-picture-only": {
    severity: "must",
    message: "The SVG drawing holds a picture and no lines.",
    remedy: "Save it as PNG or JPEG, bring it in as a picture, and draw the rooms over it.",
  },
  "plan-svg-loop": {
    severity: "should",
    message: "The SVG part “{part}” puts itself in again; it was put in once.",
    remedy: "Compare the result with the drawing, and export it again if something is missing.",
  },
  "plan-svg-entities": {
    severity: "note",
    message: "The SVG file declares abbreviations (entities); none was expanded.",
    remedy: "Nothing needs to be done unless texts are missing.",
  },
  "plan-not-picture": {
    severity: "must",
    message: "Pictures are read as PNG and JPEG; this looks like {found}.",
    remedy: "Open it in a picture viewer and save it as PNG or JPEG.",
  },
  "plan-picture-damaged": {
    severity: "must",
    message: "The picture cannot be read: {reason}.",
    remedy: "Copy it again, or open it in a picture viewer and save it again.",
  },
  "plan-picture-too-large": {
    severity: "must",
    message: "The picture has {pixels} megapixels, more than the limit of {limit}.",
    remedy: "Save it at a smaller size; 20 megapixels show every wall of a storey.",
  },
  "plan-calibration-short": {
    severity: "must",
    message: "The two places for the scale lie on each other, or the length between them is missing.",
    remedy: "Choose two places far from each other whose distance is known, and enter it.",
  },
  "plan-calibration-in-line": {
    severity: "must",
    message: "Three of the four places lie in a line, or the four are no corners in order.",
    remedy: "Choose the four corners of a room or of a large rectangle, one after the other round it.",
  },
  "plan-kind-unknown": {
    severity: "must",
    message: "This is no plan whose lines can be read; it looks like {found}.",
    remedy:
      "Give the plan as DXF, PDF or SVG; a picture (PNG or JPEG) can be laid under the plan and drawn over.",
  },
  "plan-time-over": {
    severity: "must",
    message: "The plan was not read within {seconds} s.",
    remedy: "Allow more time, or export only the storey that is needed.",
  },
  "plan-memory-over": {
    severity: "must",
    message: "Reading the plan needs more than {megabytes} MB of memory.",
    remedy: "Allow more memory, or export only the storey that is needed.",
  },
  "dxf-not-dxf": {
    severity: "must",
    message: "This is no DXF drawing; it looks like {found}.",
    remedy: "Give the plan as DXF, PDF, SVG, PNG or JPEG, with the matching ending.",
  },
  "dxf-is-dwg": {
    severity: "must",
    message: "This is a DWG drawing ({version}), which is not read here, whether locked or not.",
    remedy: "Open it in the program that made it and save it as DXF.",
  },
  "dxf-wrong-encoding": {
    severity: "must",
    message: "The file is written in {encoding}, but DXF drawings are not.",
    remedy: "Export it again. If it was opened in a text editor, save it there as UTF-8 or plain text.",
  },
  "dxf-truncated": {
    severity: "must",
    message: "The drawing stops in the middle, at {place}.",
    remedy: "Copy or download it again; if it is still short, export it again.",
  },
  "dxf-broken-place": {
    severity: "must",
    message: "The drawing is not written as DXF is written, at {place}.",
    remedy: "Export it again from the program that made it.",
  },
  "dxf-nothing-inside": {
    severity: "must",
    message:
      "The file can be read, but there is no line in its model that could be drawn ({entities} entities, {records} records).",
    remedy: "Export it again with its walls as lines, and with blocks and attached drawings bound into it.",
  },
  "dxf-paper-only": {
    severity: "must",
    message: "All {count} entities of the drawing lie on sheets of paper; its model is empty.",
    remedy: "Export the model space, or copy the plan into it.",
  },
  "dxf-blocks-too-deep": {
    severity: "must",
    message: "Blocks lie inside one another more than {limit} deep, at block “{block}”.",
    remedy: "Dissolve some of the blocks (explode) and export the drawing again.",
  },
  "dxf-block-loop": {
    severity: "should",
    message: "Block “{block}” puts itself in again; that copy was left out.",
    remedy: "Compare the result with the drawing, and export it again if something is missing.",
  },
  "dxf-block-missing": {
    severity: "should",
    message: "Blocks that are put in are not in the file ({count}): {blocks}.",
    remedy: "Compare the result with the drawing, and export it again if something is missing.",
  },
  "dxf-block-elsewhere": {
    severity: "should",
    message: "Parts of the drawing are in other files, which did not come along ({count}): {blocks}.",
    remedy: "Bind the attached drawings into this one and export it again, or bring them in one by one.",
  },
  "dxf-without-place": {
    severity: "note",
    message: "Entities whose coordinates are missing or impossible were left out: {count}.",
    remedy: "Compare the result with the drawing, and export it again if something is missing.",
  },
  "dxf-no-end-mark": {
    severity: "note",
    message: "The file has no end mark, but all of its parts are whole.",
    remedy: "If something is missing, copy or export it again.",
  },
  "dxf-code-page-unknown": {
    severity: "note",
    message:
      "The texts are written in the code page “{page}”, which is not known here; Western letters were assumed.",
    remedy: "Check the names of the rooms.",
  },
  "dxf-unit-doubted": {
    severity: "should",
    message: "The file says that its unit is {declared}, but by what is drawn it is {unit}, which was taken.",
    remedy: "Check the width of one door before anything else, and choose the other unit if it is wrong.",
  },
  "dxf-several-parts": {
    severity: "note",
    message: "There are {count} separate parts in the drawing, perhaps floors side by side.",
    remedy: "Choose the part that belongs to this storey.",
  },
} as const satisfies Record<string, CatalogueEntry>;
