import { expect, test } from "vitest";
import {
  day,
  distinct,
  english,
  figured,
  hasWords,
  inside,
  joined,
  say,
  type Tongue,
  worded,
} from "./said.ts";

const german: Tongue = {
  sentences: {
    "{0} lies {1} beyond the reach": "{0} liegt {1} außerhalb der Reichweite",
    "nothing of {0} is seen, {1}": "{1}: von {0} wird nichts gesehen",
    "the door is shut": "die Tür ist zu",
  },
  decimal: ",",
  nouns: "large",
};

test("what is said keeps its words and its values apart, and reads as it was written", () => {
  const said = say`${"Store"} lies ${"0.75 m"} beyond the reach`;
  expect(said).toEqual({ text: "{0} lies {1} beyond the reach", values: ["Store", "0.75 m"] });
  expect(english(said)).toBe("Store lies 0.75 m beyond the reach");
});

test("another language fills its own sentence, in its own order, with its own decimal sign", () => {
  expect(worded(say`${"Store"} lies ${figured("0.75 m")} beyond the reach`, german)).toBe(
    "Store liegt 0,75 m außerhalb der Reichweite",
  );
  expect(worded(say`nothing of ${"Store"} is seen, ${say`the door is shut`}`, german)).toBe(
    "die Tür ist zu: von Store wird nichts gesehen",
  );
});

test("a name stays as it is, also where it reads like a figure or a day", () => {
  for (const name of [
    "B1.04",
    "1.04 Store",
    "EN 60364-4-41",
    "1.04",
    "1.12A",
    "1.12 A",
    "2.5 m",
    "2026-03-02",
  ])
    expect(worded(say`${name} lies ${1.5} beyond the reach`, german)).toBe(
      `${name} liegt 1,5 außerhalb der Reichweite`,
    );
});

test("a sentence that the language lacks is said in English, its parts in the language", () => {
  expect(worded(say`because ${say`the door is shut`}`, german)).toBe("because die Tür ist zu");
});

test("several things are said one after the other, each once where that is asked", () => {
  const twice = [say`the door is shut`, say`${1.5} m`, say`the door is shut`];
  expect(worded(joined(distinct(twice), "; "), german)).toBe("die Tür ist zu; 1,5 m");
});

test("a title stands inside a sentence with a small letter, where the language has its nouns small", () => {
  const title = say`the check ${inside(say`Voltage drop`)} fails; ${inside(say`RCD`)}`;
  expect(english(title)).toBe("the check voltage drop fails; RCD");
  expect(worded(title, { ...german, sentences: { "Voltage drop": "Spannungsfall" } })).toBe(
    "the check Spannungsfall fails; RCD",
  );
});

test("what joins several things has the space before its signs that the language writes", () => {
  const french: Tongue = { sentences: {}, decimal: ",", nouns: "small", beforeSigns: "\u00a0" };
  const list = joined(["L1", "L2"], "; ");
  expect(worded(list, french)).toBe("L1\u00a0; L2");
  expect(worded(say`${"1:50"}: ${2.5}`, french)).toBe("1:50\u00a0: 2,5");
  expect(worded(list, german)).toBe("L1; L2");
});

test("a day is written in the order of the language, by itself and within a sentence; what is no day stays", () => {
  const dotted: Tongue = { ...german, days: "$3.$2.$1" };
  expect(worded(day("2026-03-02"), dotted)).toBe("02.03.2026");
  expect(worded(joined(["R. Okafor", day("2026-03-02")], ", "), dotted)).toBe("R. Okafor, 02.03.2026");
  expect(worded(day("March 2026"), dotted)).toBe("March 2026");
  expect(english(day("2026-03-02"))).toBe("2026-03-02");
});

test("gaps and signs alone have no words", () => {
  expect(hasWords("{0}; {1}, ± {2}")).toBe(false);
  expect(hasWords("{0} m")).toBe(true);
});
