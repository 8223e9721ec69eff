import { type Said, say } from "../../check/index.ts";
import type { Circuit, ProtectiveDevice, WiringModel, WiringRoom } from "../model.ts";
import { supplyOfCircuit } from "../supply.ts";
import type { WetZone } from "../wet-zones.ts";
import { mustBe, type RuleHit } from "./rule.ts";

/** Distance of signal cables from mains cables without a barrier. [m] */
const APART = 0.05;

const deviceOf = (model: WiringModel, circuit: Circuit): ProtectiveDevice | undefined =>
  model.devices.find(({ id }) => id === circuit.device);

/** W-12: no single-pole device breaks a neutral that three lines share. @param model - The wiring. @returns Hits. @source COMMON-PRACTICE @example Three-phase circuit behind single poles with neutral: fails */
export const sharedStarNeutral = (model: WiringModel): readonly RuleHit[] =>
  model.circuits
    .filter(({ phases }) => phases === "three-phase")
    .flatMap((circuit): readonly RuleHit[] => {
      const poles = deviceOf(model, circuit)?.poles;
      const where = {
        name: circuit.name,
        records: [circuit.id],
        ...(supplyOfCircuit(model, circuit.id).region === "US" ? { source: "NEC-210-4" as const } : {}),
      };
      if (poles === undefined)
        return [{ ...where, verdict: "not-proven", detail: say`the poles of the protective device` }];
      return poles === "three" || poles === "three-and-neutral"
        ? []
        : [
            {
              ...where,
              verdict: "fail",
              detail: say`three lines share a neutral but do not switch together`,
            },
          ];
    });

/** W-13: a detector's contact is no isolation; a circuit that it switches has an isolator upstream. @param model - The wiring. @returns Hits. @source IEC-60669-2-1 @example No isolator: fails */
export const isolatorUpstream = (model: WiringModel): readonly RuleHit[] =>
  model.circuits.flatMap(({ id, name, isolator }) =>
    mustBe(isolator, {
      name,
      records: [id],
      no: say`switched off by contacts of detectors alone`,
      unknown: say`whether an isolator is upstream`,
    }),
  );

/** W-14: extra-low voltage and bus beside mains only where insulated for the highest voltage, or separated. @param model - The wiring. @returns Hits. @source IEC-60364-4-41-SEPARATION @example Bus pair in the same box, not separated: fails */
export const separation = (model: WiringModel): readonly RuleHit[] => [
  ...model.contactors.flatMap(({ id, name, pack }) =>
    pack
      ? mustBe(pack.apart, {
          name,
          records: [id],
          no: say`low-voltage wires of the relay pack run with mains, not separated`,
          unknown: say`whether the low-voltage wires of the relay pack keep apart from the mains`,
        })
      : [],
  ),
  ...model.segments.flatMap(({ id, withSignals }) =>
    mustBe(
      withSignals === "not-separated"
        ? "no"
        : withSignals === undefined || withSignals === "unknown"
          ? "unknown"
          : "yes",
      {
        name: id,
        records: [id],
        no: say`signal conductors run with mains, neither separated nor insulated for it`,
        unknown: say`whether signal conductors run along`,
      },
    ),
  ),
];

/** W-15: the unswitched line of an escape luminaire is taken before the contact and senses the local final circuit. @param model - The wiring. @returns Hits. @source EN-50172 @example Taken after the contact: fails */
export const emergencyLine = (model: WiringModel): readonly RuleHit[] =>
  model.loads.flatMap(({ id, name, room, emergency, circuit }): readonly RuleHit[] => {
    if (!emergency) return [];
    const where = { name, records: [id], ...(room === undefined ? {} : { room }) };
    const local = model.loads
      .filter((load) => load.room === room && !load.emergency)
      .map((load) => load.circuit);
    const foreign = !(local.length > 0 ? local : [circuit]).includes(emergency.senses);
    return [
      ...mustBe(
        emergency.taken === "before-contact" ? "yes" : emergency.taken === "unknown" ? "unknown" : "no",
        {
          ...where,
          no: say`the line is taken after the contact, so the detector empties the battery`,
          unknown: say`where the line is taken`,
        },
      ),
      ...(foreign
        ? [{ ...where, verdict: "fail" as const, detail: say`the local final circuit is not sensed` }]
        : []),
    ];
  });

/** W-16: a protective conductor at every luminaire of class I, and at every detector's box. @param model - The wiring. @returns Hits. @source IEC-60364-4-41-PROTECTIVE @example Class I without one: fails */
export const protectiveConductors = (model: WiringModel): readonly RuleHit[] => [
  ...model.loads
    .filter(({ classOne }) => classOne !== "no")
    .flatMap(({ id, name, protectiveConductor, classOne }) =>
      mustBe(
        classOne === undefined || classOne === "unknown"
          ? protectiveConductor === "yes"
            ? "yes"
            : "unknown"
          : protectiveConductor,
        {
          name,
          records: [id],
          no: say`class I without a protective conductor`,
          unknown: say`whether a protective conductor is there, or needed`,
        },
      ),
    ),
  ...model.detectors.flatMap(({ id, tag, room, protectiveConductor, lowVoltage }) =>
    mustBe(lowVoltage ? "yes" : protectiveConductor, {
      name: tag,
      room,
      records: [id],
      no: say`no protective conductor in the box`,
      unknown: say`whether a protective conductor is in the box`,
    }),
  ),
];

/** W-20: above a suspended ceiling cables hang by themselves, clear of heat, 50 mm from signals. @param model - The wiring. @returns Hits. @source IEC-61535 @example Cable on the ceiling grid: fails */
export const suspendedCables = (model: WiringModel): readonly RuleHit[] =>
  model.segments.flatMap(({ id, suspended }): readonly RuleHit[] =>
    suspended
      ? [
          ...mustBe(suspended.ownSupport, {
            name: id,
            records: [id],
            no: say`laid on the ceiling`,
            unknown: say`what holds the cable up`,
          }),
          ...mustBe(suspended.clearOfHeat, {
            name: id,
            records: [id],
            no: say`laid against a luminaire`,
            unknown: say`whether the cable is clear of luminaires`,
          }),
          ...(suspended.fromSignals !== undefined && suspended.fromSignals < APART
            ? [
                {
                  verdict: "fail" as const,
                  name: id,
                  records: [id],
                  detail: say`signal cables are nearer than 50 mm without a barrier`,
                },
              ]
            : []),
        ]
      : [],
  );

/** Water protection that a device needs by the use of the room; common practice. */
const waterProtection: Readonly<Partial<Record<WiringRoom["use"], number>>> = {
  shower: 4,
  drying: 4,
  plant: 4,
  "store-wet": 4,
};

const ZONE = say`the zone of the shower or bath: its highest fixed outlet, its place on the plan, or the zone as measured`;

/** W-21: wet rooms: 30 mA on every circuit, no mains detector in zones 0 to 2, protected against water. @param model - The wiring. @returns Hits. @source IEC-60364-7-701 @example Detector in zone 2: fails */
export const wetRooms = (model: WiringModel): readonly RuleHit[] =>
  model.rooms.flatMap((room): readonly RuleHit[] => {
    const needed = waterProtection[room.use];
    if (needed === undefined) return [];
    const own = model.detectors.filter((one) => one.room === room.id);
    const circuits = new Set([
      ...own.flatMap(({ line }) => (line.kind === "line" ? [line.circuit] : [])),
      ...model.loads.filter((load) => load.room === room.id).map(({ circuit }) => circuit),
    ]);
    return [
      ...(room.use === "shower"
        ? model.circuits
            .filter(({ id }) => circuits.has(id))
            .flatMap((circuit) => thirtyMilliamperes(model, circuit, inRoom(circuit, room)))
        : []),
      ...own.flatMap(({ id, tag, waterProtection: declared, lowVoltage }): readonly RuleHit[] => {
        const where = { name: tag, room: room.id, records: [id] };
        const zone = room.zones?.[id];
        return [
          ...(zone === undefined || zone === "outside"
            ? []
            : lowVoltage
              ? [
                  {
                    ...where,
                    verdict: "not-proven" as const,
                    detail: say`a supply safe enough for zone ${zoneWords(zone)}`,
                  },
                ]
              : [
                  {
                    ...where,
                    verdict: "fail" as const,
                    detail: room.zonesByExtent?.includes(id)
                      ? say`a mains detector in zone ${zoneWords(zone)}, by an extent of the zones that is from memory: verify`
                      : say`a mains detector in zone ${zoneWords(zone)}`,
                  },
                ]),
          ...(room.use === "shower" && zone === undefined
            ? [{ ...where, verdict: "not-proven" as const, detail: ZONE }]
            : []),
          ...mustBe(declared === undefined ? "unknown" : declared >= needed ? "yes" : "no", {
            ...where,
            no: say`not protected against water; IPX${needed} is asked for`,
            unknown: say`the protection against water`,
          }),
        ];
      }),
    ];
  });

const zoneWords = (zone: Exclude<WetZone, "outside">): Said | number =>
  zone === "1 or 2" ? say`1 or 2` : zone;

const inRoom = ({ name }: Circuit, room: WiringRoom): Pick<RuleHit, "name" | "room"> => ({
  name: say`${name} in ${room.name}`,
  room: room.id,
});

function thirtyMilliamperes(
  model: WiringModel,
  circuit: Circuit,
  place: Pick<RuleHit, "name" | "room">,
): readonly RuleHit[] {
  const rcd = deviceOf(model, circuit)?.rcd;
  return mustBe(rcd === undefined ? "unknown" : rcd !== "none" && rcd.residual <= 0.03 ? "yes" : "no", {
    ...place,
    records: [circuit.id],
    no: say`no RCD of 30 mA`,
    unknown: say`whether there is an RCD of 30 mA`,
  });
}

/** W-22: 30 mA for luminaires of households, and for cables concealed less than 50 mm deep. @param model - The wiring. @returns Hits. @source IEC-60364-4-41-RCD @example Household circuit without RCD: fails */
export function additionalProtection(model: WiringModel): readonly RuleHit[] {
  const circuits = model.circuits.filter(({ id }) => supplyOfCircuit(model, id).region !== "US");
  const laid = (circuit: Circuit, wanted: "yes" | "unknown"): boolean =>
    model.segments.some(
      ({ circuit: id, concealed = "unknown" }) => id === circuit.id && concealed === wanted,
    );
  return [
    ...model.rooms
      .filter(({ household }) => household === "yes")
      .flatMap((room) =>
        circuits
          .filter(({ id }) => model.loads.some((load) => load.room === room.id && load.circuit === id))
          .flatMap((circuit) => thirtyMilliamperes(model, circuit, inRoom(circuit, room))),
      ),
    ...circuits
      .filter((circuit) => laid(circuit, "yes"))
      .flatMap((circuit) => thirtyMilliamperes(model, circuit, { name: say`${circuit.name} in a wall` })),
    ...circuits
      .filter((circuit) => laid(circuit, "unknown"))
      .flatMap((circuit): readonly RuleHit[] => {
        const rcd = deviceOf(model, circuit)?.rcd;
        return typeof rcd === "object" && rcd.residual <= 0.03
          ? []
          : [
              {
                verdict: "not-proven",
                name: circuit.name,
                records: [circuit.id],
                detail: say`whether the cable lies less than 50 mm deep in a wall`,
              },
            ];
      }),
  ];
}

/** W-23: fire-rated ceilings: recessed only in a tested cover, penetrations sealed. @param model - The wiring. @returns Hits. @source IEC-60364-5-52-SECTION @example Recessed without cover: fails */
export const fireRatedCeilings = (model: WiringModel): readonly RuleHit[] =>
  model.rooms
    .filter(({ fireRatedCeiling }) => fireRatedCeiling === "yes")
    .flatMap((room) => [
      ...model.detectors
        .filter((one) => one.room === room.id && one.recessed !== false)
        .flatMap(({ id, tag, testedCover, recessed }) =>
          mustBe(recessed === undefined && testedCover !== "yes" ? "unknown" : testedCover, {
            name: tag,
            room: room.id,
            records: [id],
            no: say`recessed without a tested cover`,
            unknown: say`the fixing, and whether there is a tested cover`,
          }),
        ),
      ...mustBe(room.penetrationsSealed, {
        name: room.name,
        room: room.id,
        records: [room.id],
        no: say`penetrations are not sealed`,
        unknown: say`whether penetrations are sealed`,
      }),
    ]);
