import { expect, test } from "vitest";
import { english, settingsOfSite, shippedPacks } from "#engine";
import { emptyJob, type JobFile, parseJob, settingInFile, settingsOfJob, siteOf } from "../index.ts";

const jobWith = (detector: object, details: JobFile["details"] = {}): JobFile =>
  parseJob({
    ...emptyJob("Annex"),
    details,
    storeys: [{ id: "g" }],
    rooms: [
      {
        id: "r",
        storey: "g",
        use: "changing",
        daylight: false,
        outline: [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
      },
    ],
    models: [{ id: "m", zones: { towards: [{ height: 2.5, radius: 4 }] } }],
    detectors: [{ id: "d", tag: "B1", room: "r", model: "m", at: [2, 1], ...detector }],
  }).job!;

test("what the file calls otherwise reaches the engine by its own name", () => {
  const chosen = {
    mode: "semi-automatic",
    buttonRole: "on-only",
    brightnessThreshold: 120,
    mask: "none",
    testMode: "on",
  } as const;
  const { choices } = settingsOfJob(jobWith({ settings: chosen }));
  expect(choices.chosen?.get("d")).toEqual({
    mode: "semi-automatic",
    button: "on-only",
    threshold: 120,
    mask: "none",
    testMode: "on",
  });
  expect(settingInFile("threshold")).toBe("brightnessThreshold");
  expect(settingInFile("button")).toBe("buttonRole");
});

test("readings, timer and the words of the device at hand are kept, and the first two decide", () => {
  const job = jobWith({
    lightReadings: { target: 500, lampsOff: [{ ceiling: 96, task: 320 }] },
    timer: { time: 180 },
    deviceLabels: { offDelay: "position 2" },
  });
  expect(job.detectors[0]).toMatchObject({ deviceLabels: { offDelay: "position 2" } });
  const { choices } = settingsOfJob(job);
  const { devices } = settingsOfSite(siteOf(job).site, choices);
  expect(devices[0]!.context.stairTimer).toEqual({ time: 180 });
  // The room is said to have no daylight: the person's word stands against the reading.
  expect(devices[0]!.settings.threshold.value).toBe("off");
  expect(devices[0]!.settings.impulse.value).toEqual({ pulse: 1, pause: 9 });
});

test("a delay that the simulated day recommended is derived, with the simulation as its reason; a person's choice comes first", () => {
  const delayOf = (detector: object) => {
    const job = jobWith(detector);
    return settingsOfSite(siteOf(job).site, settingsOfJob(job).choices).devices[0]!.settings.offDelay;
  };
  const recommended = delayOf({ recommended: { delay: 420, saving: 0.31 } });
  expect(recommended).toMatchObject({ kind: "derived", value: 420 });
  expect(recommended.kind === "derived" && english(recommended.reason)).toBe(
    "The shortest of the simulated delays that leaves people in the light; it spares 31 % of the lit hours.",
  );
  expect(delayOf({ recommended: { delay: 420 }, settings: { offDelay: 300 } })).toMatchObject({
    kind: "chosen",
    value: 300,
  });
  expect(delayOf({})).toMatchObject({ kind: "derived", value: 900 });
});

test("kinds of space and the output of the plant reach the rules", () => {
  const judged = (details: JobFile["details"], space?: "locker-room" | "lobby") => {
    const job = jobWith({}, { ...details, date: "2030-01-01", rulesOn: ["iecc-2021", "epbd-2024"] });
    const own = { ...job, rooms: job.rooms.map((room) => ({ ...room, ...(space ? { space } : {}) })) };
    const { rooms } = settingsOfSite(siteOf(own).site, settingsOfJob(own).choices);
    return rooms.flatMap(({ results }) =>
      results.map(({ pack, rule, check }) => `${pack} ${rule} ${check.verdict}`),
    );
  };
  expect(judged({ plantPower: 100_000 })).toEqual([
    "iecc-2021 off-delay pass",
    "epbd-2024 medium-plant pass",
  ]);
  expect(judged({ plantPower: 50_000 }, "lobby")).toEqual([]);
  expect(judged({})).toContain("epbd-2024 medium-plant not-proven");
});

test("packs follow the region of the job and what was switched by hand", () => {
  const on = (details: JobFile["details"]): readonly string[] =>
    settingsOfJob(jobWith({}, details)).packs.flatMap(({ pack, on }) => (on ? [pack.code] : []));
  expect(on({})).toEqual([]);
  expect(on({ region: "USA", rulesOff: ["iecc-2021"] })).toEqual(["ashrae-90-1-full-off"]);
  expect(on({ rulesOn: ["title-24-2022"] })).toEqual(["title-24-2022"]);
  expect(settingsOfJob(jobWith({})).packs.map(({ pack }) => pack)).toEqual(shippedPacks);
});

test("a date that is a day is the day of the job; other words are not", () => {
  expect(settingsOfJob(jobWith({}, { date: "2028-01-31" })).choices.day).toBe("2028-01-31");
  expect(settingsOfJob(jobWith({}, { date: "January" })).choices.day).toBe(undefined);
});
