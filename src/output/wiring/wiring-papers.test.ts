import { expect, test } from "vitest";
import { deriveWiring, english, type FoundInstallation, wiringOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import type { Mark, Sheet, TextMark } from "../drawing/mark.ts";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import { cautions } from "./caution-band.ts";
import { conductorOrder, conductorPens } from "./conductors.ts";
import { ranges } from "./designations.ts";
import { boxList } from "./fitting-list.ts";
import { cableTable } from "./group-cable-table.ts";
import { cableSchedule } from "./schedules.ts";
import { wiredInstallation, wiredPlan, wiredSite } from "./wired-wing.fixture.ts";
import { wiringDrawings, wiringSchedules, wiringTables } from "./wiring-documents.ts";
import { wiringPlan } from "./wiring-plan.ts";

type Papers = typeof wiringDrawings | typeof wiringSchedules;

function sheetsOf(
  papers: Papers,
  variant: "colour" | "black-and-white" = "colour",
  plan = wiredPlan,
  site = wiredSite,
): readonly Sheet[] {
  const unnumbered = papers({ site, plan, variant, title: (sheet) => ({ ...ferryWingTitle, sheet }) });
  return unnumbered.map((sheet, i) => sheet(i + 1, unnumbered.length));
}

const textsOf = ({ marks }: Sheet): readonly string[] =>
  marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text);

/** A corridor with many detectors joined on one line: more than a sheet holds. */
const longSite = {
  ...wiredSite,
  detectors: Array.from({ length: 12 }, (_, i) => ({
    ...wiredSite.detectors[0]!,
    id: `many${i}`,
    tag: `B2.${String(i + 1).padStart(2, "0")}`,
    at: [0.5 + 1.2 * i, 1] as const,
  })),
};
const longPlan = wiringPlan(longSite, wiredInstallation, wiringOfSite(longSite, wiredInstallation));

test("No line runs through a text on any sheet of the wiring", () => {
  const sheets = [
    ...sheetsOf(wiringDrawings),
    ...sheetsOf(wiringDrawings, "black-and-white"),
    ...sheetsOf(wiringSchedules),
    ...sheetsOf(wiringDrawings, "colour", longPlan, longSite),
  ];
  expect(sheets.length).toBeGreaterThan(10);
  for (const sheet of sheets) expect([sheet.name, crossedTexts(sheet.marks)]).toEqual([sheet.name, []]);
});

test("The check of lines and texts finds a line that is drawn through one", () => {
  const [sheet] = sheetsOf(wiringDrawings);
  const tag = sheet!.marks.find((mark): mark is TextMark => mark.kind === "text" && mark.text === "B0.01")!;
  const through: Mark = {
    kind: "line",
    from: [tag.at[0] + 1, tag.at[1] - 1],
    to: [tag.at[0] + 5, tag.at[1] - 1],
    pen: { width: 0.25, colour: "#000000" },
  };
  expect(crossedTexts([...sheet!.marks, through])).toEqual(["B0.01"]);
});

test("Every page of the wiring says that it kills, and what is to be verified, once", () => {
  for (const sheet of [...sheetsOf(wiringDrawings), ...sheetsOf(wiringSchedules)]) {
    const texts = textsOf(sheet);
    expect(texts.filter((text) => text === "! 230 V kills.").length).toBe(1);
    const all = texts.join(" ");
    for (const sentence of cautions({ region: "IEC" })) expect(all).toContain(english(sentence));
    expect(texts.filter((text) => text.startsWith("Verify,")).length).toBe(1);
  }
});

test("Each detector stands on one drawing, each luminaire and breaker is named, and the group is called by its tags", () => {
  const sheets = sheetsOf(wiringDrawings).map(textsOf);
  for (const { tag } of wiredSite.detectors)
    expect(sheets.filter((texts) => texts.includes(tag)).length).toBe(1);
  expect(sheets[0]).toContain("Switched group B0.01 + B0.02");
  expect(sheets[0]).toContain("E1–E5");
  expect(sheets[0]).toContain("F1  B 10 A");
  expect(sheets[0]).toContain("F4  RCD 30 mA (RCD 1)");
  expect(sheets[1]).toContain("F2  fuse gG 10 A");
  expect(sheets[1]).toContain("no RCD on record");
});

test("What nobody knows stands on the sheet as unknown, never as a usual value", () => {
  const texts = textsOf(sheetsOf(wiringDrawings)[2]!);
  for (const words of [
    "board unknown",
    "F3  type and rating unknown",
    "RCD unknown",
    "– section of the cable",
    "– whether a protective conductor is there (drawn as if)",
    "– power of E11",
  ])
    expect(texts).toContain(words);
  expect(texts.join(" ")).not.toMatch(/\b(10|16) A\b|30 mA|1\.5 mm²/);
});

test("A terminal that is needed and that the data sheet does not list is told, not drawn away", () => {
  const texts = textsOf(sheetsOf(wiringDrawings)[1]!);
  expect(texts).toContain("! out");
  expect(texts).toContain("– ! the data sheet lists no such terminal: B0.04 signal out");
});

test("What hangs on another circuit or line is written at its terminal, joined to nothing, and gets no cable", () => {
  const crossed = {
    ...wiredSite,
    // The second corridor detector is fed from Lighting 2, and the button of the office from Lighting 1.
    detectors: wiredSite.detectors.map((one) =>
      one.id === "b2"
        ? { ...one, circuit: "Lighting 2", luminaires: ["c0"] }
        : one.id === "b1"
          ? { ...one, luminaires: ["c0", "c1"] }
          : one,
    ),
    switches: wiredSite.switches.map((one) => (one.id === "s1" ? { ...one, circuit: "Lighting 1" } : one)),
  };
  const plan = wiringPlan(crossed, wiredInstallation, wiringOfSite(crossed, wiredInstallation));
  const [corridor, office] = sheetsOf(wiringDrawings, "colour", plan, crossed).map(textsOf);
  expect(corridor).toContain("! L2 of F2");
  expect(corridor).toContain("! N of F2");
  expect(office).toContain("! L1 of F1");
  expect(office!.join(" ")).toContain("! S1: on another circuit or line than this group. Do not connect");
  expect(plan.groups[0]!.cables.filter(({ from, to }) => from === "b2" || to === "b2")).toEqual([]);
  expect(plan.groups[1]!.cables.filter(({ to }) => to === "s1")).toEqual([]);
  for (const sheet of sheetsOf(wiringDrawings, "colour", plan, crossed))
    expect(crossedTexts(sheet.marks)).toEqual([]);
});

test("Two boards of different supplies: each group is drawn and coloured by its own", () => {
  const found = {
    boards: [
      ...wiredInstallation.boards,
      { ...wiredInstallation.boards[0]!, id: "other", name: "Other board", voltage: 120 },
    ],
    circuits: wiredInstallation.circuits.map((one) =>
      one.id === "circuit-2" ? { ...one, board: "other" } : one,
    ),
  };
  const plan = wiringPlan(wiredSite, found, wiringOfSite(wiredSite, found));
  const [corridor, office] = sheetsOf(wiringDrawings, "colour", plan).map(textsOf);
  expect(corridor).toContain("! 230 V kills.");
  expect(corridor).toContain("L1  brown");
  expect(office).toContain("! 120 V kills.");
  expect(office).toContain("N  white or gray");
  for (const sheet of sheetsOf(wiringSchedules, "colour", plan))
    expect(textsOf(sheet)).toContain("! 230 V kills.");
});

test("The legend explains what is on the sheet and nothing else", () => {
  const [first, second] = sheetsOf(wiringDrawings).map(textsOf);
  expect(first).toContain("F: circuit breaker");
  expect(first).not.toContain("F: fuse");
  expect(first).not.toContain("S: push-button");
  expect(second).toContain("F: fuse");
  expect(second).toContain("S: push-button");
  expect(second).not.toContain("F: residual current device");
  expect(first).toContain("L1: brown");
  expect(second).toContain("L2: black");
});

test("Without colour no two conductors are drawn alike", () => {
  for (const region of ["IEC", "US"] as const) {
    const drawn = conductorOrder.map((kind) =>
      JSON.stringify(conductorPens(kind, { region, variant: "black-and-white" })),
    );
    expect(new Set(drawn).size).toBe(drawn.length);
    expect(new Set(drawn.join().match(/#[0-9A-F]{6}/gi)).size).toBe(1);
  }
});

test("A switched conductor ends nowhere but at terminals and at itself", () => {
  const [sheet] = sheetsOf(wiringDrawings);
  const pen = JSON.stringify(conductorPens("switched", { region: "IEC", variant: "colour" })[0]);
  const lines = sheet!.marks.flatMap((mark) =>
    mark.kind === "line" && JSON.stringify(mark.pen) === pen ? [mark] : [],
  );
  const terminals = sheet!.marks.flatMap((mark) => (mark.kind === "circle" ? [mark.at] : []));
  // Two detectors, the switch beside them, the luminaires: four drops on one rail.
  const wires = lines.filter(({ from }) => from[0] > 100);
  expect(wires.length).toBe(5);
  const on = ([x, y]: readonly [number, number], line: (typeof wires)[number]): boolean =>
    Math.min(line.from[0], line.to[0]) - 1e-6 <= x &&
    x <= Math.max(line.from[0], line.to[0]) + 1e-6 &&
    Math.min(line.from[1], line.to[1]) - 1e-6 <= y &&
    y <= Math.max(line.from[1], line.to[1]) + 1e-6;
  for (const wire of wires)
    for (const end of [wire.from, wire.to])
      expect(
        terminals.some(([x, y]) => Math.hypot(x - end[0], y - end[1]) < 1e-6) ||
          wires.some((other) => other !== wire && on(end, other)),
      ).toBe(true);
});

test("Every luminaire is fed by one cable, and all that it feeds on to hangs on the same group", () => {
  for (const group of wiredPlan.groups)
    for (const { ids } of [...group.loads, ...group.emergency])
      for (const id of ids) expect(group.cables.filter(({ to }) => to === id).length).toBe(1);
  const names = wiredPlan.groups.flatMap(({ cables }) => cables.map(({ designation }) => designation));
  expect(new Set(names).size).toBe(names.length);
});

test("A length is an estimate where the plan gives one, and to be measured where it does not", () => {
  const [corridor, , toilet] = wiredPlan.groups;
  // From (0.3, 0.2) to (2.5, 1.0): up from 1.8 m to the ceiling at 2.5 m, 3.0 m along the walls, 0.3 m at each end, a tenth for bends.
  expect(corridor!.cables[0]!.length).toBeCloseTo((0.7 + 3 + 0.6) * 1.1, 9);
  expect(toilet!.cables[0]!.length).toBeUndefined();
  const cables = wiringTables({ site: wiredSite, plan: wiredPlan, speak: english }).find(
    ({ name }) => name === "cable-schedule.csv",
  )!;
  expect(cables.content).toContain(",measure\r\n");
});

test("Cables on paper are those that the engine derives for the screen, device by device and metre by metre", () => {
  const { route } = deriveWiring(wiredSite, wiredInstallation).circuits[0]!;
  const [corridor, office] = wiredPlan.groups;
  expect(corridor!.cables.map(({ from, to }) => [from, to])).toEqual(
    route!.cables.map(({ from, to }) => [from, to]),
  );
  expect(corridor!.cables.map(({ conductors }) => conductors.length)).toEqual(
    route!.cables.map(({ cores }) => cores),
  );
  const laid = corridor!.cables.reduce((sum, { length }) => sum + (length ?? Number.NaN), 0);
  expect(laid).toBeCloseTo(route!.boughtLength, 9);
  // A signal to a master is in no route: there the papers go their own way, and have the signal.
  expect(office!.cables.some(({ conductors }) => conductors.includes("signal"))).toBe(true);
});

test("A section that nobody entered is at least the smallest that passes every check, a gauge stays a gauge; what is not proven is unknown", () => {
  const sizes = (cable: FoundInstallation["circuits"][number]["cable"]): readonly (string | undefined)[] => {
    const [first, ...others] = wiredInstallation.circuits;
    const [board] = wiredInstallation.boards;
    const found = {
      boards: [{ ...board!, dropUsed: 0.005 }],
      circuits: [{ ...first!, breakingCapacity: 6000, letThrough: 12000, cable: cable! }, ...others],
    };
    const site = {
      ...wiredSite,
      luminaires: wiredSite.luminaires.map((one) => ({ ...one, powerFactor: 0.95 })),
    };
    const plan = wiringPlan(site, found, wiringOfSite(site, found));
    const { columns, rows } = cableSchedule(plan);
    const at = columns.findIndex(({ head }) => english(head) === "Section");
    return [...new Set(plan.groups[0]!.cables.map((_, i) => english(rows[i]![at] ?? "")))];
  };
  const laid = {
    cores: 3,
    length: 31,
    method: "C",
    ambient: 25,
    inInsulation: 0,
    concealed: "no",
    material: "copper",
    insulation: "PVC",
    withSignals: "none",
    grouping: { arrangement: "bunched", circuits: 1 },
  } as const;
  expect(sizes({ ...laid, section: 2.5 })).toEqual(["2.5 mm²"]);
  expect(sizes(laid)).toEqual(["≥ 1.5 mm²"]);
  expect(sizes({ gauge: 12 })).toEqual(["12 AWG"]);
  expect(sizes({ ...laid, method: undefined as never })).toEqual(["unknown"]);
});

test("What is always on and in no group has its cable on the first sheet of its circuit, where the supply goes through it", () => {
  const more = {
    ...wiredSite,
    luminaires: [...wiredSite.luminaires, { ...wiredSite.luminaires[0]!, id: "lone", room: "store" }],
  };
  const plan = wiringPlan(more, wiredInstallation, wiringOfSite(more, wiredInstallation));
  expect(plan.groups.map(({ cables }) => cables.filter(({ to }) => to === "lone").length)).toEqual([1, 0, 0]);
});

test("More apparatus than a sheet holds goes on in parts, and none of it is lost or doubled", () => {
  const sheets = sheetsOf(wiringDrawings, "colour", longPlan, longSite);
  expect(sheets.length).toBe(3);
  const tags = sheets.flatMap(({ marks }) =>
    marks.flatMap((mark) =>
      mark.kind === "text" && mark.size === 3.5 && /^B2/.test(mark.text) ? [mark.text] : [],
    ),
  );
  expect(tags).toEqual(longSite.detectors.map(({ tag }) => tag));
  expect(textsOf(sheets[0]!)).toContain("→ part 2");
  expect(textsOf(sheets[2]!).filter((text) => text.startsWith("→"))).toEqual([]);
});

test("Neighbours in number become a range, whichever way they run", () => {
  expect(ranges(["E1", "E2", "E3", "E7"])).toBe("E1–E3, E7");
  expect(ranges(["E5", "E4", "E3"])).toBe("E5–E3");
  expect(ranges(["E1", "E2"])).toBe("E1, E2");
  expect(ranges(["B0.09", "B0.10", "B0.11"])).toBe("B0.09–B0.11");
  expect(ranges(["+A1", "E1", "unknown"])).toBe("+A1, E1, unknown");
});

test("The schedule says of each terminal which conductor of which cable goes where", () => {
  const lines = wiringTables({ site: wiredSite, plan: wiredPlan, speak: english })
    .find(({ name }) => name === "terminal-schedule.csv")!
    .content.split("\r\n");
  expect(lines).toContain('B0.02,L′,L′,"brown, black or grey","E1–E5, B0.01","W6, W7",');
  expect(lines).toContain('B0.01,others,,,"left empty: button, signal in",,');
  expect(lines).toContain("S1,1,L2,black,Lighting 2,W15,");
  expect(lines).toContain("B0.05,L *,L1,brown,Lighting 3,W16,");
});

test("A name that a stranger chose cannot become a formula in a schedule", () => {
  const hostile = {
    ...wiredSite,
    detectors: wiredSite.detectors.map((one) => ({ ...one, tag: `=${one.tag}` })),
    rooms: wiredSite.rooms.map((room) => ({ ...room, number: "", name: "@room" })),
  };
  const found = {
    ...wiredInstallation,
    circuits: wiredInstallation.circuits.map((one) => ({ ...one, name: `+${one.name}` })),
  };
  const plan = wiringPlan(hostile, found, wiringOfSite(hostile, found));
  const files = wiringTables({ site: hostile, plan, speak: english });
  expect(files.map(({ content }) => content.includes("'="))).toContain(true);
  for (const { content } of files) {
    const cells = content.slice(1).split(/\r\n|,/);
    expect(cells.filter((cell) => /^"?[=+\-@]/.test(cell))).toEqual([]);
  }
});

test("The fitting list says what its devices draw by being ready, and of which nobody knows", () => {
  const ready = {
    ...wiredSite,
    models: wiredSite.models.map((one) => (one.id === "round-8" ? { ...one, standby: 0.5 } : one)),
  };
  const plan = wiringPlan(ready, wiredInstallation, wiringOfSite(ready, wiredInstallation));
  const own = plan.built.model.detectors.filter(({ standby }) => standby === 0.5).length;
  const texts = sheetsOf(wiringSchedules, "colour", plan, ready).flatMap(textsOf).join(" ");
  expect(own).toBeGreaterThan(0);
  expect(texts).toContain(
    `By being ready the devices draw ${Number((own * 4.38).toPrecision(3))} kWh a year`,
  );
  expect(sheetsOf(wiringSchedules).flatMap(textsOf).join(" ")).not.toContain("By being ready");
});

test("A cable past many devices is written out over several lines, and none of them is cut", () => {
  const many = Array.from({ length: 40 }, (_, i) => `E${3 * i + 1}`);
  const plan = { ...wiredPlan, names: { ...wiredPlan.names, ofAll: () => many.join(", ") } };
  const marks = cableTable(
    { plan, group: plan.groups[0]!, speak: english },
    { left: 20, top: 100, bottom: 250 },
  );
  const texts = marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text);
  expect(texts.filter((text) => text.includes("…"))).toEqual([]);
  const written = texts.join(" ");
  for (const name of many) expect(written).toMatch(new RegExp(`\\b${name}\\b`));
});

test("No head of a schedule is cut", () => {
  const heads = sheetsOf(wiringSchedules).flatMap(({ marks }) =>
    marks.filter((mark): mark is TextMark => mark.kind === "text" && mark.weight === "semibold"),
  );
  expect(heads.length).toBeGreaterThan(20);
  expect(heads.map(({ text }) => text).filter((text) => text.endsWith("…"))).toEqual([]);
});

test("Where boxes are sized by what is in them the box list says the least volume, and nowhere else", () => {
  const what = (gauge: 14 | undefined, voltage: number) => {
    const [first, ...others] = wiredInstallation.circuits;
    const [board] = wiredInstallation.boards;
    const { section: _, ...cable } = first!.cable!;
    const found = {
      boards: [{ ...board!, voltage }],
      circuits: [{ ...first!, cable: gauge === undefined ? first!.cable! : { ...cable, gauge } }, ...others],
    };
    const plan = wiringPlan(wiredSite, found, wiringOfSite(wiredSite, found));
    const cables = plan.groups[0]!.cables.filter(({ from, to }) => from === "b1" || to === "b1");
    return { text: english(boxList(wiredSite, plan).rows[0]![1]!), cables };
  };
  const { text, cables } = what(14, 120);
  const insulated = cables.flatMap(({ conductors }) => conductors).filter((one) => one !== "protective");
  // 2.00 in³ for each conductor, for the grounding conductors, the clamps, and twice for the device.
  expect(text).toContain(`box of ${(2 * (insulated.length + 4)).toFixed(1)} in³ at least`);
  expect(what(undefined, 230).text).not.toContain("in³");
});
