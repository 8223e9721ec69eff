import { type Luminaire, type Metres, type Problem, say } from "#engine";
import type { Identities } from "../identities.ts";
import { inPiece } from "../region.ts";
import { tidy } from "../tidy.ts";
import type { ElementMesh } from "./kernel.ts";
import type { LeftOutList } from "./left-out.ts";
import { type IfcModel, refOf, textOf } from "./model.ts";
import type { Frames } from "./placement.ts";
import { type PlanBox, planBox } from "./plan-box.ts";
import { type Relations, storeyOf } from "./relations.ts";
import type { ReadRoom } from "./rooms.ts";
import { type ReadStorey, storeyAt } from "./storeys.ts";
import { isHotLamp, isSwitch } from "./thing-kinds.ts";
import { namesOf } from "./things.ts";

export interface LuminaireContext {
  readonly model: IfcModel;
  readonly relations: Relations;
  readonly frames: Frames;
  readonly storeys: readonly ReadStorey[];
  readonly rooms: readonly ReadRoom[];
  readonly identities: Identities;
  readonly leftOut: LeftOutList;
  readonly notes: Problem[];
}

/** Luminaires in rooms, and those that hang where the file has no room. */
export interface ReadLuminaires {
  readonly placed: readonly Luminaire[];
  readonly loose: readonly { readonly storey: string; readonly luminaire: Luminaire }[];
}

/**
 * Instance names of the luminaires, both ways of the standard: IfcLightFixture (IFC4), and IfcFlowTerminal whose type is
 * an IfcLightFixtureType (IFC 2x3). Switches and sockets that were given a luminaire's type are left out by their names.
 */
export function luminairesOf(model: IfcModel, relations: Relations, leftOut: LeftOutList): readonly number[] {
  const typed = [
    ...model.ids("IFCLIGHTFIXTURE"),
    ...model
      .ids("IFCFLOWTERMINAL")
      .filter((id) => model.type(relations.typeOf.get(id) ?? -1) === "IFCLIGHTFIXTURETYPE"),
  ];
  return typed.filter((id) => {
    if (!isSwitch(namesOf(model, relations, id))) return true;
    leftOut.add(say`switch or socket`, say`the model calls it a luminaire, its name does not`);
    return false;
  });
}

/** Luminaires with their undersides above the floor they hang over. Plan coordinates are still the file's own. */
export function readLuminaires(
  ids: readonly number[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: LuminaireContext,
): ReadLuminaires {
  const placed: Luminaire[] = [];
  const loose: { storey: string; luminaire: Luminaire }[] = [];
  for (const id of ids) {
    const mesh = meshes.get(id);
    const box = (mesh && planBox(mesh)) ?? pointBox(id, context);
    if (!box) {
      context.leftOut.add(say`luminaire`, say`a corner is not a finite number`);
      continue;
    }
    const room = context.rooms.find(
      (each) =>
        inPiece(box.centre, each.piece) &&
        box.high > each.level &&
        box.low < each.level + each.room.ceilingHeight + 0.3,
    );
    if (room) placed.push(luminaire(id, box, { context, room, level: room.level }));
    else {
      const own = storeyOf(context.model, context.relations, id);
      const storey = context.storeys.find((each) => each.step === own) ?? storeyAt(context.storeys, box.low);
      loose.push({
        storey: storey.storey.id,
        luminaire: luminaire(id, box, { context, room: undefined, level: storey.level }),
      });
    }
  }
  return { placed, loose };
}

/** A luminaire without a body still has a place. */
const pointBox = (id: number, context: LuminaireContext): PlanBox | undefined => {
  const placement = refOf(context.model.values(id)[5]);
  if (placement === undefined) return undefined;
  const [x, y, z] = context.frames.of(placement).origin;
  return Number.isFinite(x + y + z)
    ? { centre: [x, y], along: [1, 0], length: 0, width: 0, low: z, high: z }
    : undefined;
};

const luminaire = (
  id: number,
  box: PlanBox,
  more: { context: LuminaireContext; room: ReadRoom | undefined; level: Metres },
): Luminaire => {
  const { context, room, level } = more;
  const names = namesOf(context.model, context.relations, id);
  const ceiling = room ? room.level + room.room.ceilingHeight : undefined;
  const turn = Math.atan2(box.along[1], box.along[0]);
  return {
    id: context.identities.take(textOf(context.model.values(id)[0]), `luminaire-${id}`, names),
    room: room?.room.id ?? "",
    name: textOf(context.model.values(id)[2]) || names || "Luminaire",
    at: [tidy(box.centre[0]), tidy(box.centre[1])],
    height: tidy(Math.max(0, Math.min(box.low - level, room?.room.ceilingHeight ?? Infinity))),
    mounting: ceiling === undefined ? "surface" : mountingOf(box, ceiling),
    hot: isHotLamp(names),
    length: tidy(box.length),
    width: tidy(box.width),
    turn: tidy(turn < 0 ? turn + Math.PI : turn),
  };
};

/** Flush: its underside is in the plane of the ceiling; surface: its top touches it; else it hangs. */
const mountingOf = (box: PlanBox, ceiling: Metres): Luminaire["mounting"] => {
  if (box.low > ceiling - 0.03) return "flush";
  return box.high > ceiling - 0.1 ? "surface" : "pendant";
};
