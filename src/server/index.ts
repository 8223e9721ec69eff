export { ownAddresses } from "./own-addresses.ts";
export { demoId, type RunningServer, type ServerOptions, startServer } from "./start-server.ts";
