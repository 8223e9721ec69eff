// biome-ignore-all lint/suspicious/noTemplateCurlyInString: these strings are code, and the tagged texts in it have gaps.
import { compileFunction } from "node:vm";
import { parseAst } from "vite";
import { expect, test } from "vitest";
import { say } from "#engine";
import { saidWritten } from "../../scripts/said-written.ts";

const imported = 'import { say } from "#engine";';

/** What an expression comes to, with the tag and two values at hand. */
const comesTo = (expression: string, tag: unknown): unknown =>
  compileFunction(`return ${expression};`, ["say", "b", "d"])(tag, 2, "four");

const notCalled = (): never => {
  throw new Error("The tag was called.");
};

const writtenOut = (expression: string): string => {
  const code = `${imported}export const value = ${expression};`;
  const whole = saidWritten(code, parseAst(code)) ?? code;
  return whole.slice(`${imported}export const value = `.length, -1);
};

test.each([
  ["without a value", "say`Nothing was found.`"],
  ["empty", "say``"],
  ["with a value at each end", "say`${b} of ${d}`"],
  ["with gaps side by side", "say`${b}${d}${b}`"],
  ["within another", "say`Outside ${say`inside ${say`inmost ${b}`} and ${d}`}, ${say`alone`}`"],
  ["with letters and signs beyond the usual", "say`é😀 ${b} é😀 ${say`😀${d}`}`"],
  ["with a space that does not break", "say`${b}\\u00a0m ${d}\u00a0m`"],
  ["with escaped signs", 'say`\\`${b}\\` \\${d} \\\\ "quoted"\\n`'],
  ["with a sequence in brackets", "say`${(b, d)} and ${b}`"],
  [
    "with a choice, a function and an object",
    "say`${b > 1 ? d : b} ${[b].map((one) => one + 1)[0]} ${{ figure: d }}`",
  ],
  ["with remarks and brackets in its gaps", "say`${/* ) */ ((b)) /* ( */} ${ d }`"],
  ["read at once", "say`${b} m`.values[0] + say`far`.text.length"],
  ["in a list and a table", "[say`one`, { two: say`two ${b}` }]"],
])("a text %s comes to the same, and the tag is not called", (_, expression) => {
  const written = writtenOut(expression);
  expect(written).not.toContain("say`");
  expect(comesTo(written, notCalled)).toEqual(comesTo(expression, say));
});

test.each([
  ["not imported", "const say = (text) => text; export const value = say`x`;"],
  ["imported as another's", 'import { tell as say } from "./tell.js"; export const value = say`x`;'],
  ["a parameter", `${imported} export const value = (say) => say\`x\`;`],
  ["a parameter in a pattern", `${imported} export const value = ({ told: [say] }) => say\`x\`;`],
  [
    "a variable of a block",
    `${imported} export const value = () => { const { say } = b; return say\`x\`; };`,
  ],
  ["a caught error", `${imported} try { go(); } catch (say) { say\`x\`; }`],
  ["a property", `${imported} export const value = b.say\`x\`;`],
])("a tag of that name that is %s is left alone", (_, code) => {
  expect(saidWritten(code, parseAst(code))).toBeUndefined();
});
