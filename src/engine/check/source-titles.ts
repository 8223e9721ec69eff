import { type SourceId, sources } from "../source/index.ts";
import { type Said, say, type Words } from "./said.ts";

/** Titles that are the program's own words: a derivation, a practice of the trade. Those of standards and papers are theirs in every language. */
const ownTitles: Readonly<Partial<Record<SourceId, Said>>> = {
  "COMMON-PRACTICE": say`Common practice of the trade, no source`,
  "FROM-MEMORY": say`From memory, not re-read in its source`,
  "DERIVED-HERE": say`Derived from first principles; the derivation stands beside the formula`,
  "CONTROL-MACHINE": say`State machine of a presence controller: our own, every parameter named and settable`,
  "ALTERNATING-RENEWAL": say`Alternating renewal process: exponential vacancy of mean b, off-delay t, lit = 1 − b e^(−t/b)/(a + b)`,
  "LOG-REPLAY": say`Replay of a log: lit at row i if any row in the last t of rows was occupied`,
  "CEILING-READING": say`Ceiling reading against work-plane reading: daylight and lamps each in proportion`,
  "SETTING-CHOICE": say`Settings by use of the room: our own choice, to be trimmed after the first weeks`,
  "DAY-PATTERN": say`A usual day by use of the room: who is there when, and how long somebody may stay without a visible movement`,
  "DAY-CURVE": say`Daylight at the detector as half a sine between two times of the day`,
  "PLANCK-BAND": say`Band radiation 8 to 14 µm of a black body by Planck's law`,
  "SIGHT-GEOMETRY": say`Ray from a detector on the ceiling: reach, shadow and lintel by similar triangles`,
  "DIRECTION-ELLIPSE": say`Reach by direction of walking: 1/R² = cos²ψ/R_towards² + sin²ψ/R_across²`,
  "MASK-GEOMETRY": say`Lens mask: off-nadir band that blinds a region from floor to head height`,
  "GLASS-HEAT": say`Ordinary glass does not pass 8 to 14 µm`,
  "OWN-RULES": say`A firm's own rule pack`,
  "OPEN-CONTACT": say`An unpowered detector's relay is open: a test from the board does not reach the switched line`,
  "REACH-PROBIT": say`True reach from seen and not seen: P(seen at r) = Φ((R − r)/σ), interval by profile likelihood`,
  "ASSUMED-POWER-FACTOR": say`Power factor of a load of which nobody declared one: 0.8 usual, 0.4 at worst`,
  "CEILING-BAR": say`Width of the bars of a ceiling grid: 24 mm`,
  "INRUSH-CLOSED-FORM": say`Inrush of a discharged capacitor behind a rectifier through resistance and inductance, closed form`,
  "BREAKER-PULSE": say`Breaker against short pulses: k(T) · n · In, with k from the curve of the breaker at hand`,
  "CUSTOMARY-SCALING": say`Number of drivers scaled with the breaker's rating, B as 0.6 of C`,
  "LABOUR-MINUTES": say`Minutes of work per item: estimates that a firm replaces with its own`,
};

/** What a source is called in a sentence or a table. @param id - Of the register. @returns Words of the program's own, or the title of a standard as it is printed. @source DERIVED-HERE @example "COMMON-PRACTICE": "Common practice of the trade, no source" */
export const sourceTitle = (id: SourceId): Words => ownTitles[id] ?? sources[id].title;

/** The same as far as the first comma or colon, where no more room is. */
const shortOwnTitles: typeof ownTitles = {
  "COMMON-PRACTICE": say`Common practice of the trade`,
  "FROM-MEMORY": say`From memory`,
  "CONTROL-MACHINE": say`State machine of a presence controller`,
  "ALTERNATING-RENEWAL": say`Alternating renewal process`,
  "LOG-REPLAY": say`Replay of a log`,
  "CEILING-READING": say`Ceiling reading against work-plane reading`,
  "SETTING-CHOICE": say`Settings by use of the room`,
  "DAY-PATTERN": say`A usual day by use of the room`,
  "SIGHT-GEOMETRY": say`Ray from a detector on the ceiling`,
  "DIRECTION-ELLIPSE": say`Reach by direction of walking`,
  "MASK-GEOMETRY": say`Lens mask`,
  "OPEN-CONTACT": say`An unpowered detector's relay is open`,
  "REACH-PROBIT": say`True reach from seen and not seen`,
  "ASSUMED-POWER-FACTOR": say`Power factor of a load of which nobody declared one`,
  "CEILING-BAR": say`Width of the bars of a ceiling grid`,
  "INRUSH-CLOSED-FORM": say`Inrush of a discharged capacitor behind a rectifier through resistance and inductance`,
  "BREAKER-PULSE": say`Breaker against short pulses`,
  "CUSTOMARY-SCALING": say`Number of drivers scaled with the breaker's rating`,
  "LABOUR-MINUTES": say`Minutes of work per item`,
};

/** The short name of a source: its title as far as the first comma or colon. @param id - Of the register. @returns Words of the program's own, or the beginning of a standard's title. @source DERIVED-HERE @example "COMMON-PRACTICE": "Common practice of the trade" */
export const shortSourceTitle = (id: SourceId): Words =>
  shortOwnTitles[id] ?? ownTitles[id] ?? sources[id].title.split(/[,:]/)[0]!;
