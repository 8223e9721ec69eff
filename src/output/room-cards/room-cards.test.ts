import { describe, expect, test } from "vitest";
import { type Detector, type Site, settingsOfSite } from "#engine";
import { lengthOf } from "../drawing/lettering.ts";
import { ferryWing } from "../ferry-wing.fixture.ts";
import { paperLanguages } from "../words/paper-words.ts";
import { roomCards } from "./room-cards.ts";
import { delayWords, devicesOf, roomWords } from "./room-words.ts";
import { cardWordings } from "./wordings.ts";

const settled = settingsOfSite(ferryWing);
const [detector] = ferryWing.detectors as readonly [Detector, ...Detector[]];
const chosen = (values: object): ReturnType<typeof devicesOf> =>
  devicesOf(
    ferryWing,
    detector.room,
    settingsOfSite(ferryWing, {
      chosen: new Map(ferryWing.detectors.map(({ id }) => [id, values])),
    }).devices,
  );
const saying = (values: object): Record<string, string> =>
  Object.fromEntries(roomWords(chosen(values), []).map(({ heading, text }) => [heading, text]));

describe("What a card tells the people in a room", () => {
  test("follows the mode, the delay and the threshold that are set", () => {
    expect(saying({ mode: "automatic", offDelay: 600, threshold: 300 })).toMatchObject({
      On: "By itself, when you come in.",
      Off: "By itself, about 10 minutes after the last movement was seen.",
      Daylight: "While there is enough daylight, it stays off.",
    });
    const semi = saying({ mode: "semi-automatic", offDelay: 75, threshold: "off" });
    expect(semi.On).toMatch(/^(Switch it on by hand|Press the button) when you come in\.$/);
    expect(semi.Off).toContain("about 75 seconds");
    expect(semi.Daylight).toBeUndefined();
  });

  test("says nothing of a button where none is known", () => {
    const without = chosen({}).map((device) => {
      const { hasButton: _, ...context } = device.context;
      return { ...device, context };
    });
    expect(roomWords(without, []).map(({ heading }) => heading)).not.toContain("Button");
  });

  test("names the longest of several delays", () => {
    const [first] = chosen({ offDelay: 300 });
    const [second] = chosen({ offDelay: 900 });
    expect(roomWords([first!, second!], []).find(({ heading }) => heading === "Off")!.text).toContain(
      "15 minutes",
    );
  });

  test("rounds no time to nothing", () => {
    expect([1, 30, 75, 90, 600].map((seconds) => delayWords(seconds))).toEqual([
      "about 5 seconds",
      "about 30 seconds",
      "about 75 seconds",
      "about 2 minutes",
      "about 10 minutes",
    ]);
  });
});

describe("A card in another language", () => {
  test.each(paperLanguages)("says all that it says in English, in %s, with its figures", (language) => {
    for (const mode of ["automatic", "semi-automatic"]) {
      const set = chosen({ mode, offDelay: 600, threshold: 300, button: "on-and-off" });
      const [english, own] = [roomWords(set, [], "en"), roomWords(set, [], language)];
      expect(own.length).toBe(english.length);
      expect(own.some(({ text }) => text.includes("10"))).toBe(true);
      for (const [i, { heading, text }] of own.entries()) {
        expect(text).not.toMatch(/[{}]/);
        if (language !== "en") expect([heading, text]).not.toEqual([english[i]!.heading, english[i]!.text]);
      }
    }
  });

  test.each(paperLanguages)("keeps in %s to the width of the card", (language) => {
    const inner = 148.5 - 2 * 13;
    const { never, call } = cardWordings[language];
    expect(lengthOf(never, 2.5)).toBeLessThanOrEqual(inner);
    expect(lengthOf(call, 3.5)).toBeLessThanOrEqual(58);
  });

  test.each(paperLanguages)(
    "ends in %s above the line of whom to call, however much there is to say",
    (language) => {
      const devices = chosen({ mode: "semi-automatic", offDelay: 600, threshold: 300, button: "on-and-off" });
      const switches = ferryWing.rooms.map(({ id }, i) => ({
        id: `button-${i}`,
        room: id,
        kind: "push-button" as const,
        at: [0, 0] as const,
        height: 1.1,
      }));
      const marks = roomCards({
        site: { ...ferryWing, switches },
        devices,
        job: "Ferry wing",
        date: "",
        revision: "",
        language,
      }).flatMap((sheet) => sheet(1, 1).marks);
      const lines = marks.flatMap((mark) => (mark.kind === "text" ? [mark] : []));
      const { call, still_move } = cardWordings[language];
      const foot = Math.min(...lines.filter(({ text }) => text === call).map(({ at }) => at[1]));
      const last = still_move.split(" ").at(-1)!;
      const ends = lines.filter(({ text }) => text.endsWith(last)).map(({ at }) => at[1]);
      expect(ends.length).toBeGreaterThan(0);
      expect(Math.max(...ends)).toBeLessThan(foot - 7);
    },
  );
});

describe("Room cards", () => {
  const textsOf = (site: Site, call?: string): readonly string[] =>
    roomCards({
      site,
      devices: settled.devices,
      job: "Ferry wing",
      date: "",
      revision: "",
      ...(call ? { call } : {}),
    })
      .map((sheet) => sheet(1, 1))
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])));

  test("are made for rooms whose light a detector switches, and for no others", () => {
    const lit = new Set(
      ferryWing.rooms.filter(({ id }) => devicesOf(ferryWing, id, settled.devices).length > 0),
    );
    const titles = textsOf(ferryWing);
    for (const room of ferryWing.rooms)
      expect(titles.includes([room.number, room.name].filter(Boolean).join(" ")), room.name).toBe(
        lit.has(room),
      );
    expect(lit.size).toBeGreaterThan(0);
  });

  test("name whom to call where somebody is named", () => {
    expect(textsOf(ferryWing, "Ext. 212")).toContain("Ext. 212");
    expect(textsOf(ferryWing)).not.toContain("Ext. 212");
  });

  test("name whom to call whole, however long: half a telephone number is none", () => {
    for (const call of [
      "Caretaker, 0100 200",
      "Harbour office, weekdays 7 to 17, 0100 200 300, at night 0100 200 999",
    ]) {
      const texts = textsOf(ferryWing, call);
      expect(texts.join(" ")).toContain(call);
      expect(texts.filter((text) => text.endsWith("…") && text.startsWith(call.slice(0, 4)))).toEqual([]);
    }
  });
});
