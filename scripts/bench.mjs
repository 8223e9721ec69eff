// Measures: installs and builds where needed, then runs the benchmarks. Words after "npm run bench --" choose parts by name.
import { build, install, requireNode, run } from "./prepare.mjs";

requireNode();
install();
build();
run(process.execPath, ["node_modules/tsx/dist/cli.mjs", "bench/bench.ts", ...process.argv.slice(2)]);
