export type { JobShelf, ListedJob, StoredJob, SyncState } from "./contract.ts";
