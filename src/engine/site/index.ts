export { planningDefaults } from "./defaults.ts";
export type * from "./site.ts";
