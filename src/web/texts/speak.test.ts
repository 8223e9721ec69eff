import { afterEach, describe, expect, test } from "vitest";
import { t as drawn, drawnSpoken } from "./drawn.ts";
import { languageOf, spokenLanguage, take, withinSentence } from "./language.ts";
import { lengthText, moneyText, numberText } from "./measures.ts";
import { sentenceOf } from "./problems.ts";
import { speak } from "./speak.ts";
import { t } from "./texts.ts";
import { inWords } from "./told.ts";

afterEach(() => take(undefined));

describe("the language of the screens", () => {
  test("is the first of a person's languages that they speak, and English where they speak none", () => {
    expect(languageOf(["nds", "de-AT", "en"])).toBe("de");
    expect(languageOf(["en-GB", "de"])).toBe("en");
    expect(languageOf(["fi", "sv"])).toBe("en");
    expect(languageOf([])).toBe("en");
  });

  test("holds for sentences, plurals, figures and what is written into the plan", async () => {
    const english = [t("count.detectors", { count: 3 }), drawn("dwell.desk"), lengthText(2.5, "metric")];
    await speak("de");
    expect(spokenLanguage()).toBe("de");
    expect([t("count.detectors", { count: 3 }), drawn("dwell.desk"), lengthText(2.5, "metric")]).toEqual([
      "3 Melder",
      "Schreibtisch",
      "2,50 m",
    ]);
    expect([numberText(1234.5), moneyText(1234.5, "EUR"), numberText(-0.001)]).toEqual([
      "1.234,5",
      "1.234,50 EUR",
      "0",
    ]);
    expect(withinSentence("Tür")).toBe("Tür");
    expect(drawnSpoken()?.sentences["dwell.desk"]).toBe("Schreibtisch");
    await speak("en");
    expect([t("count.detectors", { count: 3 }), drawn("dwell.desk"), lengthText(2.5, "metric")]).toEqual(
      english,
    );
    expect(withinSentence("Door")).toBe("door");
    expect(drawnSpoken()).toBeUndefined();
  });

  test("holds for problems, as data and as they come in words from a worker", async () => {
    const problem = { code: "duplicate-tag", values: { tag: "B1.04", count: 2 } } as const;
    const told = { ...problem, message: sentenceOf(problem), remedy: "" };
    expect(told.message).toBe("Tag B1.04 is on 2 detectors.");
    expect(inWords(told)).toEqual(told);
    await speak("de");
    expect(sentenceOf(problem)).toContain("B1.04");
    expect(sentenceOf(problem)).not.toBe(told.message);
    expect(inWords(told).message).toBe(sentenceOf(problem));
  });
});
