import { type Luminaire, radiansOf, type Site } from "#engine";
import { type LuminaireBlock, luminairesInRooms } from "#exchange";
import type { JobUnderlay } from "#job";
import type { EditStep } from "../../contract.ts";

/** What taking the luminaires of a drawing would do. */
export interface LuminaireTaking {
  readonly steps: readonly EditStep[];
  readonly added: number;
  readonly changed: number;
  readonly outside: number;
}

/**
 * Steps that take the luminaires of a drawing into the rooms they lie in. Those that are there already stay as they are,
 * except for the type and the power that were said now.
 */
export function luminaireSteps(
  site: Site,
  underlay: JobUnderlay,
  said: readonly LuminaireBlock[],
): LuminaireTaking {
  const known = new Map(site.luminaires.map((luminaire) => [luminaire.id, luminaire]));
  const added = new Map<string, EditStep>();
  const changed = new Map<string, EditStep>();
  let outside = 0;
  for (const block of said) {
    const found = luminairesOn(site, underlay, block);
    outside += found.outside;
    for (const luminaire of found.luminaires) {
      const { id } = luminaire;
      const there = known.get(id);
      if (!there) added.set(id, { do: "put", kind: "luminaires", record: luminaire });
      else if (differs(block, there))
        changed.set(id, { do: "set", kind: "luminaires", id, fields: saidFields(block) });
    }
  }
  return {
    steps: [...added.values(), ...changed.values()],
    added: added.size,
    changed: changed.size,
    outside,
  };
}

/** How many luminaires of a block are in the job already. */
export function takenOf(site: Site, underlay: JobUnderlay, name: string): number {
  const known = new Set(site.luminaires.map(({ id }) => id));
  return luminairesOn(site, underlay, { name }).luminaires.filter(({ id }) => known.has(id)).length;
}

function luminairesOn(site: Site, underlay: JobUnderlay, block: LuminaireBlock) {
  const blocks = (underlay.blocks ?? [])
    .filter(({ name }) => name.toUpperCase() === block.name.toUpperCase())
    .map(({ name, lines, places }) => ({
      name,
      lines,
      places: places.map((place) => ({ ...place, turn: radiansOf(place.turn) })),
    }));
  return luminairesInRooms(
    { id: underlay.id, blocks, origin: underlay.origin, turn: radiansOf(underlay.turn) },
    [block],
    site.rooms.filter(({ storey }) => storey === underlay.storey),
  );
}

const saidFields = ({ type, power }: LuminaireBlock): Partial<Pick<Luminaire, "type" | "power">> => ({
  ...(type === undefined ? {} : { type }),
  ...(power === undefined ? {} : { power }),
});

const differs = ({ type, power }: LuminaireBlock, there: Luminaire): boolean =>
  (type !== undefined && type !== there.type) || (power !== undefined && power !== there.power);
