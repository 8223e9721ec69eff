import * as z from "zod";
import { fixings, loadKinds } from "./model.ts";
import { id, kept, length, point, share, words } from "./values.ts";

/** How far something is known: nothing is guessed, and what is not known stays so until somebody looked. */
const known = z.enum(["yes", "no", "unknown"]);
/** Where a reading comes from. */
const origin = z.enum(["measured", "assumed", "to-be-measured"]);
const positive = z.number().positive().max(1_000_000);

export const supplySystems = ["TN-S", "TN-C-S", "TN-C", "TT", "IT", "unknown"] as const;
export const lines = ["L1", "L2", "L3"] as const;
export const breakerTypes = ["B", "C", "D", "fuse-gG", "unknown"] as const;

/** A distribution board as found: what the circuits behind it start from. */
export const board = kept({
  id,
  name: words.default(""),
  storey: id.optional(),
  at: point.optional(),
  system: z.enum(supplySystems).default("unknown"),
  /** Line to neutral. [V] */
  voltage: positive.optional(),
  /** Impedance of the fault loop at the board. [Ω] */
  loopImpedance: positive.optional(),
  /** Prospective fault current at the board. [A] */
  faultCurrent: positive.optional(),
  /** Voltage drop already used up to the board, as a share of the nominal voltage. */
  dropUsed: z.number().min(0).max(1).optional(),
  /** Resistance of the earth electrode with its conductor, TT. [Ω] */
  earthResistance: positive.optional(),
  /** Whether its isolator breaks the neutral as well. */
  isolatesNeutral: known.optional(),
  /** public: from the low-voltage network · private: from a transformer of one's own. */
  network: z.enum(["public", "private"]).optional(),
  readings: origin.default("to-be-measured"),
});

const amount = z.number().min(0).max(1_000_000);

/** The cable of a circuit, one kind from the board to its last luminaire. */
const cable = kept({
  /** Of the line conductors, and of the protective one where it differs. [mm²] */
  section: positive.optional(),
  /** American wire gauge of a copper cable, instead of a section. */
  gauge: z.literal([18, 16, 14, 12, 10, 8, 6]).optional(),
  form: z.enum(["solid", "stranded"]).optional(),
  protective: positive.optional(),
  protectiveGauge: z.literal([18, 16, 14, 12, 10, 8, 6]).optional(),
  cores: z.number().int().min(1).max(100).optional(),
  material: z.enum(["copper", "aluminium"]).optional(),
  insulation: z.enum(["PVC", "XLPE"]).optional(),
  /** A1, A2: in conduit in an insulated wall · B1, B2: in conduit on a wall · C: clipped direct. */
  method: z.enum(["A1", "A2", "B1", "B2", "C"]).optional(),
  /** Air around it. [°C] */
  ambient: z.number().min(-60).max(150).optional(),
  /** Loaded circuits side by side, itself included. */
  grouping: kept({
    arrangement: z.enum(["bunched", "layer-on-wall", "layer-under-ceiling", "perforated-tray", "ladder"]),
    circuits: z.number().int().min(1).max(1000),
  }).optional(),
  /** From the board to the last luminaire, as it lies. [m] */
  length: length.optional(),
  /** Of it inside thermal insulation. [m] */
  inInsulation: length.optional(),
  /** Less than 50 mm deep in a wall without earthed cover. */
  concealed: known.optional(),
  withSignals: z.enum(["none", "insulated-for-highest", "separated", "not-separated", "unknown"]).optional(),
});

/** A contactor: the outputs of detectors hold its coil, its main contacts feed luminaires from this circuit. */
const contactor = kept({
  id,
  name: words.default(""),
  /** relay-pack: feeds low-voltage detectors, whose signal holds it; a contactor if absent. */
  kind: z.enum(["contactor", "relay-pack"]).optional(),
  /** What a relay pack gives to its detectors [A], and whether their wires keep apart from the mains. */
  supplies: positive.optional(),
  apart: known.optional(),
  /** Detectors whose outputs feed the coil. */
  detectors: z.array(id).max(1000).default([]),
  /** Luminaires behind its main contacts; those that its detectors would switch if absent. */
  luminaires: z.array(id).max(10_000).optional(),
  /** Of its main contacts for this kind of load. [A] */
  rated: positive.optional(),
  /** Largest inrush peak that its main contacts make [A], and the longest pulse for which it is declared [s]. */
  makingPeak: positive.optional(),
  makingWidth: positive.optional(),
  /** Most drivers on its main contacts. */
  drivers: z.number().int().positive().max(100_000).optional(),
  /** Largest protective device before its main contacts. [A] */
  backUp: positive.optional(),
  coilCurrent: positive.optional(),
  /** While the coil closes [A], and the least share of the nominal voltage at which it surely closes, by its data sheet. */
  coilPullIn: positive.optional(),
  coilLeast: z.number().positive().max(1).optional(),
  /** Cable to the coil from the nearest detector that holds it: as it lies [m], along the plan if absent; section [mm²], that of the circuit if absent. */
  coilLength: length.optional(),
  coilSection: positive.optional(),
  /** It stands in the board of its circuit. */
  inBoard: known.optional(),
  /** Somebody calculated the cable to its coil, and it holds. */
  coilCable: known.optional(),
  /** Across the coil. */
  suppressor: known.default("unknown"),
  /** Where coil and main contacts have two supplies. */
  labelled: known.default("unknown"),
  isolatesAllPoles: known.default("unknown"),
});

/** A lighting circuit as found, or as planned. */
export const circuit = kept({
  id,
  board: id.optional(),
  name: words.default(""),
  breaker: z.enum(breakerTypes).default("unknown"),
  /** Rated current of the protective device. [A] */
  rating: positive.optional(),
  /** Rated residual current of the RCD; absent where there is none or nobody looked, see `rcd`. [A] */
  residualCurrent: positive.optional(),
  rcd: known.default("unknown"),
  protectiveConductor: known.default("unknown"),
  neutralAtSwitch: known.default("unknown"),
  twoWay: known.default("unknown"),
  sharedNeutral: known.default("unknown"),
  oldColours: known.default("unknown"),
  driversKnown: known.default("unknown"),
  /** Rated breaking capacity of the protective device. [A] */
  breakingCapacity: positive.optional(),
  /** What the protective device lets through at the fault current of the board. [A²s] */
  letThrough: positive.optional(),
  /** Points of the breaker's curve below 10 ms: width [s], factor on its magnetic limit. */
  pulseCurve: z
    .array(z.tuple([positive, positive]))
    .max(100)
    .optional(),
  poles: z.enum(["one", "one-and-neutral", "three", "three-and-neutral"]).optional(),
  phases: z.enum(["single-phase", "three-phase"]).optional(),
  /** Line conductor of a single-phase circuit. */
  line: z.enum(lines).optional(),
  /** People can switch it off and lock it. */
  isolator: known.optional(),
  /** What the RCD is called, so that circuits behind the same one are known. */
  rcdName: words.optional(),
  /** Share of the line current that is third harmonic. */
  thirdHarmonic: share.optional(),
  cable: cable.optional(),
  /** Places that its cable passes on its way from the board to the first device, in order. */
  via: z.array(point).max(1000).optional(),
  /** Places that its cable passes between two devices, in order; what lies before the first device is `via`. */
  pinned: z
    .array(kept({ from: id, to: id, via: z.array(point).max(1000) }))
    .max(1000)
    .optional(),
  contactors: z.array(contactor).max(100).optional(),
  /** Where its breaker and its cable come from; "assumed" until somebody looked. */
  readings: origin.optional(),
  remark: words.default(""),
});

/** What the wiring has to know of a luminaire, each figure of one of them, or of one driver. */
export const luminaireWiring = {
  /** What it is to a contact; anything with an electronic driver is "led". */
  load: z.enum(loadKinds).optional(),
  powerFactor: z.number().positive().max(1).optional(),
  /** Of one driver: peak [A], width at half of it [s], Joule integral [A²s]. */
  inrush: kept({ peak: positive, width: positive, integral: positive.optional() }).optional(),
  /** Of one driver. [F] */
  inputCapacitance: amount.optional(),
  /** How many of its drivers the maker of the driver declares for one breaker. */
  driversPerBreaker: z
    .array(
      kept({
        type: z.enum(["B", "C", "D"]),
        rating: positive,
        count: z.number().int().positive().max(100_000),
      }),
    )
    .max(100)
    .optional(),
  /** Current in its protective conductor. [A] */
  leakage: amount.optional(),
  protectionClass: z.enum(["I", "II", "III"]).optional(),
  /** Line conductor of a three-phase circuit that feeds it. */
  line: z.enum(lines).optional(),
  /** Escape lighting: where its unswitched line is taken, and the circuit whose failure it senses. */
  emergency: kept({
    taken: z.enum(["before-contact", "after-contact", "unknown"]),
    senses: words,
  }).optional(),
} as const;

/** What becomes of a switch on the wall once detectors switch. */
export const switchWiring = {
  /** parallel: it stays beside the contact · button: it speaks to detectors only · removed. */
  planned: z.enum(["parallel", "button", "removed"]).optional(),
  /** Detectors that it speaks to. */
  detectors: z.array(id).max(1000).optional(),
  /** Lamp in it: current [A], and whether the lamp has a neutral of its own. */
  glowLamp: kept({ current: positive, ownNeutral: known.default("unknown") }).optional(),
} as const;

/** How a detector is wired where it is not as its rooms and luminaires suggest. */
export const detectorWiring = {
  /** Name of the circuit that feeds it. */
  circuit: words.optional(),
  /** Luminaires that its contact switches; those of its rooms on one circuit if absent. */
  luminaires: z.array(id).max(10_000).optional(),
  /** signals: its contact is not used, it only speaks to another detector. */
  output: z.enum(["switches", "signals"]).optional(),
  /** Capacitors of suppressors at its output [F]: across its contact, or across the load. */
  suppressors: z
    .array(kept({ across: z.enum(["contact", "load"]), capacitance: positive }))
    .max(20)
    .optional(),
  /** A base load hangs beside the luminaires, so that leakage does not make them glow. */
  baseLoad: known.optional(),
  /** A switch that it cannot overrule keeps its light on, as plant rooms need. */
  override: known.optional(),
  /** How this one is fixed, where its data sheet allows several ways. */
  fixing: z.enum(fixings).optional(),
  /** Recessed in a fire-rated ceiling: whether in a cover that was tested with it. */
  testedCover: known.optional(),
  /** Zone of a bath or shower that it hangs in, where somebody measured. */
  wetZone: z.enum(["0", "1", "2", "outside"]).optional(),
} as const;

/** What one asks on the telephone, and what must be known of the house before somebody drills. */
export const visit = kept({
  yearBuilt: z.number().int().min(1000).max(3000).optional(),
  complaint: z.string().max(20_000).optional(),
  contact: words.optional(),
  access: words.optional(),
  /** Register of asbestos seen: until "none" or "seen", setting-out sheets carry a warning. */
  asbestosRegister: z.enum(["none", "seen", "not-seen"]).optional(),
  asbestosRemark: words.optional(),
});
