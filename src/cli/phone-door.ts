import { createPrivateKey, X509Certificate } from "node:crypto";
import { isIP } from "node:net";
import type { Problem } from "#engine";
import { textValue, type Values, type World } from "./command.ts";
import { readBytes } from "./files.ts";

/** What the server needs to be reached by a phone. */
export interface PhoneDoor {
  readonly host: string;
  readonly cert: Uint8Array;
  readonly key: Uint8Array;
}

const steps = "README.md has the steps, under To the phone";
/** Addresses to listen at, which nobody can type on a phone. */
const anywhere = new Set(["0.0.0.0", "::", "*"]);

/**
 * Reads what `--host`, `--cert` and `--key` say. Only HTTPS leaves this machine: a browser keeps a program for where there is no signal
 * only from an address that it trusts, and the token must not cross the network in the open.
 *
 * @param at.addresses - Addresses of this machine, to name in a refusal.
 * @param at.now - The time by which the certificate must be valid. [ms since 1970]
 * @returns Undefined where no phones are to be served.
 */
export async function phoneDoor(
  { folder }: Pick<World, "folder">,
  values: Values,
  at: { readonly addresses: readonly string[]; readonly now: number },
): Promise<PhoneDoor | { readonly problem: Problem } | undefined> {
  const [host, cert, key] = ["host", "cert", "key"].map((name) => textValue(values, name)) as [
    string | undefined,
    string | undefined,
    string | undefined,
  ];
  if (host === undefined)
    return cert === undefined && key === undefined
      ? undefined
      : wrong("--cert and --key go with --host ADDRESS, by which the phone reaches this machine");
  const wrongHost = wrongIn(host, at.addresses);
  if (wrongHost !== undefined) return wrong(wrongHost);
  if (cert === undefined || key === undefined)
    return wrong(
      `--host needs --cert FILE and --key FILE: over plain HTTP a phone cannot keep the program for where there is no signal; ${steps}`,
    );
  const [certRead, keyRead] = [await readBytes(folder, cert), await readBytes(folder, key)];
  if ("problem" in certRead) return certRead;
  if ("problem" in keyRead) return keyRead;
  const unusable = unusableFor(host, { cert: certRead.bytes, key: keyRead.bytes, now: at.now });
  return unusable === undefined
    ? { host, cert: certRead.bytes, key: keyRead.bytes }
    : wrong(`${cert}: ${unusable}; ${steps}`);
}

const wrong = (reason: string): { readonly problem: Problem } => ({
  problem: { code: "command-wrong", values: { reason, command: "start" } },
});

/** What is wrong with a host as it was typed. */
function wrongIn(host: string, addresses: readonly string[]): string | undefined {
  const have = addresses.length === 0 ? "" : `; this machine has ${addresses.join(", ")}`;
  if (anywhere.has(host)) return `--host ${host} is no address that a phone could open${have}`;
  // A name of labels, or an address: no scheme, no port, no path.
  return isIP(host) > 0 || /^[a-z\d](?:[a-z\d.-]*[a-z\d])?$/i.test(host)
    ? undefined
    : `--host ${host} is neither a name nor an address${have}`;
}

/** Why a phone would not trust a host by this certificate, or the server cannot use it. */
function unusableFor(
  host: string,
  { cert, key, now }: { readonly cert: Uint8Array; readonly key: Uint8Array; readonly now: number },
): string | undefined {
  let certificate: X509Certificate;
  try {
    certificate = new X509Certificate(cert);
  } catch {
    return "it is no certificate in PEM form";
  }
  try {
    if (!certificate.checkPrivateKey(createPrivateKey(Buffer.from(key))))
      return "the key belongs to another certificate";
  } catch {
    return "its key is no private key in PEM form, or asks for a password";
  }
  const named = isIP(host) > 0 ? certificate.checkIP(host) : certificate.checkHost(host);
  if (named === undefined)
    return `the certificate does not name ${host}, but ${certificate.subjectAltName ?? "nothing that a browser looks at"}`;
  const [from, to] = [Date.parse(certificate.validFrom), Date.parse(certificate.validTo)];
  if (now < from || now > to)
    return `the certificate is valid from ${certificate.validFrom} to ${certificate.validTo}`;
  return undefined;
}
