import { english, figured, inside, joined, type Said, say, type Words } from "../check/index.ts";
import { anObstacle, dwellKindNames, interferenceKindNames, useNames } from "../site/index.ts";
import { type Difference, nameIn } from "./differences.ts";

/**
 * A fact of an earlier state in words, where it is one of a list or a figure that was written out: states are kept in English.
 *
 * @returns Undefined where it is a name.
 */
export function handedWords(fact: string, value: string): Said | undefined {
  switch (fact) {
    case "use":
    case "kind":
    case "planned":
    case "rcd":
      return listed[value];
    case "breaker":
      return breakerWords(value);
    case "state":
    case "hinge":
    case "fixing":
    case "wetZone":
    case "into":
      return listed[`${fact} ${value}`];
    case "name":
      return namelessThings.get(value);
    case "between":
      return value.split(BETWEEN).includes("outside") ? betweenWords(value) : undefined;
    case "reach":
      return reachWords(value);
    case "masks":
      return maskedWords(value);
    default:
      return fact.startsWith("set.") ? settingWords(value) : undefined;
  }
}

/**
 * What a record is called, where nobody gave it a name of its own in words.
 *
 * @returns "" where only its kind can name it. @example An opening that leads out: its rooms, the last of them "outside"
 */
export function handedName(difference: Pick<Difference, "record">): Words {
  const { tag, title, name } = difference.record;
  const own = nameIn(difference);
  if (tag !== undefined || title !== undefined) return own;
  return handedWords(name === undefined ? "between" : "name", own) ?? own;
}

/** Things without a name are kept under the words for their kind. */
const namelessThings = new Map(Object.values(anObstacle).map((said) => [english(said), said] as const));

const BETWEEN = " – ";

const betweenWords = (value: string): Said =>
  joined(
    value.split(BETWEEN).map((room) => (room === "outside" ? say`outside` : room)),
    BETWEEN,
  );

/** Words that facts may hold; those of one fact only stand under its name. */
const listed: Readonly<Record<string, Said>> = {
  ...useNames,
  door: say`door`,
  passage: say`passage`,
  window: say`window`,
  glazing: say`glazing`,
  ...dwellKindNames,
  ...interferenceKindNames,
  switch: inside(say`Switch`),
  "two-way": say`two way`,
  intermediate: say`intermediate`,
  "push-button": say`push button`,
  dimmer: say`dimmer`,
  parallel: say`parallel`,
  button: say`button`,
  removed: say`removed`,
  yes: say`yes`,
  no: say`no`,
  unknown: say`unknown`,
  "fuse-gG": say`fuse gG`,
  "state open": say`open`,
  "state closed": say`closed`,
  "hinge first end": say`first end`,
  "hinge second end": say`second end`,
  "fixing box": say`box`,
  "fixing surface": say`surface`,
  "fixing ceiling-panel": say`ceiling-panel`,
  "wetZone outside": say`outside`,
  "into outside": say`outside`,
};

/** @example "fuse-gG 10 A": "fuse gG 10 A" */
function breakerWords(value: string): Said {
  const [kind = "", ...rating] = value.split(" ");
  const named = listed[kind] ?? kind;
  return joined(rating.length === 0 ? [named] : [named, figured(rating.join(" "))], " ");
}

const zoneWords: Readonly<Record<string, Said>> = {
  seated: say`seated`,
  towards: say`towards`,
  across: say`across`,
  sound: say`sound`,
};

/** @example "seated 3 m at 2.5 m, towards 4 m at 2.5 m" */
function reachWords(value: string): Said | undefined {
  const parts = value.split(", ").map((part) => {
    const [, kind = "", reach = "", height = ""] = /^(\w+) ([\d.]+ m) at ([\d.]+ m)$/.exec(part) ?? [];
    const zone = zoneWords[kind];
    return zone && say`${zone} ${figured(reach)} at ${figured(height)}`;
  });
  const known = parts.filter((part) => part !== undefined);
  return known.length === parts.length ? joined(known, ", ") : undefined;
}

/** @example "0°…90°, 30°…60° from straight down" */
function maskedWords(value: string): Said | undefined {
  const parts = value.split("; ").map((mask) => / from straight down$/.exec(mask)?.input.slice(0, -19));
  const known = parts.filter((part) => part !== undefined);
  return known.length === parts.length
    ? joined(
        known.map((angles) => say`${figured(angles)} from straight down`),
        "; ",
      )
    : undefined;
}

/** Settings of two parts. @example "two-level, 20 %" */
function settingWords(value: string): Said | undefined {
  const level = /^two-level, (\d+) %$/.exec(value);
  if (level) return say`two-level, ${Number(level[1])} %`;
  const pulses = /^([\d.]+ s) on, ([\d.]+ s) pause$/.exec(value);
  return pulses ? say`${figured(pulses[1]!)} on, ${figured(pulses[2]!)} pause` : undefined;
}
