import { expect, test } from "vitest";
import type { StepFile } from "./step-file.ts";
import { scanStep } from "./step-scan.ts";
import { withoutFacts } from "./step-shapes.ts";

const scanned = (records: string): StepFile => {
  const text = `ISO-10303-21;\nHEADER;\nFILE_SCHEMA(('IFC2X3'));\nENDSEC;\nDATA;\n${records}\nENDSEC;\nEND-ISO-10303-21;\n`;
  const file = scanStep(new TextEncoder().encode(text), { records: 1000 });
  if ("code" in file) throw new Error(file.code);
  return file;
};
const idsIn = (bytes: Uint8Array): readonly number[] => {
  const file = scanStep(bytes, { records: 1000 });
  if ("code" in file) throw new Error(file.code);
  return [...file.ids];
};

const space = "#1=IFCSPACE('a',#2,$,$,$,#3,#4,$,.ELEMENT.,.INTERNAL.,$);\n#2=IFCOWNERHISTORY();\n";
const shape =
  "#3=IFCLOCALPLACEMENT($,#5);\n#5=IFCAXIS2PLACEMENT3D(#6,$,$);\n#6=IFCCARTESIANPOINT((0.,0.,0.));\n#4=IFCPRODUCTDEFINITIONSHAPE($,$,(#7));\n#7=IFCSHAPEREPRESENTATION(#8,'Body','Brep',(#6));\n#8=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,$,#5,$);\n";
const facts =
  "#10=IFCRELDEFINESBYPROPERTIES('b',#2,$,$,(#1),#11);\n#11=IFCPROPERTYSET('c',#2,$,$,(#12));\n#12=IFCPROPERTYSINGLEVALUE('Reference',$,$,$);\n" +
  "#13=IFCRELSPACEBOUNDARY('d',#2,$,$,#1,#9,#14,.PHYSICAL.,.INTERNAL.);\n#14=IFCCONNECTIONSURFACEGEOMETRY(#15,$);\n#15=IFCPLANE(#16);\n#16=IFCAXIS2PLACEMENT3D(#6,$,$);\n#9=IFCWALL('e',#2,$,$,$,$,$,$);\n";

test("Property sets and boundaries of rooms go, with what they alone refer to; what they are about stays, wherever they stand", () => {
  const wanted = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  for (const records of [space + shape + facts, facts + shape + space, space + facts + shape]) {
    const rest = withoutFacts(scanned(records));
    expect([...idsIn(rest)].sort((a, b) => a - b)).toEqual(wanted);
  }
});

test("What the shapes share with the facts stays", () => {
  const shared = facts.replace("IFCPLANE(#16)", "IFCPLANE(#5)").replaceAll("#16=", "#17=");
  expect(idsIn(withoutFacts(scanned(space + shape + shared)))).toContain(5);
});

test("A set that a type holds itself stays, and a file without facts is handed on as it is", () => {
  const held = `${space + shape + facts}#20=IFCDOORSTYLE('f',#2,$,$,$,(#11),$,$,.NOTDEFINED.,.NOTDEFINED.,.F.,.F.);\n`;
  expect(idsIn(withoutFacts(scanned(held)))).toEqual(expect.arrayContaining([11, 12, 20]));
  const plain = scanned(space + shape);
  expect(withoutFacts(plain)).toBe(plain.bytes);
});
