import { networkInterfaces } from "node:os";

/** Addresses of this machine on its networks, as a phone there would reach it: version 4 only, those are the ones that people type. */
export const ownAddresses = (): readonly string[] =>
  Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => address);
