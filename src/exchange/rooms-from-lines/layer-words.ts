/** What a layer's name says that its lines are. Plans name their layers in many languages; a name that says nothing is "unknown". */
export type LayerMeaning = "wall" | "door" | "window" | "column" | "room" | "furniture" | "note" | "unknown";

/** Beginnings of words, capitals and accents folded. Layers of the AEC guidelines (A-WALL, A-DOOR, …) are among them. */
const words: readonly (readonly [LayerMeaning, RegExp])[] = [
  [
    "note",
    /\b(stem wall|foot(?:er|ing|print)|found|slab|header|beam|hidden|overhead|project|proyec|above|below|dim|cota|bemass|mass|cote|text|txt|anno|note|notat|label|beschrift|title|titel|frame|rahmen|cartouche|grid|axis|achs|raster|hatch|schraff|symb|defpoints|viewport|legend|north|nord|revision|plot|logo|simbol|mal(?:saet|saett)|tekst)/,
  ],
  [
    "furniture",
    /\b(furn|mobil|moebel|mobel|moeb|inneh|chair|chaise|stuhl|desk|table|tisch|case|equip|appl|kitchen|kueche|kitch|sanit|bath|bad|plumb|plfx|fixture|toilet fix|plant|vegetat|tree|car|people|person|stair|trepp|escal|escada|trappe|inventar|stol|bord|light|lumin|detector|cable|kabel|switch|distribution board|electr|elec|hvac|pipe|duct|floor(?!\s*plan)|pavim|tile|belag|boden|fire|sprink|ceil|clng|decke|roof|dach)/,
  ],
  ["door", /\b(door|opening|tuer|tur|porte|puerta|porta|dor|entrance|entrada)/],
  ["window", /\b(window|fenster|fenetre|ventana|janela|finestra|vindue|glaz|glas|vitr|crystal|curt)/],
  ["column", /\b(col(?:umn|s)?\b|saeule|stuetze|pilar|pillar|poteau|soejle)/],
  ["wall", /\b(wall|wand|waende|mur|muro|parede|pared|vaeg|partition|cloison|tabique|struct|brick|mauer)/],
  ["room", /\b(room|raum|raeume|space|local|sala|piece|area|zone|office|buero)/],
];

/** Whether lettering on a layer may name rooms: tags of detectors and names of boards, which our own drawings carry, do not. */
export const mayNameRooms = (layer: string): boolean => !/\b(detectors?|boards?)\b/i.test(layer);

/** Meaning of a layer from its name; parts of names (A-WALL-FULL, xref$0$A-WALL) are looked at one by one. */
export function meaningOf(layer: string): LayerMeaning {
  const name = layer
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z]+/g, " ")
    .trim();
  for (const [meaning, pattern] of words) if (pattern.test(name)) return meaning;
  return "unknown";
}
