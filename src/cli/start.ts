import { homedir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { type Call, type Command, exitCodes, refused, textValue } from "./command.ts";
import { reasonOf } from "./files.ts";

/** Stays the same from start to start: browsers keep a page's jobs by its address. */
const usualPort = 4680;
/** What the system says of a folder that cannot hold the jobs. */
const folderCodes = ["EACCES", "EPERM", "ENOTDIR", "EROFS", "EEXIST", "ENOSPC"];

export const start: Command = {
  name: "start",
  usage: "start [--port NUMBER] [--data DIR]",
  summary: "Serve the program to a browser on this machine.",
  help: [
    ["--port NUMBER", `port on this machine; ${usualPort} if absent, 0 for any`],
    ["--data DIR", "folder that keeps the jobs; .roomwake in the home folder if absent"],
  ],
  // --host is known only to be refused in words: people look for it.
  options: { port: { type: "string" }, data: { type: "string" }, host: { type: "string" } },
  run: async (call) => {
    const { world, values } = call;
    const reason = wrongIn(call);
    if (reason !== undefined) return refused({ code: "command-wrong", values: { reason, command: "start" } });
    const port = Number(textValue(values, "port") ?? usualPort);
    const dataFolder = resolve(
      world.folder,
      textValue(values, "data") ?? (process.env.ROOMWAKE_DATA || join(homedir(), ".roomwake")),
    );
    // The built page lies beside the built command line, in dist/web.
    const webFolder = fileURLToPath(new URL("../web", import.meta.url));
    const { startServer } = await import("#server");
    try {
      const running = await startServer({ port, dataFolder, webFolder });
      world.print(
        values.json
          ? `${JSON.stringify({ address: running.entrance, data: dataFolder })}\n`
          : `Roomwake is at ${running.entrance}\nStop it with Ctrl+C. Jobs are kept in ${dataFolder}.\n`,
      );
      if (!world.cancelled.aborted)
        await new Promise<void>((done) =>
          world.cancelled.addEventListener("abort", () => done(), { once: true }),
        );
      await running.stop();
      return { exit: exitCodes.fine, json: undefined, text: "" };
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? "";
      if (code === "EADDRINUSE") return refused({ code: "server-port-taken", values: { port } });
      if (code === "EACCES" && (error as NodeJS.ErrnoException).syscall === "listen")
        return refused({
          code: "command-wrong",
          values: { reason: `port ${port} is kept for the system; take one above 1023`, command: "start" },
        });
      if (folderCodes.includes(code) || code.startsWith("SQLITE"))
        return refused({
          code: "server-folder-unusable",
          values: { folder: dataFolder, reason: reasonOf(error) },
        });
      throw error;
    }
  },
};

/** What is wrong with the words after the command. */
function wrongIn({ words, values }: Call): string | undefined {
  if (words.length > 0) return "it takes no file";
  const host = textValue(values, "host");
  if (host !== undefined) return "it serves this machine only, at 127.0.0.1; there is no --host";
  const port = textValue(values, "port");
  // A number as people write one: not "", not 1e3.
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65535))
    return `--port ${port} is not a port number`;
  return undefined;
}
