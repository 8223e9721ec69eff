import { expect, test } from "vitest";
import { pairingOf } from "./pairing.ts";

const answers =
  (body: string, type: string, status = 200): typeof fetch =>
  async () =>
    new Response(body, { status, headers: { "content-type": type } });
const json = (told: object, status?: number) => answers(JSON.stringify(told), "application/json", status);
const html = answers("<!doctype html>", "text/html");

test("a server that serves phones gives its address with the token, and the job behind it", async () => {
  const found = await pairingOf("a b", {
    page: "http://127.0.0.1:4680/",
    fetch: json({ entrance: "https://192.168.1.20:4680/?token=x", addresses: [] }),
  });
  expect(found).toEqual({
    way: "server",
    address: "https://192.168.1.20:4680/?token=x#/job/a%20b",
  });
});

test("a server for this machine alone gives the command that serves phones, with the machine's address", async () => {
  const page = "http://127.0.0.1:4680/";
  const at = async (addresses: readonly string[]) =>
    pairingOf("j", { page, fetch: json({ entrance: null, addresses }) });
  expect(await at(["192.168.1.20", "10.0.0.5"])).toEqual({
    way: "start",
    command: "roomwake start --host 192.168.1.20 --cert cert.pem --key key.pem",
  });
  expect(await at([])).toMatchObject({ command: expect.stringContaining("--host ADDRESS") });
});

test("a static host gives its own address over HTTPS, and says so where it is plain HTTP", async () => {
  const at = (page: string) => pairingOf("j", { page, fetch: html });
  expect(await at("https://plans.example/light/#/job/j")).toEqual({
    way: "host",
    address: "https://plans.example/light/",
  });
  expect(await at("http://plans.example/")).toEqual({ way: "plain" });
  expect(await at("http://localhost:5000/")).toMatchObject({ way: "start" });
});

test("a server that does not answer, or does not let this browser in, is away", async () => {
  const page = "http://127.0.0.1:4680/";
  const refuses: typeof fetch = async () => {
    throw new TypeError("Failed to fetch");
  };
  expect(await pairingOf("j", { page, fetch: refuses })).toEqual({ way: "away" });
  expect(await pairingOf("j", { page, fetch: json({ problems: [] }, 401) })).toEqual({ way: "away" });
});
