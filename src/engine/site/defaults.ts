import type { PlanningDefaults } from "./site.ts";

/** Planning numbers of a new job. @source COMMON-PRACTICE */
export const planningDefaults: PlanningDefaults = {
  margin: { seated: 0.2, towards: 0.15, across: 0.15, spill: 0.2 },
  bodyRadius: 0.2,
  seatedRadius: 0.6,
  sightHeights: {
    walking: 1.0,
    desk: 0.9,
    seat: 0.9,
    wc: 0.8,
    bench: 0.8,
    basin: 1.0,
    shower: 1.0,
    bath: 0.5,
    panel: 0.6,
    machine: 0.6,
  },
  speed: 1.4,
  onset: 0.5,
  response: 1.0,
  lampStart: 0.5,
  darkWalkLimit: 2.0,
  stairLead: 1.0,
  gapArea: 0.1,
  gapShare: 0.01,
  spacing: 0.5,
  clearances: {
    wall: 0.5,
    wallLeast: 0.2,
    luminaireFlush: 0.5,
    luminaireHot: 1.0,
    airOutlet: 1.5,
    heater: 2.0,
    smokeHead: 0.5,
  },
};
