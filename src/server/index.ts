export { demoId, type RunningServer, type ServerOptions, startServer } from "./start-server.ts";
