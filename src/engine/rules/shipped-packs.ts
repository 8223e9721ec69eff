import { say } from "../check/index.ts";
import type { Rule, RulePack, RulePredicate, RuleSpace } from "./rule-pack.ts";

/** One square foot. [m²] The foot is 0.3048 m by definition. */
const SQUARE_FOOT = 0.3048 ** 2;
const MINUTE = 60;
const FROM_MEMORY = say`Written from memory, not re-read in its text: switch it on once you have checked it.`;

const UNITED_STATES = ["united states", "united states of america", "usa", "us"];

const listed: readonly RuleSpace[] = [
  "classroom",
  "meeting",
  "copy",
  "break-room",
  "office-enclosed",
  "restroom",
  "storage",
  "locker-room",
];

const offAfter = (rule: {
  readonly code: string;
  readonly clause: string;
  readonly when: RulePredicate;
  readonly minutes: number;
}): Rule => ({
  code: rule.code,
  clause: rule.clause,
  title: say`Light off within ${rule.minutes} min of vacancy`,
  when: rule.when,
  limit: { measure: "off-delay", most: rule.minutes * MINUTE },
  certainty: "seen",
});

const iecc2021: RulePack = {
  code: "iecc-2021",
  title: say`Energy conservation code, occupant sensor controls`,
  jurisdiction: say`United States, where adopted`,
  regions: UNITED_STATES,
  edition: "2021",
  source: "IECC-2021",
  onByDefault: true,
  rules: [
    offAfter({ code: "off-delay", clause: "C405.2.1.1", when: { spaces: listed }, minutes: 20 }),
    offAfter({
      code: "off-delay-small-room",
      clause: "C405.2.1.1",
      when: { spaces: ["other"], areaUpTo: 300 * SQUARE_FOOT },
      minutes: 20,
    }),
    offAfter({
      code: "off-delay-small-open-office",
      clause: "C405.2.1.1",
      when: { spaces: ["office-open"], areaBelow: 300 * SQUARE_FOOT },
      minutes: 20,
    }),
    {
      code: "automatic-on",
      clause: "C405.2.1.1",
      title: say`By hand, or automatically to half of the power at most`,
      // Restrooms, locker rooms, corridors, stairs and lobbies may come on fully.
      when: { spaces: ["classroom", "meeting", "copy", "break-room", "office-enclosed", "storage"] },
      limit: { measure: "automatic-on-share", most: 0.5 },
      certainty: "seen",
    },
    {
      code: "manual-off",
      clause: "C405.2.1.1",
      title: say`A control that switches off by hand`,
      when: { spaces: ["classroom", "meeting", "copy", "break-room", "office-enclosed", "storage"] },
      limit: { measure: "manual-off", least: 1 },
      certainty: "seen",
    },
    offAfter({
      code: "open-office-delay",
      clause: "C405.2.1.3",
      when: { spaces: ["office-open"], areaFrom: 300 * SQUARE_FOOT },
      minutes: 20,
    }),
    {
      code: "open-office-zone",
      clause: "C405.2.1.3",
      title: say`Zones of at most 600 ft²`,
      when: { spaces: ["office-open"], areaFrom: 300 * SQUARE_FOOT },
      limit: { measure: "switched-area", most: 600 * SQUARE_FOOT },
      certainty: "seen",
    },
    {
      code: "open-office-vacant",
      clause: "C405.2.1.3",
      title: say`A vacant zone falls to 20 % of the power at most`,
      when: { spaces: ["office-open"], areaFrom: 300 * SQUARE_FOOT },
      limit: { measure: "vacant-share", most: 0.2 },
      certainty: "seen",
    },
    offAfter({ code: "corridor-delay", clause: "C405.2.1.4", when: { spaces: ["corridor"] }, minutes: 20 }),
    {
      code: "corridor-vacant",
      clause: "C405.2.1.4",
      title: say`A vacant corridor falls to half of the power at most`,
      when: { spaces: ["corridor"] },
      limit: { measure: "vacant-share", most: 0.5 },
      certainty: "seen",
    },
  ],
};

const ashraeFullOff: RulePack = {
  code: "ashrae-90-1-full-off",
  title: say`Energy standard for buildings, automatic full off`,
  jurisdiction: say`United States, where adopted`,
  regions: UNITED_STATES,
  edition: "2016, 2019",
  source: "ASHRAE-90-1",
  onByDefault: true,
  rules: [
    offAfter({ code: "off-delay", clause: "9.4.1.1(h)", when: {}, minutes: 20 }),
    {
      code: "area",
      clause: "9.4.1.1(h)",
      title: say`One control for at most 5000 ft²`,
      when: {},
      limit: { measure: "switched-area", most: 5000 * SQUARE_FOOT },
      certainty: "seen",
    },
    {
      code: "residual",
      clause: "9.4.1.1(h)",
      title: say`At most 0.02 W/ft² left on`,
      when: {},
      limit: { measure: "residual-power", most: 0.02 / SQUARE_FOOT },
      certainty: "seen",
    },
  ],
};

const title24: RulePack = {
  code: "title-24-2022",
  title: say`Building energy efficiency standards, part 6: occupant-sensing controls`,
  jurisdiction: say`California`,
  regions: ["california", "us-ca"],
  edition: "2022",
  source: "TITLE-24",
  onByDefault: true,
  rules: [
    {
      code: "office-zone",
      clause: "130.1(c)",
      title: say`Offices above 250 ft²: zones of at most 600 ft²`,
      when: { spaces: ["office-open", "office-enclosed"], areaAbove: 250 * SQUARE_FOOT },
      limit: { measure: "switched-area", most: 600 * SQUARE_FOOT },
      certainty: "seen",
    },
    {
      code: "warehouse-vacant",
      clause: "130.1(c)6",
      title: say`A vacant warehouse aisle falls to half of the power at most`,
      when: { spaces: ["warehouse"] },
      limit: { measure: "vacant-share", most: 0.5 },
      certainty: "seen",
    },
  ],
};

const en15193: RulePack = {
  code: "en-15193-area",
  title: say`Energy requirements for lighting: area that detection is credited for`,
  jurisdiction: say`Europe`,
  edition: say`2007, annex D`,
  source: "EN-15193",
  onByDefault: false,
  whyOff: FROM_MEMORY,
  rules: [
    {
      code: "area",
      clause: say`annex D`,
      title: say`Detection counts where at most 30 m² are switched together`,
      when: {},
      limit: { measure: "switched-area", most: 30 },
      certainty: "from-memory",
    },
  ],
};

const epbdRule = (code: string, when: RulePredicate): Rule => ({
  code,
  clause: say`Article 13(12)`,
  title: say`Automatic lighting controls with occupancy detection`,
  when,
  limit: { measure: "automatic-control", least: 1 },
  certainty: "from-memory",
});

const epbd: RulePack = {
  code: "epbd-2024",
  title: say`Energy performance of buildings directive: lighting controls in non-residential buildings`,
  jurisdiction: say`European Union, as each member state makes it law`,
  edition: "2024/1275",
  source: "EPBD-2024",
  onByDefault: false,
  whyOff: say`The official text was not reached, and each member state writes its own law: switch it on once you have checked it.`,
  rules: [
    epbdRule("large-plant", { plantAbove: 290_000, from: "2027-12-31" }),
    epbdRule("medium-plant", { plantAbove: 70_000, plantUpTo: 290_000, from: "2029-12-31" }),
  ],
};

/** Packs that come with the program. A code whose wording was not seen is off until somebody has checked it. */
export const shippedPacks: readonly RulePack[] = [iecc2021, ashraeFullOff, title24, en15193, epbd];
