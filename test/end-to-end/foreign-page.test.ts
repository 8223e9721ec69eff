import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type BuiltServer, startBrowser, startBuiltServer } from "./browser.ts";

let server: BuiltServer;
let browser: Browser;
let elsewhere: Server;

beforeAll(async () => {
  server = await startBuiltServer();
  browser = await startBrowser();
  elsewhere = createServer((_, answer) => {
    answer.writeHead(200, { "Content-Type": "text/html" });
    answer.end("<title>Another page</title>");
  });
  await new Promise<void>((done) => elsewhere.listen(0, "127.0.0.1", done));
});
afterAll(async () => {
  await browser.close();
  elsewhere.closeAllConnections();
  await new Promise((done) => elsewhere.close(done));
  await server.stop();
});

test("a page from elsewhere cannot open the socket, though its browser may use the server", async () => {
  const context = await browser.newContext();
  const own = await context.newPage();
  await own.goto(server.entrance);
  await own.getByRole("button", { name: "Open the demo job" }).waitFor();
  const { host } = new URL(server.entrance);
  const answerTo = (address: string): Promise<string> =>
    new Promise((done) => {
      const socket = new WebSocket(address);
      socket.onopen = () => {
        socket.close();
        done("opened");
      };
      socket.onerror = () => done("refused");
    });
  const socket = `ws://${host}/api/sync`;
  expect(await own.evaluate(answerTo, socket)).toBe("opened");

  const foreign = await context.newPage();
  await foreign.goto(`http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}/`);
  expect(await foreign.evaluate(answerTo, socket)).toBe("refused");
  const read = await foreign.evaluate(
    (address) =>
      fetch(address, { credentials: "include" }).then(
        (answer) => `read ${answer.status}`,
        () => "refused",
      ),
    `http://${host}/api/jobs`,
  );
  expect(read).toBe("refused");
  await context.close();
});
