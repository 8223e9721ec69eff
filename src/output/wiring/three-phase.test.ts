import { expect, test } from "vitest";
import { deriveWiring, english, reviewWiring, wiringOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import type { Sheet, TextMark } from "../drawing/mark.ts";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import type { WiringPlan } from "./plan.ts";
import { terminalSchedule } from "./schedules.ts";
import { threePhaseInstallation, threePhasePlan, threePhaseSite } from "./three-phase.fixture.ts";
import { wiringDrawings } from "./wiring-documents.ts";
import { wiringPlan } from "./wiring-plan.ts";

const sheetsOf = (
  plan: WiringPlan,
  variant: "colour" | "black-and-white" = "colour",
  site = threePhaseSite,
): readonly Sheet[] => {
  const unnumbered = wiringDrawings({
    site,
    plan,
    variant,
    title: (sheet) => ({ ...ferryWingTitle, sheet }),
  });
  return unnumbered.map((sheet, i) => sheet(i + 1, unnumbered.length));
};
const textsOf = ({ marks }: Sheet): readonly string[] =>
  marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text);

test("A three-phase circuit stands on the sheet with all its lines, the contactor with three main contacts, each luminaire behind its own", () => {
  const [coil, office] = sheetsOf(threePhasePlan);
  const texts = textsOf(office!);
  for (const words of ["L1  brown", "L2  black", "L3  grey", "N  blue", "PE  green-yellow"])
    expect(texts).toContain(words);
  for (const words of ["L1′  brown", "L2′  black", "L3′  grey"]) expect(texts).toContain(words);
  for (const number of ["1", "2", "3", "4", "5", "6"]) expect(texts).toContain(number);
  expect(textsOf(coil!)).toEqual(expect.arrayContaining(["A1", "A2", "L1  brown"]));
  expect(textsOf(coil!)).not.toContain("L2  black");
  for (const variant of ["colour", "black-and-white"] as const)
    for (const sheet of sheetsOf(threePhasePlan, variant))
      expect([sheet.name, crossedTexts(sheet.marks)]).toEqual([sheet.name, []]);
});

test("Terminals of coil and main contacts name conductor, goal and cable; cables behind three lines have five cores", () => {
  const rows = terminalSchedule(threePhasePlan)
    .rows.map((row) => row.map(english))
    .filter(([device]) => device === "Q1");
  expect(rows.map(([, terminal, conductor, , goal]) => [terminal, conductor, goal])).toEqual([
    ["A1", "L′", "B0.01, B0.02"],
    ["A2", "N", "Lighting 1"],
    ["1", "L1", "Lighting 2"],
    ["2", "L1′", "E7, E10"],
    ["3", "L2", "Lighting 2"],
    ["4", "L2′", "E8"],
    ["5", "L3", "Lighting 2"],
    ["6", "L3′", "E9"],
  ]);
  const [corridor, office] = threePhasePlan.groups;
  expect(new Set(office!.cables.map(({ conductors }) => conductors.length))).toEqual(new Set([5]));
  const coil = corridor!.cables.find(({ to }) => to === "q1")!;
  expect(coil.conductors).toEqual(["switched", "neutral", "protective"]);
  // From (2.5, 1) back to the board at (0.3, 0.2): 3 m along the walls, 0.7 m down, 0.3 m at each end, a tenth of waste.
  expect(coil.length).toBeCloseTo((3 + 0.7 + 0.6) * 1.1, 9);
});

test("A luminaire whose line nobody entered hangs on no rail behind three lines", () => {
  const site = {
    ...threePhaseSite,
    luminaires: threePhaseSite.luminaires.map(({ line: _, ...one }) => one),
  };
  const plan = wiringPlan(site, threePhaseInstallation, wiringOfSite(site, threePhaseInstallation));
  const texts = textsOf(sheetsOf(plan, "colour", site)[1]!);
  expect(texts).toContain("unknown");
  expect(texts.filter((text) => text.startsWith("L1′  ")).length).toBe(1);
  expect(
    terminalSchedule(plan)
      .rows.map((row) => row.map(english))
      .filter(([device, terminal]) => device === "Q1" && terminal === "2")
      .map(([, , , , goal]) => goal),
  ).toEqual([""]);
});

test("A detector in a three-phase circuit is on the line of its luminaires; its supply carries all lines, as the route does", () => {
  const [board] = threePhaseInstallation.boards;
  const [first] = threePhaseInstallation.circuits;
  const found = { boards: [board!], circuits: [{ ...first!, phases: "three-phase" as const }] };
  const on = (line: "L1" | "L2" | "L3", second = line) => ({
    ...threePhaseSite,
    luminaires: threePhaseSite.luminaires
      .filter(({ room, emergency }) => room === "corridor" && !emergency)
      .map((one, i) => ({ ...one, line: i === 0 ? line : second })),
  });
  const site = on("L2");
  const plan = wiringPlan(site, found, wiringOfSite(site, found));
  const [group] = plan.groups;
  expect(group!.detectors.map(({ wired }) => wired.line)).toEqual([
    { kind: "line", circuit: "circuit-1", line: "L2" },
    { kind: "line", circuit: "circuit-1", line: "L2" },
  ]);
  const { route } = deriveWiring(site, found).circuits[0]!;
  expect(group!.cables.map(({ conductors }) => conductors.length)).toEqual(
    route!.cables.map(({ cores }) => cores),
  );
  expect(group!.cables[0]!.conductors).toEqual(["L1", "L2", "L3", "neutral", "protective"]);
  const [sheet] = sheetsOf(plan, "colour", site);
  expect(crossedTexts(sheet!.marks)).toEqual([]);
  const codes = (lines: typeof site) => reviewWiring(lines, found)!.problems.map(({ code }) => code);
  expect(codes(site)).not.toContain("not-the-line-switched");
  expect(codes(on("L2", "L3"))).toContain("not-the-line-switched");
});

test("One detector that holds three contactors on L1, L2 and L3: their coils on its sheet, each with its own line on a sheet of its own", () => {
  const [board] = threePhaseInstallation.boards;
  const [first, second] = threePhaseInstallation.circuits;
  const [contactor] = second!.contactors!;
  const { phases: _, contactors: __, ...single } = second!;
  const lines = ["L1", "L2", "L3"] as const;
  const office = threePhaseSite.luminaires.filter(({ room }) => room === "office");
  const site = {
    ...threePhaseSite,
    luminaires: threePhaseSite.luminaires.map(({ line: ___, ...one }) => {
      const i = office.findIndex(({ id }) => id === one.id);
      return i < 0 ? one : { ...one, circuit: `Office ${lines[i % 3]}` };
    }),
  };
  const found = {
    boards: [board!],
    circuits: [
      first!,
      ...lines.map((line, i) => ({
        ...single,
        id: `office-${line}`,
        name: `Office ${line}`,
        poles: "one-and-neutral" as const,
        line,
        contactors: [
          {
            ...contactor!,
            id: `q-${line}`,
            name: `Office ${line}`,
            luminaires: office.filter((____, k) => k % 3 === i).map(({ id }) => id),
          },
        ],
      })),
    ],
  };
  const plan = wiringPlan(site, found, wiringOfSite(site, found));
  const sheets = sheetsOf(plan, "colour", site).map(textsOf);
  const own = sheets.find((texts) => texts.includes("B0.01"))!;
  expect(own).toEqual(expect.arrayContaining(["Q1", "Q2", "Q3", "L1  brown"]));
  for (const [i, words] of ["L1  brown", "L2  black", "L3  grey"].entries()) {
    const main = sheets.find((texts) => texts.includes(`Switched group Q${i + 1}`))!;
    expect(main.filter((text) => /^L[123] {2}/.test(text))).toEqual([words]);
    expect(main).toContain(`circuit Office ${lines[i]}`);
  }
  for (const sheet of sheetsOf(plan, "colour", site)) expect(crossedTexts(sheet.marks)).toEqual([]);
});
