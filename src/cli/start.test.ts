import { generateKeyPairSync } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { phoneDoor } from "./phone-door.ts";
import { runHere } from "./run-here.fixture.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-start-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts with these flags, and stops as soon as the address was printed. */
async function told(...flags: readonly string[]) {
  const stop = new AbortController();
  let out = "";
  const { exit, notes } = await runHere(folder, ["start", ...flags], {
    print: (text) => {
      out += text;
      stop.abort();
    },
    cancelled: stop.signal,
  });
  return { exit, out, notes };
}

test("start says where the page is and where the jobs are, and a stop is no fault", async () => {
  const { exit, out, notes } = await told("--port", "0", "--data", "jobs");
  expect([exit, notes]).toEqual([0, ""]);
  expect(out).toMatch(
    /^Roomwake is at http:\/\/127\.0\.0\.1:\d+\/\?token=[0-9a-f]{48}\nStop it with Ctrl\+C\. /,
  );
  expect(out).toContain(`Jobs are kept in ${join(folder, "jobs")}.\n`);
  const asData = JSON.parse((await told("--port", "0", "--data", "jobs", "--json")).out);
  expect(Object.keys(asData)).toEqual(["address", "data"]);
  expect(asData.data).toBe(join(folder, "jobs"));
});

test.each([
  [["--port", "many"], "--port many is not a port number"],
  [["--port", "65536"], "--port 65536 is not a port number"],
  [["--port", ""], "--port  is not a port number"],
  [["--port", "1e3"], "--port 1e3 is not a port number"],
  [["--colour"], "Unknown option '--colour'"],
  [
    ["--host", "127.0.0.2"],
    "--host needs --cert FILE and --key FILE: over plain HTTP a phone cannot keep the program for where there is no signal; README.md has the steps, under To the phone",
  ],
  [["--cert", "a.pem"], "--cert and --key go with --host ADDRESS, by which the phone reaches this machine"],
  [["house.job.json"], "it takes no file"],
])("start %j is refused in words, and nothing is served", async (flags, reason) => {
  expect(await told(...flags)).toEqual({
    exit: 2,
    out: "",
    notes: `must   The command cannot be carried out: ${reason}.\n       Run roomwake start --help for what it takes.\n`,
  });
});

test("a port that is taken, and a folder that is a file, are said to be so", async () => {
  const other = createServer().listen(0, "127.0.0.1");
  await new Promise((done) => other.once("listening", done));
  const { port } = other.address() as { port: number };
  const taken = await told("--port", String(port), "--data", "taken");
  other.close();
  expect([taken.exit, taken.out]).toEqual([2, ""]);
  expect(taken.notes).toContain(
    `Port ${port} on this machine is in use: Roomwake runs already, or another program has it.`,
  );
  writeFileSync(join(folder, "file"), "");
  const unusable = await told("--port", "0", "--data", "file/jobs");
  expect([unusable.exit, unusable.out]).toEqual([2, ""]);
  expect(unusable.notes).toContain(
    `The folder for jobs, ${join(folder, "file", "jobs")}, cannot be used: a part of its path is not a folder.`,
  );
});

const pem = (name: string): string =>
  fileURLToPath(new URL(`../../test/certificate/${name}.pem`, import.meta.url));
const phone = (host: string, cert = pem("cert"), key = pem("key")): readonly string[] => [
  ...["--port", "0", "--data", "jobs", "--host", host, "--cert", cert, "--key", key],
];

test("start says where phones get in, where it serves them", async () => {
  const { exit, out, notes } = await told(...phone("127.0.0.2"));
  expect([exit, notes]).toEqual([0, ""]);
  expect(out).toMatch(
    /^Roomwake is at http:\/\/127\.0\.0\.1:(\d+)\/\?token=([0-9a-f]{48})\nPhones on its network open https:\/\/127\.0\.0\.2:\1\/\?token=\2\n/,
  );
  const asData = JSON.parse((await told(...phone("127.0.0.2"), "--json")).out);
  expect(Object.keys(asData)).toEqual(["address", "data", "phones"]);
});

test("an address or a certificate that no phone could use is refused with what is wrong", async () => {
  const refusal = async (...flags: readonly string[]): Promise<string> => {
    const { exit, out, notes } = await told(...flags);
    expect([exit, out]).toEqual([2, ""]);
    return notes;
  };
  expect(await refusal(...phone("0.0.0.0"))).toContain(
    "--host 0.0.0.0 is no address that a phone could open",
  );
  expect(await refusal(...phone("https://127.0.0.2"))).toContain("is neither a name nor an address");
  expect(await refusal(...phone("192.0.2.77"))).toContain(
    "the certificate does not name 192.0.2.77, but IP Address:127.0.0.2, DNS:localhost",
  );
  expect(await refusal(...phone("127.0.0.2", pem("key")))).toContain("it is no certificate in PEM form");
  expect(await refusal(...phone("127.0.0.2", pem("cert"), pem("cert")))).toContain(
    "its key is no private key",
  );
  const { privateKey } = generateKeyPairSync("ec", { namedCurve: "prime256v1" });
  writeFileSync(join(folder, "other.pem"), privateKey.export({ type: "pkcs8", format: "pem" }));
  expect(await refusal(...phone("127.0.0.2", pem("cert"), "other.pem"))).toContain(
    "the key belongs to another certificate",
  );
  expect(await refusal(...phone("127.0.0.2", "gone.pem"))).toContain("gone.pem cannot be read");
});

test("a certificate that has run out is refused: a phone would not trust it", async () => {
  const values = { host: "127.0.0.2", cert: pem("cert"), key: pem("key") };
  const at = (year: number) =>
    phoneDoor({ folder }, values, { addresses: [], now: Date.UTC(year, 5, 1) }).then(
      (found) => found && "problem" in found && String(found.problem.values.reason),
    );
  expect(await at(2019)).toContain("the certificate is valid from Jan  1 00:00:00 2020 GMT");
  expect(await at(2121)).toContain("to Jan  1 00:00:00 2120 GMT");
  expect(await at(2030)).toBe(false);
});
