import type { DwellKind, InterferenceKind, ObstacleKind } from "#engine";

/** What a thing's names say about it. */
export interface ThingKind {
  /** What it is to the eye of a detector; undefined: people are on it, it hides nobody. */
  readonly obstacle: ObstacleKind | undefined;
  readonly dwell: DwellKind | undefined;
  readonly interference: InterferenceKind | undefined;
}

type Row = readonly [RegExp, Partial<ThingKind>];

/**
 * First row that fits counts. Chairs, WCs and beds are places where somebody is, and no obstacles: taken as a prism they
 * would hide the very person on them.
 */
const rows: readonly Row[] = [
  [/\b(coffee|couch) table|couchtisch/, {}],
  [
    /\b(desk|workstation|schreibtisch|arbeitsplatz|b\u00fcrotisch|bureau|skrivbord)\b|schreibtisch/,
    { dwell: "desk" },
  ],
  [/\b(table|tisch|tafel)\b|tisch\b/, {}],
  [/\b(wc|toilet|water closet|klosett|urinal|toilette)\b|\bwc/, { obstacle: undefined, dwell: "wc" }],
  [
    /\b(basin|lavatory|sink|washbasin|wastafel|waschtisch)\b|waschbecken|sp\u00fcle|vanity/,
    { dwell: "basin" },
  ],
  [
    /\b(shower|douche)\b(?! (screen|door|partition|drain|rail|head))|dusche/,
    { obstacle: undefined, dwell: "shower" },
  ],
  [/\b(bathtub|bath tub|bath|tub)\b|badewanne/, { obstacle: undefined, dwell: "bath" }],
  [
    /\b(chair|seat|stool|armchair|sofa|couch|stuhl|hocker|sessel|stoel)\b|stuhl\b|sessel\b/,
    { obstacle: undefined, dwell: "seat" },
  ],
  [/\b(bench|bank|sitzbank)\b/, { obstacle: undefined, dwell: "bench" }],
  [/\b(bed|bett)\b/, { obstacle: undefined, dwell: "seat" }],
  [
    /\b(shelf|shelving|rack|regal|locker|spind|cabinet|cupboard|wardrobe|schrank|bookcase|kast)\b|schrank\b|regal\b/,
    { obstacle: "rack" },
  ],
  [/\b(cubicle|kabine)\b|kabine\b/, { obstacle: "cubicle" }],
  [/\b(partition|screen|divider|trennwand|raumteiler|stellwand)\b|trennwand/, { obstacle: "partition" }],
  [
    /\b(radiator|heater|convector|heizk\u00f6rper|ofen|stove|range|boiler)\b|heizk/,
    { interference: "heater" },
  ],
  [/\b(duct|kanal)\b/, { obstacle: "duct" }],
];

/** Kind of a thing from its names and its IFC type in capitals. */
export function thingKind(names: string, type: string): ThingKind {
  const otherwise: ThingKind = { obstacle: byType(type), dwell: undefined, interference: undefined };
  if (/^IFC(COLUMN|BEAM|MEMBER|WALL)/.test(type)) return otherwise;
  const plain = plainWords(names);
  const row = rows.find(([pattern]) => pattern.test(plain));
  return row ? { ...otherwise, ...row[1] } : otherwise;
}

/** Names as words: programs join them by underscores, colons and sizes. */
export const plainWords = (names: string): string => names.toLowerCase().replace(/[_:|.,/()\-\d]+/g, " ");

const byType = (type: string): ObstacleKind => {
  if (type.startsWith("IFCCOLUMN")) return "column";
  if (type.startsWith("IFCBEAM")) return "beam";
  if (type.startsWith("IFCDUCT")) return "duct";
  if (type.startsWith("IFCWALL")) return "partition";
  if (/FURNI|SANITARY|FLOWTERMINAL|APPLIANCE/.test(type)) return "furniture";
  return "other";
};

/** What a flow terminal that is no luminaire must be called to stand on the floor and matter here. */
export const standsOnFloor = (names: string): boolean =>
  /\b(wc|toilet|urinal|basin|lavatory|sink|bath|bathtub|shower|tub|refrigerator|fridge|range|oven|dishwasher|washer|dryer|waschbecken|badewanne|dusche|sp\u00fcle|waschtisch|klosett|k\u00fchlschrank)\b|waschbecken|wanne\b/.test(
    plainWords(names),
  );

/** Switches and sockets that were given the type of a luminaire. */
export const isSwitch = (names: string): boolean =>
  /\b(switch|switches|dimmer|receptacle|outlet|socket|single pole|double pole|two way|schalter|taster|steckdose|interrupteur|schakelaar)\b|schalter/.test(
    plainWords(names),
  );

/** Lamps that get hot enough to disturb a heat-sensing detector. */
export const isHotLamp = (names: string): boolean =>
  /halogen|incandescent|gl\u00fchlamp|infrared|\b(pendant|sconce)\b.*\b\d{2,3} ?w\b/i.test(
    names.replace(/[_:|-]+/g, " "),
  );
