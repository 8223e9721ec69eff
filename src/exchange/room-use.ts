import { type RoomUse, type Said, say } from "#engine";

/**
 * Words by which rooms are named, most telling use first: "Treppenhaus WC" is sanitary, "Flur Umkleide" is changing.
 * English, German, French, Dutch, Italian, Spanish, Nordic and Japanese, as far as names in models, on plans and in lists of
 * rooms go; a person's own choice always counts more.
 */
const words: readonly (readonly [RoomUse, RegExp])[] = [
  [
    "sanitary",
    /\b(wcs?|toilets?|toilette\w*|restrooms?|lavator\w*|bath\w*|bad|b\u00e4der|dusch\w*|showers?|sanit\w*|washrooms?|waschraum|klo|lokus|g\u00e4stewc|powder|wet ?rooms?|douches|badkamer|bagno|servizi|douche|salle de bains?|ba\u00f1o|aseos?|toalett\w*|badrum|\w*bad|\w*wc)\b|トイレ|便所|浴室|洗面/i,
  ],
  [
    "changing",
    /umkleide|garderobe|\bchang(e|ing)\b|locker|dressing|cloak ?room|vestiaire|kleedkamer|spogliatoio|vestuario|更衣/i,
  ],
  [
    "stair",
    /\b(stairs?|stairwells?|staircases?|stairways?|treppe\w*|treppenhaus|escalier|trap\w*|scala|escalera|trapphus)\b|treppe|階段/i,
  ],
  [
    "plant",
    /technik|\bplant\b|mechanical|electrical|elektro|heizung|boiler|server|switch ?room|\bcomms\b|\brisers?\b|drying|\bedv\b|haustechnik|hausanschlu|utility|\bshaft|schacht|\bha[rs]?\b|l\u00fcftung|machine|maschinen|control|機械|電気室/i,
  ],
  [
    "passing",
    /flur|\bgang\b|korridor|corridor|hall ?way|\bhall\b|\bdiele\b|foyer|lobby|entr(y|ance)|eingang|vorraum|windfang|vestibule|passage|galerie|landing|couloir|gang\b|corridoio|pasillo|廊下|玄関|ホール/i,
  ],
  [
    "sitting",
    /b\u00fcro|buero|office|besprechung|meeting|seminar|konferenz|conference|class ?room|klasse|h\u00f6rsaal|lecture|wohn|living|schlaf|bed ?room|kind|child|lesen|reading|arbeit|work ?room|dining|essen|esszimmer|kitchen|k\u00fcche|kueche|cafe|kantine|lounge|g\u00e4ste|guest|bibliothek|library|reception|canteen|staff ?room|rest rooms?|\bstud(y|ies)\b|zimmer|bureau|ufficio|oficina|salon|sal[oa]\b|居間|寝室|事務/i,
  ],
  [
    "moving",
    /lager|stores?\b|store ?room|storage|luggage|d\u00e9p\u00f4t|abstell|archiv|garage|keller|cellar|basement|werkstatt|workshop|laundry|waschk|labor|\blab\b|gym|sport|warehouse|loading|depot|magazzino|almac|倉庫|車庫/i,
  ],
];

/** Use of a room guessed from its name and number; "other" where no word tells. */
export function roomUse(name: string): RoomUse {
  return words.find(([, pattern]) => pattern.test(name))?.[0] ?? "other";
}

/** Why a space is no room to plan in, or undefined where it is one. */
export function notARoom(space: { name: string; position: string; area: number }): Said | undefined {
  if (
    space.position === "EXTERNAL" ||
    space.position === "EXTERNAL_EARTH" ||
    space.position === "EXTERNAL_WATER" ||
    space.position === "EXTERNAL_FIRE"
  ) {
    return say`outdoors, says the model`;
  }
  if (space.position === "GFA") return say`a gross floor area, not a room`;
  if (/^\s*(roof|dach|dachfl\u00e4che|toiture|tak|tetto|techo|屋根)\s*\d*\s*$/i.test(space.name))
    return say`a roof, not a room`;
  if (/\b(gross|bgf|brutto\w*|gfa|gross internal|site boundary|building footprint)\b/i.test(space.name))
    return say`a gross floor area, not a room`;
  if (space.area < smallestRoom) return say`smaller than ${smallestRoom} m²: a shaft or a gap`;
  return undefined;
}

/** Nobody walks in less. [m²] */
export const smallestRoom = 0.3;
