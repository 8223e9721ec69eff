import { expect, test } from "vitest";
import { figureIn } from "./figures-in.ts";

test.each([
  ["30", "mA", 30],
  ["30 mA", "mA", 30],
  ["30mA", "mA", 30],
  ["0,03 A", "mA", 30],
  ["6 kA", "kA", 6],
  ["6000 A", "kA", 6],
  ["2.5 mm²", "mm²", 2.5],
  ["2.5 mm2", "mm²", 2.5],
  ["150 \u03bcs", "µs", 150],
  ["0.15 ms", "µs", 150],
  ["4700 nF", "µF", 4.7],
  ["90 s", "min", 1.5],
  ["1.5 min", "s", 90],
  ["0.35 \u2126", "Ω", 0.35],
  ["350 mohm", "Ω", 0.35],
  ["1.2 kW", "W", 1200],
  ["500 lux", "lx", 500],
  ["12 %", "%", 12],
  ["-5 °C", "°C", -5],
  ["−5 C", "°C", -5],
  ["45 deg.", "°", 45],
  ["14 000 A²s".replace(" ", ""), "A²s", 14_000],
  [".5", "", 0.5],
])("“%s” in a field of %s is %d", (typed, unit, figure) => expect(figureIn(typed, unit)).toBe(figure));

test.each([
  ["30 V", "mA"],
  ["30 mA", ""],
  ["30 apples", "mA"],
  ["mA", "mA"],
  ["", "mA"],
  ["1 2", "A"],
  ["1.2.3", "A"],
  ["10 min", "mA"],
  // A unit that a field has and no kind names is understood as it stands, and no other is.
  ["3 pieces", "boxes"],
])("“%s” in a field of “%s” is no figure", (typed, unit) => expect(figureIn(typed, unit)).toBeUndefined());
