// `npm start`: installs, builds if needed, and serves Roomwake on this machine only.
import { spawn } from "node:child_process";
import { join } from "node:path";
import { build, install, requireNode, root } from "./prepare.mjs";

requireNode();
install();
build();
const server = spawn(process.execPath, [join(root, "dist/server/main.mjs"), ...process.argv.slice(2)], {
  stdio: "inherit",
});
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => server.kill(signal));
server.on("exit", (code) => process.exit(code ?? 0));
