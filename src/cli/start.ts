import { homedir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { type Call, type Command, exitCodes, refused, textValue } from "./command.ts";
import { reasonOf } from "./files.ts";
import { phoneDoor } from "./phone-door.ts";

/** Stays the same from start to start: browsers keep a page's jobs by its address. */
const usualPort = 4680;
/** What the system says of a folder that cannot hold the jobs. */
const folderCodes = ["EACCES", "EPERM", "ENOTDIR", "EROFS", "EEXIST", "ENOSPC"];
/** What the system says of an address that is not this machine's. */
const hostCodes = ["EADDRNOTAVAIL", "ENOTFOUND", "EAI_AGAIN"];

export const start: Command = {
  name: "start",
  usage: "start [--port NUMBER] [--data DIR] [--host ADDRESS --cert FILE --key FILE]",
  summary: "Serve the program to a browser on this machine, and to phones on its network.",
  help: [
    ["--port NUMBER", `port on this machine; ${usualPort} if absent, 0 for any`],
    ["--data DIR", "folder that keeps the jobs; .roomwake in the home folder if absent"],
    ["--host ADDRESS", "also over HTTPS at this address of the machine, for phones on its network"],
    ["--cert FILE", "certificate that names the address and that the phone trusts, PEM"],
    ["--key FILE", "its private key, PEM"],
  ],
  options: {
    port: { type: "string" },
    data: { type: "string" },
    host: { type: "string" },
    cert: { type: "string" },
    key: { type: "string" },
  },
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
    const { ownAddresses, startServer } = await import("#server");
    const phones = await phoneDoor(world, values, { addresses: ownAddresses(), now: Date.now() });
    if (phones && "problem" in phones) return refused(phones.problem);
    try {
      const running = await startServer({ port, dataFolder, webFolder, ...(phones && { phones }) });
      const forPhones = running.phones?.entrance;
      world.print(
        values.json
          ? `${JSON.stringify({ address: running.entrance, data: dataFolder, ...(forPhones && { phones: forPhones }) })}\n`
          : [
              `Roomwake is at ${running.entrance}`,
              ...(forPhones ? [`Phones on its network open ${forPhones}`] : []),
              `Stop it with Ctrl+C. Jobs are kept in ${dataFolder}.\n`,
            ].join("\n"),
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
      if (phones && hostCodes.includes(code))
        return refused({
          code: "command-wrong",
          values: {
            reason: `${phones.host} is no address of this machine; it has ${ownAddresses().join(", ") || "none on a network"}`,
            command: "start",
          },
        });
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
  const port = textValue(values, "port");
  // A number as people write one: not "", not 1e3.
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65535))
    return `--port ${port} is not a port number`;
  return undefined;
}
