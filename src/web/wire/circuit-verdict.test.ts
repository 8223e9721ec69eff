import { describe, expect, test } from "vitest";
import { type Check, type Finding, say } from "#engine";
import { circuitVerdict, findingsOnCircuit } from "./circuit-verdict.ts";

const check = (verdict: Check["verdict"]): Check => ({
  verdict,
  what: say`Voltage drop`,
  actual: 1,
  limit: 3,
  unit: "%",
  source: "IEC-60364-5-52-DROP",
  assumptions: [],
});
const finding = (severity: Finding["severity"], records: readonly string[]): Finding => ({
  code: "wiring-not-proven",
  severity,
  room: undefined,
  records,
  at: undefined,
  values: {},
  message: "",
  remedy: "",
  evidence: [],
});

describe("the verdict on a circuit", () => {
  test("is the worst of its checks and findings", () => {
    expect(circuitVerdict({ checks: [check("pass")] }, [])).toBe("pass");
    expect(circuitVerdict({ checks: [check("pass"), check("not-proven")] }, [])).toBe("not-proven");
    expect(circuitVerdict({ checks: [check("not-proven"), check("fail")] }, [])).toBe("fail");
    expect(circuitVerdict({ checks: [check("pass")] }, [finding("must", [])])).toBe("fail");
    expect(circuitVerdict({ checks: [check("pass")] }, [finding("should", [])])).toBe("should");
    expect(circuitVerdict({ checks: [check("pass")] }, [finding("note", [])])).toBe("not-proven");
  });

  test("never holds where nothing was checked", () => {
    expect(circuitVerdict({ checks: [] }, [])).toBe("not-proven");
  });
});

test("findings of a circuit are those of the circuit, of its luminaires and of its detectors, each with its place in the list", () => {
  const all = [finding("must", ["other"]), finding("must", ["b1"]), finding("note", ["c1"])];
  const own = findingsOnCircuit(all, "c1", { luminaires: ["l1"], detectors: ["b1"] });
  expect(own.map(({ index }) => index)).toEqual([1, 2]);
});
