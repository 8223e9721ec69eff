import { memoryStore } from "./memory-store.ts";
import { storageContract } from "./storage-contract.ts";

storageContract("memory", () => {
  const store = memoryStore();
  return { open: async () => store, lasting: "forgets", clear: async () => {} };
});
