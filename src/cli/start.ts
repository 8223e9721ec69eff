import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Command, exitCodes, refused, textValue } from "./command.ts";

/** Stays the same from start to start: browsers keep a page's jobs by its address. */
const usualPort = 4680;

export const start: Command = {
  name: "start",
  usage: "start [--port NUMBER] [--data DIR]",
  summary: "Serve the program to a browser on this machine.",
  help: [
    ["--port NUMBER", `port on this machine; ${usualPort} if absent, 0 for any`],
    ["--data DIR", "folder that keeps the jobs; .roomwake in the home folder if absent"],
  ],
  options: { port: { type: "string" }, data: { type: "string" } },
  run: async ({ world, words, values }) => {
    const port = Number(textValue(values, "port") ?? usualPort);
    const reason =
      words.length > 0
        ? "it takes no file"
        : !Number.isInteger(port) || port < 0 || port > 65535
          ? `--port ${values.port} is not a port number`
          : undefined;
    if (reason !== undefined) return refused({ code: "command-wrong", values: { reason, command: "start" } });
    const dataFolder = textValue(values, "data") ?? process.env.ROOMWAKE_DATA ?? join(homedir(), ".roomwake");
    const { startServer } = await import("#server");
    // The built page lies beside the built command line, in dist/web.
    const webFolder = join(dirname(fileURLToPath(import.meta.url)), "..", "web");
    try {
      const running = await startServer({ port, dataFolder, webFolder });
      world.print(
        values.json
          ? `${JSON.stringify({ address: running.entrance, data: dataFolder })}\n`
          : `Roomwake is at ${running.entrance}\nStop it with Ctrl+C. Jobs are kept in ${dataFolder}.\n`,
      );
      if (!world.cancelled.aborted)
        await new Promise<void>((resolve) =>
          world.cancelled.addEventListener("abort", () => resolve(), { once: true }),
        );
      await running.stop();
      return { exit: exitCodes.fine, json: undefined, text: "" };
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? "";
      if (code === "EADDRINUSE") return refused({ code: "server-port-taken", values: { port } });
      if (["EACCES", "ENOTDIR", "EROFS", "EEXIST"].includes(code) || code.startsWith("SQLITE"))
        return refused({
          code: "server-folder-unusable",
          values: { folder: dataFolder, reason: error instanceof Error ? error.message : code },
        });
      throw error;
    }
  },
};
