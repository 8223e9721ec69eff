import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import jsQr from "jsqr";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoJob } from "#job";
import { labelText, type QrModules, qrOf } from "#output";
import { root } from "../architecture/source-files.ts";
import { type BuiltServer, sizes, startBrowser, startBuiltServer, withoutOffline } from "./browser.ts";
import { holds } from "./screens-hold.ts";

const folder = mkdtempSync(join(tmpdir(), "roomwake-phone-"));
const [device] = demoJob().detectors;
let server: BuiltServer;
let browser: Browser;

beforeAll(async () => {
  const pem = (name: string): string => join(root, "test/certificate", `${name}.pem`);
  server = await startBuiltServer({
    flags: ["--host", "127.0.0.2", "--cert", pem("cert"), "--key", pem("key")],
  });
  const film = join(folder, "label.y4m");
  const { id, room, tag } = device!;
  writeFileSync(film, filmOf(qrOf(labelText({ job: "saltmarsh", device: id, room, tag }))!));
  browser = await startBrowser([
    "--use-fake-ui-for-media-stream",
    "--use-fake-device-for-media-stream",
    `--use-file-for-fake-video-capture=${film}`,
  ]);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** Ten seconds' worth of nothing but a code, grey on white, as a camera would hand it over (YUV4MPEG2). */
function filmOf(code: QrModules): Buffer {
  const [width, height, module] = [640, 480, 8];
  const [left, top] = [width, height].map((side) => Math.floor((side - code.length * module) / 2));
  const light = Buffer.alloc(width * height, 235);
  code.forEach((row, r) => {
    row.forEach((dark, c) => {
      for (let y = 0; dark && y < module; y++)
        light.fill(
          30,
          (top! + r * module + y) * width + left! + c * module,
          (top! + r * module + y) * width + left! + (c + 1) * module,
        );
    });
  });
  const frame = Buffer.concat([Buffer.from("FRAME\n"), light, Buffer.alloc((width * height) / 2, 128)]);
  return Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F5:1 Ip A1:1 C420jpeg\n`), frame, frame]);
}

/** What the code that stands on the screen says, read from its picture. */
async function codeOnScreen(page: Page): Promise<string | undefined> {
  const picture = await page.locator(".phone-code").screenshot();
  const { data, width, height } = await page.evaluate(async (png) => {
    const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d")!;
    pen.drawImage(bitmap, 0, 0);
    const { data: pixels } = pen.getImageData(0, 0, bitmap.width, bitmap.height);
    return { data: [...pixels], width: bitmap.width, height: bitmap.height };
  }, picture.toString("base64"));
  return jsQr(Uint8ClampedArray.from(data), width, height)?.data;
}

const things = (page: Page) => page.getByRole("listbox", { name: "Things on this storey" });

test("the laptop's code brings the job to a phone over HTTPS; there a label's code opens its detector; a copy comes back as a file", async () => {
  const desk = await browser.newContext({ ...withoutOffline, viewport: sizes.laptop, acceptDownloads: true });
  await desk.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("Denied", "NotAllowedError"));
  });
  const laptop = await desk.newPage();
  laptop.setDefaultTimeout(30_000);
  await laptop.goto(server.entrance);
  await laptop.getByRole("button", { name: "Open the demo job" }).click();
  await things(laptop).waitFor({ state: "attached" });
  await laptop.getByRole("button", { name: "Test", exact: true }).click();
  await laptop.getByRole("button", { name: "To the phone" }).click();
  await laptop.locator(".phone-code").waitFor();
  await holds(laptop);
  const address = (await codeOnScreen(laptop)) ?? "";
  expect(address).toMatch(/^https:\/\/127\.0\.0\.2:\d+\/\?token=[0-9a-f]{48}#\/job\/saltmarsh$/);
  expect(await laptop.locator(".phone-address").textContent()).toBe(address);

  const context = await browser.newContext({
    ...withoutOffline,
    viewport: sizes.phone,
    hasTouch: true,
    // Nobody trusts the tests' certificate.
    ignoreHTTPSErrors: true,
  });
  const phone = await context.newPage();
  phone.setDefaultTimeout(30_000);
  await phone.goto(address);
  await things(phone).waitFor({ state: "attached" });
  expect(phone.url()).toBe(address.replace(/\?token=\w+/, ""));
  // The camera behind the phone shows a label: nothing but the device itself looks at it.
  await phone.getByRole("button", { name: "Test", exact: true }).click();
  await phone.getByRole("button", { name: "Scan a label" }).click();
  await phone.getByRole("heading", { name: `Detector ${device!.tag}` }).waitFor();
  await phone.getByRole("button", { name: /^Walk test of / }).waitFor();
  await holds(phone);

  await context.close();

  // What was sent comes back, and is known to be a copy of this job.
  const [download] = await Promise.all([
    laptop.waitForEvent("download"),
    laptop.getByRole("button", { name: "Send the job" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.job\.zip$/);
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  const [chooser] = await Promise.all([
    laptop.waitForEvent("filechooser"),
    laptop.getByRole("button", { name: "Choose the file" }).click(),
  ]);
  await chooser.setFiles(file);
  await laptop.getByRole("button", { name: "Merge into the job" }).click();
  await laptop.getByText("It brought nothing that was not here already.").waitFor();

  // Where the camera is refused: a picture of another code is told from a label, and a tag may be typed as people type it.
  const other = {
    name: "label.png",
    mimeType: "image/png",
    buffer: await laptop.locator(".phone-code").screenshot(),
  };
  await laptop.getByRole("button", { name: "Close" }).first().click();
  await laptop.getByRole("button", { name: "Scan a label" }).click();
  await laptop.getByText(/^The browser may not use the camera/).waitFor();
  const [pictures] = await Promise.all([
    laptop.waitForEvent("filechooser"),
    laptop.getByRole("button", { name: "Choose a picture" }).click(),
  ]);
  await pictures.setFiles(other);
  await laptop.getByText(/^This code is on no label of Roomwake: https:/).waitFor();
  await holds(laptop);
  await laptop.getByLabel("Tag on the label").fill(device!.tag.toLowerCase().replace(".", " "));
  await laptop.keyboard.press("Enter");
  await laptop.getByRole("heading", { name: `Detector ${device!.tag}` }).waitFor();
  await desk.close();
});
