import { expect, test } from "vitest";
import { roomUse } from "./room-use.ts";

test("names tell the usual use, the most telling word first", () => {
  const told = [
    ["Toilet corridor", "sanitary"],
    ["Men's changing", "changing"],
    ["Stair 2", "stair"],
    ["Drying room", "plant"],
    ["Entrance hall", "passing"],
    ["Luggage store", "moving"],
    ["Ticket back-office", "sitting"],
    ["Meeting 4", "sitting"],
    ["Büro", "sitting"],
    ["Umkleide Herren", "changing"],
    ["Treppenhaus", "stair"],
    ["Lager 3", "moving"],
    ["Salle de bains", "sanitary"],
    ["Riser", "plant"],
    ["Study", "sitting"],
    ["Storey", "other"],
    ["Exchange", "other"],
    ["", "other"],
  ] as const;
  for (const [name, use] of told) expect(roomUse(name), name).toBe(use);
});
