import { joined, type Words } from "#engine";

/** Who entered something, and on which day. */
export const whoWhen = (by: string | undefined, time: string | undefined): Words =>
  joined(
    [by ?? "", time?.slice(0, 10) ?? ""].filter((one) => one !== ""),
    ", ",
  );
