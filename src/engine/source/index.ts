export { type Source, type SourceId, sources } from "./register.ts";
