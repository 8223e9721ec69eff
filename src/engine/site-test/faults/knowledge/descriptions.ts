import { say } from "../../../check/index.ts";
import type { TestDescription } from "../knowledge-types.ts";
import { type FaultTest, type Symptom, symptoms } from "../names.ts";

const lit: readonly Symptom[] = ["stays-on", "comes-on-with-nobody-there"];
const dark: readonly Symptom[] = ["goes-off-while-occupied", "does-not-come-on", "comes-on-late"];
const notGlowing: readonly Symptom[] = symptoms.filter((one) => one !== "glows-when-off");

/** What each test asks of the tester; minutes with waiting for an ordinary delay. @source COMMON-PRACTICE */
export const descriptions: Readonly<Record<FaultTest, TestDescription>> = {
  "ask-hours": {
    minutes: 1,
    where: "phone",
    symptoms: notGlowing,
    instruction: say`Ask whether it happens by day only, or after dark too.`,
  },
  "ask-place": {
    minutes: 1,
    where: "phone",
    symptoms: dark,
    instruction: say`Ask whether it happens at one place only, or wherever somebody sits.`,
  },
  "ask-machines": {
    minutes: 1,
    where: "phone",
    symptoms: notGlowing,
    instruction: say`Ask whether it happens only while a fan, a heater or a machine runs.`,
  },
  "ask-door": {
    minutes: 1,
    where: "phone",
    symptoms: notGlowing,
    instruction: say`Ask whether it happens only while the door stands open.`,
  },
  "ask-neighbours": {
    minutes: 1,
    where: "phone",
    symptoms: notGlowing,
    instruction: say`Ask whether it happens only when somebody is about in the rooms next door.`,
  },
  "ask-rhythm": {
    minutes: 1,
    where: "phone",
    symptoms: ["stays-on", "comes-on-with-nobody-there", "goes-off-while-occupied"],
    instruction: say`Ask how long after coming, leaving or going off it happens.`,
  },
  "read-settings": {
    minutes: 3,
    where: "room",
    symptoms: notGlowing,
    instruction: say`Read the settings from the device and hold them against its setting sheet.`,
  },
  "empty-room": {
    minutes: 20,
    where: "room",
    symptoms: lit,
    instruction: say`Leave the room, shut the door, and see whether the light goes off after its delay and stays off.`,
  },
  "cover-lenses": {
    minutes: 20,
    where: "room",
    symptoms: lit,
    instruction: say`Cover the lenses of the room's detectors and see whether the light goes off after its delay.`,
  },
  "walk-past-open-door": {
    minutes: 2,
    where: "room",
    symptoms: [...lit, ...dark],
    instruction: say`With the room dark and its door open, walk past outside.`,
  },
  "walk-in": {
    minutes: 2,
    where: "room",
    symptoms: dark,
    instruction: say`Come in at an ordinary pace from the dark room's door, and watch when the light comes on.`,
  },
  "walk-beneath": {
    minutes: 2,
    where: "room",
    symptoms: dark,
    instruction: say`Walk about beneath the detector; watch its indicator and the light.`,
  },
  "press-button": {
    minutes: 1,
    where: "room",
    symptoms: notGlowing,
    instruction: say`Press the button and see whether the light answers.`,
  },
  "shade-light-sensor": {
    minutes: 5,
    where: "room",
    symptoms: notGlowing,
    instruction: say`Shade the light sensor, not the lens, and see whether the fault stops.`,
  },
  "sit-at-the-place": {
    minutes: 4,
    where: "room",
    symptoms: dark,
    instruction: say`Sit at each place, move the hands only, and watch the indicator.`,
  },
  "sit-near": {
    minutes: 2,
    where: "room",
    symptoms: dark,
    instruction: say`Sit one metre beside the point below the detector, move the hands only, and watch the indicator.`,
  },
  "look-to-the-lens": {
    minutes: 2,
    where: "room",
    symptoms: dark,
    instruction: say`Look from each place and from the door to the lens: is it in plain sight, is something between, is that side masked?`,
  },
  "measure-height": {
    minutes: 2,
    where: "room",
    symptoms: dark,
    instruction: say`Measure the height of the lens and look at the turn of its notch.`,
  },
  "measure-temperature": {
    minutes: 1,
    where: "room",
    symptoms: dark,
    instruction: say`Measure the temperature of the walls and the floor that the detector looks at.`,
  },
  "measure-open-output": {
    minutes: 15,
    where: "opened",
    symptoms: ["stays-on", "comes-on-with-nobody-there", "glows-when-off"],
    instruction: say`With the detector calling for no light, measure from its switched line to neutral.`,
  },
  "measure-closed-output": {
    minutes: 10,
    where: "opened",
    symptoms: ["does-not-come-on", "comes-on-late", "flickers"],
    instruction: say`With the detector calling for light, measure from its switched line to neutral.`,
  },
  "unplug-output": {
    minutes: 12,
    where: "opened",
    symptoms: ["stays-on", "comes-on-with-nobody-there", "glows-when-off"],
    instruction: say`Made dead: take the switched line off the detector and insulate it; power up and look at the lamps.`,
  },
  "measure-supply": {
    minutes: 10,
    where: "opened",
    symptoms: [...dark, "flickers", "comes-on-with-nobody-there"],
    instruction: say`Measure line to neutral at the detector, for some minutes and while moving the cable.`,
  },
  "feed-lamps-directly": {
    minutes: 12,
    where: "opened",
    symptoms: ["does-not-come-on", "comes-on-late", "flickers"],
    instruction: say`Made dead: take line and switched line off the detector, join the two in an insulated connector and close the cover; power up and look at the lamps; make it dead again and put both back.`,
  },
  "look-at-breakers": {
    minutes: 2,
    where: "room",
    symptoms: ["goes-off-while-occupied", "does-not-come-on", "flickers"],
    instruction: say`Look at the board: has a breaker or a residual current device tripped?`,
  },
  "disconnect-button": {
    minutes: 15,
    where: "opened",
    symptoms: ["comes-on-with-nobody-there", "stays-on", "goes-off-while-occupied"],
    instruction: say`Made dead: take the button's wire off the detector; power up and see whether the fault stops.`,
  },
  "cover-neighbours": {
    minutes: 15,
    where: "room",
    symptoms: lit,
    instruction: say`Cover the lenses of detectors next door and see whether the fault stops.`,
  },
  "silence-microphone": {
    minutes: 10,
    where: "room",
    symptoms: lit,
    instruction: say`Turn the microphone off and see whether the fault stops.`,
  },
  "look-for-suppressor": {
    minutes: 10,
    where: "opened",
    symptoms: ["glows-when-off"],
    instruction: say`Made dead: look for a suppressor at the detector's output, and across what it lies.`,
  },
  "take-out-glow-lamp": {
    minutes: 8,
    where: "opened",
    symptoms: ["glows-when-off", "comes-on-with-nobody-there", "goes-off-while-occupied", "stays-on"],
    instruction: say`Made dead: take the glow lamp out of the switch or button; power up and see whether the fault stops.`,
  },
  "test-neutral": {
    minutes: 15,
    where: "opened",
    symptoms: ["goes-off-while-occupied", "does-not-come-on"],
    instruction: say`Made dead: disconnect the circuit's neutral at the board and test for continuity to the neutrals of other circuits.`,
  },
  "log-switching": {
    minutes: 6,
    where: "room",
    symptoms: [...lit, "flickers", "goes-off-while-occupied"],
    instruction: say`Watch light and indicator for some minutes: does the detector switch, or do the lamps change by themselves?`,
  },
};
