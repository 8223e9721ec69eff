import type { Finding, Point } from "#engine";
import type { RecordKind, RecordRef } from "../contract.ts";
import { cornersOf, picturesOf } from "../jobs/underlay-pictures.ts";
import { moveSteps, turnSteps } from "../plan/change.ts";
import { placeOf, recordOf, roomsOn, sameRef } from "../plan/pick.ts";
import { rest, type Tool } from "../plan/tools/state.ts";
import { type Bounds, boundsOf, fitted, type Insets, toPixel, type View, zoomed } from "../plan/view.ts";
import { type EditActions, editActionsOn } from "./edit-actions.ts";
import type { Store, Workbench } from "./workbench.ts";

/** Things that one may do to the selection and the view, from keys, cards and menus alike. */
export interface Actions extends EditActions {
  readonly select: (refs: readonly RecordRef[]) => void;
  readonly nudge: (by: Point) => void;
  readonly turn: (by: number) => void;
  /** Selects all things of the storey. */
  readonly selectAll: () => void;
  readonly take: (tool: Tool) => void;
  readonly letGo: () => void;
  readonly showAll: () => void;
  readonly zoom: (factor: number) => void;
  readonly pan: (right: number, down: number) => void;
  readonly goTo: (storey: string) => void;
  /** Selects the next (1) or the one before (-1) of the things on the storey. */
  readonly walk: (way: 1 | -1) => void;
  readonly showFinding: (index: number, findings: readonly Finding[]) => void;
  /** Shows a finding of the wiring, and opens what it is about: its circuit, else the first thing that it names. */
  readonly openFinding: (index: number, findings: readonly Finding[]) => void;
  /** Brings a place into view, zooming in where it would be too small. */
  readonly lookAt: (place: Point) => void;
}

export function actionsOn(store: Store<Workbench>, insets: () => Insets): Actions {
  const view = (next: View): void => store.set({ view: next });
  const steps = (name: string, make: (bench: Workbench) => ReturnType<typeof moveSteps>): void => {
    const bench = store.get();
    if (bench.job.readOnly) return;
    const made = make(bench);
    if (made.length > 0) bench.job.edit(name, made);
  };
  const select = (refs: readonly RecordRef[]): void =>
    store.set({ selection: refs, panel: { kind: "thing" }, notice: undefined });
  const goTo = (storey: string): void => {
    if (store.get().storey === storey) return;
    store.set({ storey, selection: [], toolState: rest, finding: undefined });
    showAll();
  };
  const lookAt = (place: Point): void => {
    const { view: now } = store.get();
    const scale = Math.max(now.scale, 36);
    const edges = insets();
    const middle = {
      px: edges.left + (now.width - edges.left - edges.right) / 2,
      py: edges.top + (now.height - edges.top - edges.bottom) / 2,
    };
    view({
      ...now,
      scale,
      x: place[0] - (middle.px - now.width / 2) / scale,
      y: place[1] + (middle.py - now.height / 2) / scale,
    });
  };
  const showAll = (): void => {
    const { job, storey, view: now } = store.get();
    if (now.width === 0) return;
    view(fitted(now, storeyBounds(job, storey), insets()));
  };
  const showFinding = (index: number, findings: readonly Finding[]): void => {
    const finding = findings[index];
    if (!finding) return;
    const { job } = store.get();
    const all = finding.records.flatMap((id) => refOf(job.site, id) ?? []);
    const room = finding.room === undefined ? undefined : recordOf(job.site, "rooms", finding.room);
    if (room && room.storey !== store.get().storey) goTo(room.storey);
    // What it speaks of on other storeys is not on show.
    const here = new Set(thingsOn(job.site, store.get().storey).map(({ id }) => id));
    const refs = all.some(({ id }) => here.has(id)) ? all.filter(({ id }) => here.has(id)) : all;
    store.set({
      finding: index,
      circuit: circuitIn(store.get(), finding),
      selection: refs.length > 0 ? refs : room ? [{ kind: "rooms", id: room.id }] : [],
    });
    const place = finding.at ?? (refs[0] && placeOf(job.site, refs[0]));
    if (place && !isInView(store.get().view, place, insets())) lookAt(place);
  };
  return {
    select,
    nudge: (by) => steps("plan.edit.nudge", ({ job, selection }) => moveSteps(job.site, selection, by)),
    turn: (by) => steps("plan.edit.turn", ({ job, selection }) => turnSteps(job.site, selection, by)),
    ...editActionsOn(store, { select, goTo }),
    selectAll: () => {
      const { job, storey } = store.get();
      select(thingsOn(job.site, storey));
    },
    take: (tool) => store.set({ tool, toolState: rest }),
    letGo: () => {
      const { tool, toolState, selection, panel, pointing } = store.get();
      if (pointing) return store.set({ pointing: undefined });
      if (toolState.on !== "rest") store.set({ toolState: rest });
      else if (tool.kind !== "select") store.set({ tool: { kind: "select" } });
      else if (selection.length > 0 || panel.kind !== "thing")
        store.set({ selection: [], panel: { kind: "thing" } });
    },
    showAll,
    zoom: (factor) => {
      const { view: now } = store.get();
      view(zoomed(now, { px: now.width / 2, py: now.height / 2 }, factor));
    },
    pan: (right, down) => {
      const { view: now } = store.get();
      view({ ...now, x: now.x - right / now.scale, y: now.y + down / now.scale });
    },
    goTo,
    walk: (way) => {
      const { job, storey, selection } = store.get();
      const all = thingsOn(job.site, storey);
      if (all.length === 0) return;
      const at = all.findIndex((ref) => sameRef(ref, selection[0]));
      const next = all[(at + way + all.length) % all.length] ?? all[0];
      if (!next) return;
      select([next]);
      const place = placeOf(job.site, next);
      if (place && !isInView(store.get().view, place, insets())) lookAt(place);
    },
    showFinding,
    openFinding: (index, findings) => {
      showFinding(index, findings);
      const { wiring } = store.get();
      const ofCircuit = findings[index]?.records.some((id) => wiring?.circuits.has(id));
      store.set({ panel: { kind: "thing" }, ...(ofCircuit ? { selection: [] } : {}) });
    },
    lookAt,
  };
}

/** The circuit that a finding of the wiring is about: named in it, or that of the first thing it names. */
function circuitIn({ wiring, circuit, stage }: Workbench, { records }: Finding): string | undefined {
  if (!wiring || stage !== "wire") return circuit;
  const all = [...wiring.circuits];
  const named = records.find((id) => wiring.circuits.has(id));
  return (
    named ??
    records
      .map((id) => all.find(([, on]) => on.luminaires.includes(id) || on.detectors.includes(id))?.[0])
      .find((id) => id !== undefined)
  );
}

const isInView = (view: View, place: Point, insets: Insets): boolean => {
  const { px, py } = toPixel(view, place);
  return (
    view.scale > 14 &&
    px > insets.left + 24 &&
    px < view.width - insets.right - 24 &&
    py > insets.top + 40 &&
    py < view.height - insets.bottom - 24
  );
};

/** Kinds of things in the order in which the keyboard walks them. */
const walked = [
  "detectors",
  "rooms",
  "openings",
  "obstacles",
  "floorPieces",
  "dwellPlaces",
  "interference",
  "luminaires",
  "switches",
  "ceilingThings",
] as const satisfies readonly RecordKind[];

/** All things on a storey: detectors by tag, the rest room by room. */
export function thingsOn(site: Workbench["job"]["site"], storey: string): RecordRef[] {
  const rooms = roomsOn(site, storey);
  return walked.flatMap((kind) =>
    (site[kind] as readonly { readonly id: string }[]).flatMap((record): RecordRef[] => {
      const here =
        kind === "rooms"
          ? rooms.has(record.id)
          : kind === "openings"
            ? (record as unknown as { rooms: readonly (string | null)[] }).rooms.some(
                (id) => id !== null && rooms.has(id),
              )
            : rooms.has((record as unknown as { room: string }).room);
      return here ? [{ kind, id: record.id }] : [];
    }),
  );
}

function refOf(site: Workbench["job"]["site"], id: string): RecordRef | undefined {
  const kind = walked.find((one) =>
    (site[one] as readonly { readonly id: string }[]).some((record) => record.id === id),
  );
  return kind && { kind, id };
}

const endsOf = (lines: Float64Array): Point[] =>
  Array.from({ length: lines.length / 2 }, (_, end) => [lines[2 * end]!, lines[2 * end + 1]!]);

/** Bounds of a storey's rooms, and of the lines to draw them over, with a margin for walls and swings outside. */
export function storeyBounds({ site, underlays, kept }: Workbench["job"], storey: string): Bounds {
  const bounds = boundsOf([
    ...[...roomsOn(site, storey).values()].flatMap((room) => room.outline),
    ...underlays.filter((one) => one.storey === storey).flatMap(({ lines }) => endsOf(lines)),
    ...picturesOf(kept.underlays, storey).flatMap(cornersOf),
  ]) ?? {
    left: 0,
    right: 12,
    bottom: 0,
    top: 8,
  };
  const margin = 0.8;
  return {
    left: bounds.left - margin,
    right: bounds.right + margin,
    bottom: bounds.bottom - margin,
    top: bounds.top + margin,
  };
}
