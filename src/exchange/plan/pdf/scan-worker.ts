import { parentPort, workerData } from "node:worker_threads";
import type { ReaderMessage } from "../../killable.ts";
import { writtenPng } from "../picture/written-png.ts";
import { readScan } from "./read-scan.ts";
import type { ScanPictureResult, ScanTask } from "./scan-in-node.ts";

const say = (message: ReaderMessage<ScanPictureResult>): void => parentPort!.postMessage(message);

const { bytes, page, longest } = workerData as ScanTask;
say({ kind: "progress", step: "picture", share: 0 });
const read = await readScan(bytes, { page, longest });
say({
  kind: "result",
  result: "problems" in read ? read : { picture: writtenPng(read.scan), paper: read.scan.paper },
});
