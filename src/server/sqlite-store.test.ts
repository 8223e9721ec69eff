import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { storageContract } from "../job/storage/storage-contract.ts";
import { sqliteStore } from "./sqlite-store.ts";

storageContract("SQLite file", () => {
  const folder = mkdtempSync(join(tmpdir(), "roomwake-store-"));
  return {
    open: () => sqliteStore(join(folder, "deep", "jobs.sqlite")),
    lasting: "lasting",
    clear: async () => rmSync(folder, { recursive: true, force: true }),
  };
});
