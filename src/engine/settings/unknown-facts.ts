import { type Said, say } from "../check/index.ts";

/** What is said where a fact of the place is missing, without its full stop: problems put it into a sentence of theirs. */
export const missingFacts = {
  daylight: say`No windows are entered for what it lights, and nobody said that there is no daylight`,
  button: say`No button is entered for it`,
  escapeRoute: say`Nobody said whether an escape route leads through here`,
  fanNear: say`No fan, air outlet or machine is entered near it`,
  hears: say`Its data sheet is not entered`,
} as const;

/** The same as sentences. */
export const unknownFacts = Object.fromEntries(
  Object.entries(missingFacts).map(([name, fact]) => [name, say`${fact}.`]),
) as unknown as Readonly<Record<keyof typeof missingFacts, Said>>;
