import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request as secureRequest } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WebSocket } from "ws";
import { type RunningServer, startServer } from "./index.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-phones-"));
const pem = (name: string): Buffer =>
  readFileSync(new URL(`../../test/certificate/${name}.pem`, import.meta.url));
/** Another address of this machine, as that on the network is. */
const host = "127.0.0.2";
let running: RunningServer;
let port: string;

beforeAll(async () => {
  mkdirSync(join(folder, "web"), { recursive: true });
  writeFileSync(join(folder, "web", "index.html"), "<!doctype html><title>Roomwake</title>");
  running = await startServer({
    port: 0,
    dataFolder: join(folder, "store"),
    webFolder: join(folder, "web"),
    phones: { host, cert: pem("cert"), key: pem("key") },
  });
  port = new URL(running.address).port;
});
afterAll(async () => {
  await running.stop();
  rmSync(folder, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A request as a phone sends it, with exactly these headers. */
const ask = (path: string, headers: Record<string, string> = {}): Promise<Answer> =>
  new Promise((done, failed) => {
    secureRequest(
      // The certificate is checked against this name, whatever Host says.
      {
        host,
        port,
        path,
        ca: pem("cert"),
        servername: "localhost",
        headers: { host: `${host}:${port}`, ...headers },
      },
      (answer) => {
        let text = "";
        answer.setEncoding("utf8");
        answer.on("data", (part: string) => {
          text += part;
        });
        answer.on("end", () => done({ status: answer.statusCode!, headers: answer.headers, text }));
      },
    )
      .on("error", failed)
      .end();
  });

const bearer = () => ({ authorization: `Bearer ${running.token}` });

test("a phone enters by its address with the token, over HTTPS alone, and gets a cookie that never goes in the open", async () => {
  expect(running.phones?.entrance).toBe(`https://${host}:${port}/?token=${running.token}`);
  const entered = await ask(`/?token=${running.token}`);
  expect([entered.status, entered.headers.location]).toEqual([303, "/"]);
  expect(entered.headers["set-cookie"]).toEqual([
    `roomwake-${port}=${running.token}; Path=/; HttpOnly; SameSite=Strict; Secure`,
  ]);
  const page = await ask("/");
  expect(page.text).toContain("Roomwake");
  expect(page.headers["content-security-policy"]).toContain(`wss://${host}:${port}`);
  await expect(fetch(`http://${host}:${port}/`)).rejects.toThrow();
});

test("the rules of Host, Origin and token hold there as they do on this machine", async () => {
  expect((await ask("/api/jobs", bearer())).status).toBe(200);
  expect((await ask("/api/jobs")).status).toBe(401);
  for (const headers of [
    { host: `127.0.0.1:${port}` },
    { host: "phone.example" },
    { origin: "https://evil.example" },
    { origin: `http://${host}:${port}` },
    { origin: running.address.slice(0, -1) },
    { "sec-fetch-site": "cross-site" },
  ])
    expect([headers, (await ask("/api/jobs", { ...bearer(), ...headers })).status]).toEqual([headers, 403]);
  // The name of the one place is a foreign one at the other.
  const across = await fetch(`${running.address}api/jobs`, {
    headers: { ...bearer(), origin: `https://${host}:${port}` },
  });
  expect(across.status).toBe(403);
});

test("the socket opens for the page of its own place only", async () => {
  const opens = (origin: string): Promise<boolean> =>
    new Promise((done) => {
      const socket = new WebSocket(`wss://${host}:${port}/api/sync`, {
        ca: pem("cert"),
        headers: { origin, ...bearer() },
      });
      socket.on("open", () => {
        socket.close();
        done(true);
      });
      socket.on("error", () => done(false));
    });
  expect(await opens(`https://${host}:${port}`)).toBe(true);
  expect(await opens(running.address.slice(0, -1))).toBe(false);
});

test("who is let in is told how a phone gets here; nobody else is", async () => {
  const told = await fetch(`${running.address}api/pairing`, { headers: bearer() });
  expect(await told.json()).toMatchObject({ entrance: running.phones?.entrance, port: Number(port) });
  expect((await fetch(`${running.address}api/pairing`)).status).toBe(401);
  const alone = await startServer({ port: 0, dataFolder: join(folder, "alone"), webFolder: folder });
  const answer = await fetch(`${alone.address}api/pairing`, {
    headers: { authorization: `Bearer ${alone.token}` },
  });
  expect(await answer.json()).toMatchObject({ entrance: null });
  await alone.stop();
});
