export type * from "./site.ts";
export { planningDefaults } from "./defaults.ts";
