import { homedir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { type Problem, remedyOf, sentenceOf } from "#engine";
import { startServer } from "./start-server.ts";

/** Stays the same from start to start: browsers keep a page's jobs by its address. */
const usualPort = 4680;

const read = flags();
if ("code" in read) fail(read);
else
  startServer(read)
    .then((running) => {
      console.log(`Roomwake is at ${running.entrance}`);
      console.log("Stop it with Ctrl+C. Jobs are kept in", read.dataFolder);
      let stopping = false;
      for (const signal of ["SIGINT", "SIGTERM"] as const)
        process.on(signal, () => {
          if (stopping) process.exit(130);
          stopping = true;
          running.stop().then(() => process.exit(0));
        });
    })
    .catch((error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE") fail({ code: "server-port-taken", values: { port: read.port } });
      else if (
        error.code === "EACCES" ||
        error.code === "ENOTDIR" ||
        error.code === "EROFS" ||
        error.code?.startsWith("SQLITE")
      )
        fail({ code: "server-folder-unusable", values: { folder: read.dataFolder, reason: error.message } });
      else throw error;
    });

interface Flags {
  readonly port: number;
  readonly dataFolder: string;
  readonly webFolder: string;
}

function flags(): Flags | Problem {
  try {
    const { values } = parseArgs({
      options: { port: { type: "string" }, data: { type: "string" } },
      strict: true,
    });
    const port = Number(values.port ?? usualPort);
    if (!Number.isInteger(port) || port < 0 || port > 65535)
      return {
        code: "server-flag-unknown",
        values: { reason: `--port ${values.port} is not a port number` },
      };
    return {
      port,
      dataFolder: values.data ?? process.env.ROOMWAKE_DATA ?? join(homedir(), ".roomwake"),
      webFolder: fileURLToPath(new URL("../web", import.meta.url)),
    };
  } catch (error) {
    return {
      code: "server-flag-unknown",
      values: { reason: (error instanceof Error ? error.message : String(error)).split(".")[0]! },
    };
  }
}

function fail(problem: Problem): void {
  console.error(sentenceOf(problem));
  console.error(remedyOf(problem));
  process.exitCode = 2;
}
