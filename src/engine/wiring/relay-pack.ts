import { say } from "../check/index.ts";
import type { WiringModel } from "./model.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/**
 * Low-voltage supply of every relay pack: what it gives against what its detectors draw together.
 *
 * I = Σ I_k ≤ I_pack
 *
 * @param model - The wiring.
 * @returns One check for each pack; "not-proven" where a data sheet does not say.
 * @source DERIVED-HERE
 * @example Four detectors of 30 mA on a pack of 150 mA: 0.12 of 0.15 A passes
 */
export const packChecks = (model: WiringModel): readonly WiringCheck[] =>
  model.contactors.flatMap(({ id, name, pack, coil, main }): readonly WiringCheck[] => {
    if (!pack) return [];
    const fed = model.detectors.filter(
      ({ output, lowVoltage }) => lowVoltage !== undefined && output === coil.switchedLine,
    );
    const silent = fed.filter(({ lowVoltage }) => lowVoltage?.current === undefined);
    const doubts = silent.map(({ tag }) => say`What ${tag} draws is not on record`);
    const actual = fed.reduce((sum, { lowVoltage }) => sum + (lowVoltage?.current ?? 0), 0);
    return [
      {
        verdict: withDoubts(atMost(actual, pack.supplies), doubts),
        what: say`Current of its detectors on the supply of the relay pack`,
        actual,
        limit: pack.supplies,
        unit: "A",
        source: "DERIVED-HERE",
        assumptions: [
          fed.length === 1
            ? say`One low-voltage detector on it`
            : say`${fed.length} low-voltage detectors on it`,
          ...doubts,
          ...(pack.supplies === undefined ? [say`What the relay pack gives is not on record`] : []),
        ],
        missing: [
          ...(silent.length > 0 ? [say`the current of each low-voltage detector`] : []),
          ...(pack.supplies === undefined ? [say`the current that the relay pack gives`] : []),
        ],
        code: "pack-supply-overloaded",
        name,
        records: [id, main.circuit],
      },
    ];
  });
