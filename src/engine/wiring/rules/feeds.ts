import { type Said, say } from "../../check/index.ts";
import type { Feed, PushButton, WiredDetector, WiringModel } from "../model.ts";
import { switchedGroups } from "../switched-group.ts";
import { joinedStates } from "./back-feed.ts";
import { mustBe, type RuleHit } from "./rule.ts";

const about = ({ tag, room, id }: WiredDetector) => ({ name: tag, room, records: [id] });
const deviceOf = (model: WiringModel, circuit: string): string | undefined =>
  model.circuits.find(({ id }) => id === circuit)?.device;
const rcdOf = (model: WiringModel, circuit: string): string | undefined => {
  const rcd = model.devices.find(({ id }) => id === deviceOf(model, circuit))?.rcd;
  return typeof rcd === "object" ? rcd.id : rcd;
};

/** W-01: joined outputs come from the same line conductor of the same circuit. @param model - The wiring. @returns Hits. @source DERIVED-HERE @example Outputs from L1 and L2 joined: short circuit */
export const joinedOutputs = (model: WiringModel): readonly RuleHit[] =>
  switchedGroups(model).flatMap(({ detectors, contactorsFeeding }) => {
    const feeds = [
      ...detectors.map((one) => ({ ...about(one), feed: one.line })),
      ...contactorsFeeding.map(({ id, name, main }) => ({
        name,
        records: [id],
        feed: {
          kind: "line",
          circuit: main.circuit,
          line: model.circuits.find((circuit) => circuit.id === main.circuit)?.lines[0] ?? "L1",
        } as Feed,
      })),
    ];
    const [first, ...others] = feeds;
    if (!first) return [];
    return others.flatMap((other): readonly RuleHit[] => {
      const where = {
        name: say`${first.name} and ${other.name}`,
        records: [...first.records, ...other.records],
      };
      if (first.feed.kind !== "line" || other.feed.kind !== "line")
        return first.feed.kind === "unknown" || other.feed.kind === "unknown"
          ? [{ ...where, verdict: "not-proven", detail: say`the line that feeds them` }]
          : [];
      const device = (feed: { readonly circuit: string }): string =>
        deviceOf(model, feed.circuit) ?? feed.circuit;
      const states = joinedStates(
        { line: first.feed.line, device: device(first.feed) },
        { line: other.feed.line, device: device(other.feed) },
      );
      if (states.some(({ shortCircuit }) => shortCircuit))
        return [
          { ...where, verdict: "fail", detail: say`two lines meet when both are closed, a short circuit` },
        ];
      if (states.some(({ liveFromOther }) => liveFromOther))
        return [
          {
            ...where,
            verdict: "fail",
            detail: say`two protective devices feed one line; it stays live when one is off`,
          },
        ];
      return first.feed.circuit === other.feed.circuit
        ? []
        : [{ ...where, verdict: "fail", detail: say`they are fed by two circuits` }];
    });
  });

/** W-02: neutral of detector and load from the circuit of its line; none is borrowed. @param model - The wiring. @returns Hits. @source BS-7671-NEUTRAL @example Line of circuit 1 with neutral of circuit 2: fails */
export const ownNeutral = (model: WiringModel): readonly RuleHit[] => [
  ...model.detectors.flatMap((one): readonly RuleHit[] => {
    const { line, neutral } = one;
    if (neutral.kind === "unknown" || line.kind === "unknown")
      return [{ ...about(one), verdict: "not-proven", detail: say`the circuit of line and neutral` }];
    if (line.kind !== "line" || neutral.kind !== "neutral") return [];
    return line.circuit === neutral.circuit
      ? []
      : [
          {
            ...about(one),
            verdict: "fail",
            detail:
              rcdOf(model, line.circuit) === rcdOf(model, neutral.circuit)
                ? say`taken from another circuit than the line`
                : say`taken from another circuit than the line behind another RCD`,
          },
        ];
  }),
  ...switchedGroups(model).flatMap(({ detectors, loads, contactorsFeeding }) =>
    loads.flatMap((load): readonly RuleHit[] => {
      const feed = detectors.find(({ line }) => line.kind === "line")?.line;
      const circuit = feed?.kind === "line" ? feed.circuit : contactorsFeeding[0]?.main.circuit;
      return circuit !== undefined && circuit !== load.circuit
        ? [
            {
              name: load.name,
              records: [load.id],
              verdict: "fail",
              detail: say`taken from another circuit than the contact's`,
            },
          ]
        : [];
    }),
  ),
  ...model.circuits.flatMap(({ id, name, sharedNeutral }) =>
    mustBe(sharedNeutral === "yes" ? "no" : sharedNeutral === "no" ? "yes" : "unknown", {
      name,
      records: [id],
      no: say`shared with another circuit`,
      unknown: say`whether the neutral is shared`,
    }),
  ),
];

/** W-03: a contact breaks the line conductor alone, and the one that its luminaires are on. @param model - The wiring. @returns Hits. @source IEC-60364-4-46 @example Contact in the neutral: fails; a luminaire on L2 behind a contact in L1: fails */
export const onlyLinesSwitched = (model: WiringModel): readonly RuleHit[] => [
  ...model.detectors
    .filter(({ output, lowVoltage }) => output !== undefined && !lowVoltage)
    .flatMap((one): readonly RuleHit[] =>
      one.breaks === "line"
        ? []
        : [
            one.breaks === undefined
              ? { ...about(one), verdict: "not-proven", detail: say`which conductor the contact breaks` }
              : {
                  ...about(one),
                  verdict: "fail",
                  detail:
                    one.breaks === "neutral"
                      ? say`the contact breaks the neutral`
                      : say`the contact breaks the protective conductor`,
                },
          ],
    ),
  ...onOtherLines(model),
];

/** Detectors whose one contact would have to break several lines of a three-phase circuit. */
const onOtherLines = (model: WiringModel): readonly RuleHit[] =>
  switchedGroups(model).flatMap(({ detectors, loads }) =>
    detectors.flatMap((one): readonly RuleHit[] => {
      const { line: feed } = one;
      if (feed.kind !== "line") return [];
      const circuit = model.circuits.find(({ id }) => id === feed.circuit);
      if (circuit?.phases !== "three-phase") return [];
      const elsewhere = loads.filter(
        ({ line, circuit: own }) => own === circuit.id && line !== undefined && line !== feed.line,
      );
      const lines = [...new Set(elsewhere.map(({ line }) => line))].toSorted().join(", ");
      return elsewhere.length === 0
        ? []
        : [
            {
              ...about(one),
              records: [one.id, ...elsewhere.map(({ id }) => id)],
              verdict: "fail",
              detail: say`its contact is in ${feed.line}, luminaires behind it are on ${lines}: only a contactor breaks several lines`,
            },
          ];
    }),
  );

/** W-04: permanent line and neutral at every detector, slaves too; a relay pack at those of low voltage. @param model - The wiring. @returns Hits. @source NEC-404 @example Line taken from a switched line: fails */
export const permanentSupply = (model: WiringModel): readonly RuleHit[] =>
  model.detectors.flatMap((one): readonly RuleHit[] => {
    if (one.lowVoltage)
      return model.contactors.some(({ pack, coil }) => pack && coil.switchedLine === one.output)
        ? []
        : [{ ...about(one), verdict: "fail", detail: say`a low-voltage detector without a relay pack` }];
    const wrong = [
      ...(one.line.kind === "line" || one.line.kind === "unknown" ? [] : [lineTerminal[one.line.kind]]),
      ...(one.neutral.kind === "neutral" || one.neutral.kind === "unknown"
        ? []
        : [neutralTerminal[one.neutral.kind]]),
    ];
    if (wrong.length > 0) return wrong.map((detail) => ({ ...about(one), verdict: "fail" as const, detail }));
    return one.line.kind === "unknown" || one.neutral.kind === "unknown"
      ? [{ ...about(one), verdict: "not-proven", detail: say`the circuit of line and neutral` }]
      : [];
  });

const lineTerminal: Readonly<Record<Exclude<Feed["kind"], "line" | "unknown">, Said>> = {
  "switched-line": say`the line terminal is on a switched line`,
  neutral: say`the line terminal is on a neutral`,
  none: say`the line terminal is on nothing`,
};

const neutralTerminal: Readonly<Record<Exclude<Feed["kind"], "neutral" | "unknown">, Said>> = {
  "switched-line": say`the neutral terminal is on a switched line`,
  line: say`the neutral terminal is on a line`,
  none: say`the neutral terminal is on nothing`,
};

const buttonHits = (
  model: WiringModel,
  judge: (button: PushButton, detector: WiredDetector) => readonly Said[],
  open: (button: PushButton, detector: WiredDetector) => readonly Said[],
): readonly RuleHit[] =>
  model.buttons.flatMap((button) =>
    button.detectors.flatMap((id): readonly RuleHit[] => {
      const detector = model.detectors.find((one) => one.id === id);
      if (!detector) return [];
      const where = { name: say`the button of ${detector.tag}`, room: button.room, records: [button.id, id] };
      const wrong = judge(button, detector);
      return [
        ...wrong.map((detail) => ({ ...where, verdict: "fail" as const, detail })),
        ...(wrong.length > 0
          ? []
          : open(button, detector).map((detail) => ({ ...where, verdict: "not-proven" as const, detail }))),
      ];
    }),
  );

/** W-07: a normally open push-button between the input and the same line, or the neutral, as the data sheet says. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example Latching switch: fails */
export const buttonFeed = (model: WiringModel): readonly RuleHit[] =>
  buttonHits(
    model,
    ({ kind, feed }, { line, inputs }) => [
      ...(kind === "latching-switch" ? [say`a switch that latches`] : []),
      ...(inputs && inputs.pushButton === undefined ? [say`the detector takes no button`] : []),
      ...(inputs?.pushButton === "line" && feed.kind === "neutral"
        ? [say`connected to the neutral; the input wants the line`]
        : []),
      ...(inputs?.pushButton === "neutral" && feed.kind === "line"
        ? [say`connected to a line; the input wants the neutral`]
        : []),
      ...(feed.kind === "switched-line" ? [say`fed from a switched line`] : []),
      ...(feed.kind === "none" ? [say`fed from nothing`] : []),
      ...(feed.kind === "line" &&
      line.kind === "line" &&
      (feed.line !== line.line || feed.circuit !== line.circuit)
        ? [say`fed from another line or circuit than the detector`]
        : []),
      ...(feed.kind === "neutral" && line.kind === "line" && feed.circuit !== line.circuit
        ? [say`its neutral comes from another circuit`]
        : []),
    ],
    ({ feed }, { inputs }) => [
      ...(feed.kind === "unknown" ? [say`what feeds the button`] : []),
      ...(inputs === undefined ? [say`what the detector's button input wants`] : []),
    ],
  );

/** W-08: glow lamps of buttons stay below the current that holds the input on. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example Three lamps of 0.8 mA on an input that lets go below 2 mA: fails */
export const glowLamps = (model: WiringModel): readonly RuleHit[] =>
  model.detectors.flatMap((one): readonly RuleHit[] => {
    const lamps = model.buttons.filter(
      ({ detectors, glowLamp }) => detectors.includes(one.id) && glowLamp && glowLamp.ownNeutral !== "yes",
    );
    if (lamps.length === 0) return [];
    const sum = lamps.reduce((all, { glowLamp }) => all + (glowLamp?.current ?? 0), 0);
    const where = { ...about(one), records: [one.id, ...lamps.map(({ id }) => id)] };
    const most = one.inputs?.holdOff;
    if (most === undefined)
      return [
        { ...where, verdict: "not-proven", detail: say`the current at which the button input lets go` },
      ];
    return sum <= most
      ? []
      : [
          {
            ...where,
            verdict: "fail",
            detail:
              lamps.length === 1
                ? say`a glow lamp holds the button input on`
                : say`${lamps.length} glow lamps hold the button input on`,
          },
        ];
  });

/** W-17: no detector in series with another or with a dimmer unless both data sheets allow it. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example In series, not declared: fails */
export const inSeries = (model: WiringModel): readonly RuleHit[] =>
  model.detectors.flatMap((one) =>
    one.inSeries
      ? mustBe(one.inSeries.declared, {
          ...about(one),
          ...seriesWords[one.inSeries.with],
        })
      : [],
  );

const seriesWords: Readonly<
  Record<NonNullable<WiredDetector["inSeries"]>["with"], { readonly no: Said; readonly unknown: Said }>
> = {
  detector: {
    no: say`in series with a detector`,
    unknown: say`whether they may be in series with a detector`,
  },
  dimmer: {
    no: say`in series with a dimmer`,
    unknown: say`whether they may be in series with a dimmer`,
  },
};
