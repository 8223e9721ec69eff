// `npm start`: installs, builds if needed, and serves Roomwake on this machine only, as `roomwake start` does.
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build, install, requireNode, root } from "./prepare.mjs";

requireNode();
install();
build();
// In this process, not in one below it: a signal then comes to the server as often as it was sent.
const program = join(root, "dist", "cli", "main.mjs");
process.argv.splice(1, 1, program, "start");
await import(pathToFileURL(program).href);
