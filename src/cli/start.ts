import { type Command, exitCodes } from "./command.ts";

export const start: Command = {
  name: "start",
  usage: "start",
  summary: "Serve the program to a browser on this machine.",
  help: [["--port NUMBER", "port on the loopback address; a free one if absent"]],
  options: { port: { type: "string" } },
  run: async () => {
    return { exit: exitCodes.fine, json: {}, text: "" };
  },
};
