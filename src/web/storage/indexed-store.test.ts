import { IDBFactory } from "fake-indexeddb";
import { storageContract } from "../../job/storage/storage-contract.ts";
import { indexedStore } from "./indexed-store.ts";

storageContract("browser", () => {
  const factory = new IDBFactory();
  return {
    open: () => indexedStore({ factory, name: "roomwake" }),
    lasting: "lasting",
    clear: async () => {},
  };
});
