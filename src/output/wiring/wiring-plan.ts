import {
  type BuiltWiring,
  type DerivedWiring,
  deriveWiring,
  type FoundInstallation,
  joined,
  type Load,
  roomTitle,
  type Site,
  type SwitchedLine,
  say,
  supplyOfCircuit,
  type WiredDetector,
} from "#engine";
import { derivedCables, derivedRuns, type OnOwnCircuit } from "./derived-cables.ts";
import { type Designations, designations } from "./designations.ts";
import { type CableRun, placesOf } from "./group-cables.ts";
import { coilRuns, groupRuns } from "./group-runs.ts";
import { loadGroups } from "./load-groups.ts";
import type { GroupFeed, GroupPlan, PlannedButton, PlannedCable, WiringPlan } from "./plan.ts";
import { terminalsOf } from "./terminals.ts";

/** What hangs on a switched line, before it is drawn. */
interface Members {
  readonly line: SwitchedLine;
  readonly detectors: readonly WiredDetector[];
  readonly loads: readonly Load[];
  readonly emergency: readonly Load[];
}

/** What the papers of the wiring show: one group for each switched line, with its cables named; their ways and lengths are the engine's wherever it derives them. */
export function wiringPlan(
  site: Site,
  found: FoundInstallation,
  whole: BuiltWiring,
  known: {
    readonly derived?: DerivedWiring | undefined;
    /** Detectors whose level is set by a pair of conductors beside the switched line. */
    readonly paired?: ReadonlySet<string> | undefined;
  } = {},
): WiringPlan {
  const { derived = deriveWiring(site, found), paired = new Set<string>() } = known;
  const built = withShortNames(found, whole);
  const { model } = built;
  const names = designations(site, found, model);
  const signallers = groupOfSignallers(site, built);
  const members = model.switchedLines.map((line) => membersOf(built, line, signallers));
  const places = placesOf(site, found);
  const routed = derivedCables(derived, model, members.map(onOwnCircuit));
  const wiredButtons = new Set<string>();
  let named = 0;
  const groups = members.map((own, index): GroupPlan => {
    const feed = feedOf(found, built, names, own);
    const foreign = (circuit: string): string | undefined =>
      feed === undefined || circuit === feed.circuit.id
        ? undefined
        : (model.circuits.find(({ id }) => id === circuit)?.device ?? circuit);
    const buttons = buttonsOf(site, built, { names, feed, foreign }, own);
    const isForeign = ({ line }: WiredDetector): boolean =>
      line.kind === "line" && foreign(line.circuit) !== undefined;
    const isOwn = ({ circuit }: Load): boolean => foreign(circuit) === undefined;
    const before = members
      .slice(0, index)
      .findLast((one) => one.detectors[0] && circuitOf(one) === feed?.circuit.id);
    // A button that speaks to two groups has one cable.
    const unwired = buttons.filter(
      ({ button, foreign: other }) => !wiredButtons.has(button.id) && other === undefined,
    );
    const cables = routed.get(own.line.id);
    const mains = model.contactors.filter(({ main }) => main.switchedLine === own.line.id);
    const coils = model.contactors.filter(({ coil }) => coil.switchedLine === own.line.id);
    const pack = own.detectors.some(({ lowVoltage }) => lowVoltage)
      ? coils.find((one) => one.pack)
      : undefined;
    const control = own.detectors.some(({ id, output }) => output !== undefined && paired.has(id))
      ? "pair"
      : "none";
    const laid: readonly CableRun[] =
      cables && feed
        ? derivedRuns(cables, { feed, buttons: unwired, control })
        : groupRuns({
            places,
            feed,
            source: before?.detectors[0]?.id ?? feed?.board?.id,
            // What is on another circuit gets no cable from this one.
            detectors: own.detectors.filter((one) => !isForeign(one)),
            loads: own.loads.filter(isOwn).map(({ id }) => id),
            emergency: own.emergency.filter(isOwn).map(({ id }) => id),
            buttons: unwired,
            control,
            mains,
            pack,
          });
    const runs = [...laid, ...coilRuns({ feed, detectors: own.detectors, coils })];
    for (const { button } of buttons) wiredButtons.add(button.id);
    return {
      line: own.line,
      name:
        own.detectors.map(({ tag }) => tag).join(" + ") ||
        (mains.length > 0
          ? joined(
              mains.map(({ id }) => names.of(id)),
              " + ",
            )
          : own.line.name),
      feed,
      supply: feed ? supplyOfCircuit(model, feed.circuit.id) : model.supply,
      detectors: own.detectors.map((wired) => {
        const detector = site.detectors.find(({ id }) => id === wired.id);
        const sheet = site.models.find(({ id }) => id === detector?.model);
        return {
          wired,
          detector,
          model: sheet,
          room: titleOf(site, wired.room),
          foreign: wired.line.kind === "line" ? foreign(wired.line.circuit) : undefined,
          terminals: terminalsOf(wired, sheet, {
            buttons: buttons.some(({ button }) => button.detectors.includes(wired.id)) ? "some" : "none",
            slaves: own.detectors.some(({ role }) => role === "slave") ? "some" : "none",
            control,
          }),
        };
      }),
      buttons,
      coils,
      mains,
      pack,
      control,
      loads: loadGroups(site, own.loads, { names, foreign }),
      emergency: loadGroups(site, own.emergency, { names, foreign }),
      cables: runs.map((run) => ({
        ...run,
        designation: `W${++named}`,
        size:
          run.section === undefined
            ? pack
              ? undefined
              : sizeOf(feed, derived)
            : { text: `${run.section} mm²`, from: "entered" as const },
      })),
    };
  });
  const drawn = new Set(members.flatMap(({ detectors }) => detectors.map(({ id }) => id)));
  // What a route takes for granted matters where one was drawn.
  const drawnCircuits = new Set(
    groups.flatMap(({ line, feed }) => (feed && routed.has(line.id) ? [feed.circuit.id] : [])),
  );
  const taken = derived.assumptions
    .map(({ text, records }) => ({ text, records: records.filter((id) => drawnCircuits.has(id)) }))
    .filter(({ records }) => records.length > 0);
  return {
    built: { ...built, assumptions: [...built.assumptions, ...taken] },
    names,
    groups,
    leftOut: model.detectors.filter(({ id }) => !drawn.has(id)).map(({ tag }) => tag),
  };
}

/** Circuits by the name that somebody entered, where it is the only one: the board stands on the sheet anyway. */
function withShortNames(found: FoundInstallation, built: BuiltWiring): BuiltWiring {
  const entered = new Map(found.circuits.map(({ id, name }) => [id, name.trim()]));
  const all = [...entered.values()];
  const circuits = built.model.circuits.map((circuit) => {
    const name = entered.get(circuit.id) ?? "";
    return name !== "" && all.filter((one) => one === name).length === 1 ? { ...circuit, name } : circuit;
  });
  return { ...built, model: { ...built.model, circuits } };
}

const titleOf = (site: Site, room: string): string => roomTitle(site.rooms.find(({ id }) => id === room));

function membersOf(
  { model }: BuiltWiring,
  line: SwitchedLine,
  signallers: ReadonlyMap<string, string>,
): Members {
  const loads = model.loads.filter((load) => load.switchedLine === line.id);
  const rooms = new Set(loads.map(({ room }) => room));
  return {
    line,
    detectors: [
      ...model.detectors.filter(({ output }) => output === line.id),
      ...model.detectors.filter(({ id }) => signallers.get(id) === line.id),
    ],
    loads,
    emergency: model.loads.filter(
      ({ switchedLine, emergency, room }) =>
        switchedLine === undefined && emergency !== undefined && rooms.has(room),
    ),
  };
}

/** The switched line of each detector that only signals: that of its named group first, otherwise that of a room which both serve. */
function groupOfSignallers(site: Site, { model }: BuiltWiring): ReadonlyMap<string, string> {
  const records = new Map(site.detectors.map((one) => [one.id, one]));
  const switching = model.detectors.filter(({ output }) => output !== undefined);
  return new Map(
    model.detectors.flatMap((wired): readonly (readonly [string, string])[] => {
      const own = records.get(wired.id);
      if (wired.output !== undefined || wired.role !== "slave" || own === undefined) return [];
      const named = switching.filter(
        ({ id }) => own.group.trim() !== "" && records.get(id)?.group === own.group,
      );
      const near = switching.filter(({ id }) =>
        records.get(id)?.controls.some((room) => own.controls.includes(room)),
      );
      const lines = new Set((named.length > 0 ? named : near).map(({ output }) => output));
      // Two lines it could belong to: nobody chooses for it.
      const [line] = lines;
      return lines.size === 1 && line !== undefined ? [[wired.id, line]] : [];
    }),
  );
}

/** What of a group is on the circuit that feeds it. */
function onOwnCircuit(own: Members): OnOwnCircuit {
  const circuit = circuitOf(own);
  const here = (loads: readonly Load[]): readonly string[] =>
    loads.filter((load) => load.circuit === circuit).map(({ id }) => id);
  return {
    line: own.line.id,
    circuit,
    detectors: own.detectors
      .filter(({ line }) => line.kind !== "line" || line.circuit === circuit)
      .map(({ id }) => id),
    loads: here(own.loads),
    emergency: here(own.emergency),
    signals: own.detectors.some(({ role }) => role === "slave") ? "some" : "none",
  };
}

const circuitOf = ({ detectors, loads }: Members): string | undefined => {
  const line = detectors[0]?.line;
  return line?.kind === "line" ? line.circuit : loads[0]?.circuit;
};

function feedOf(
  found: FoundInstallation,
  { model }: BuiltWiring,
  names: Designations,
  members: Members,
): GroupFeed | undefined {
  const id = circuitOf(members);
  const circuit = model.circuits.find((one) => one.id === id);
  if (circuit === undefined) return undefined;
  const entered = found.circuits.find((one) => one.id === id);
  const board = found.boards.find((one) => one.id === entered?.board);
  const line = members.detectors[0]?.line;
  return {
    circuit,
    found: entered,
    device: model.devices.find((one) => one.id === circuit.device),
    line: line?.kind === "line" ? line.line : (circuit.lines[0] ?? "L1"),
    lines:
      circuit.phases === "three-phase"
        ? circuit.lines
        : [line?.kind === "line" ? line.line : (circuit.lines[0] ?? "L1")],
    board: board && {
      id: board.id,
      designation: names.of(board.id),
      name: board.name.trim() || say`distribution board`,
    },
  };
}

function sizeOf(feed: GroupFeed | undefined, { circuits }: DerivedWiring): PlannedCable["size"] {
  const { gauge, section } = feed?.found?.cable ?? {};
  if (gauge !== undefined) return { text: `${gauge} AWG`, from: "entered" };
  if (section !== undefined) return { text: `${section} mm²`, from: "entered" };
  const derived = circuits.find(({ id }) => id === feed?.circuit.id)?.section;
  // A section with which nothing fails, and not everything passes, is no answer to print.
  return derived?.section !== undefined && derived.standing === "proven"
    ? { text: `${derived.section} mm²`, from: "calculated" }
    : undefined;
}

function buttonsOf(
  site: Site,
  { model }: BuiltWiring,
  about: {
    readonly names: Designations;
    readonly feed: GroupFeed | undefined;
    readonly foreign: (circuit: string) => string | undefined;
  },
  { detectors }: Members,
): readonly PlannedButton[] {
  return model.buttons
    .filter((button) => detectors.some(({ id }) => button.detectors.includes(id)))
    .map((button) => {
      const spoken = detectors.find(({ id }) => button.detectors.includes(id));
      // The data sheet says what the button connects; which line, its circuit says.
      const from =
        spoken?.inputs?.pushButton === "neutral"
          ? "neutral"
          : spoken?.inputs?.pushButton === "line" && button.feed.kind === "line"
            ? button.feed.line
            : "unknown";
      const { feed } = button;
      return {
        button,
        designation: about.names.of(button.id),
        room: titleOf(site, button.room),
        from,
        foreign:
          feed.kind !== "line"
            ? undefined
            : (about.foreign(feed.circuit) ??
              (about.feed && feed.line !== about.feed.line ? about.feed.circuit.device : undefined)),
      };
    });
}
