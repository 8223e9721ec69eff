import { spanish } from "#output";
import type { Spoken } from "../language.ts";
import after from "./after.json" with { type: "json" };
import arrange from "./arrange.json" with { type: "json" };
import common from "./common.json" with { type: "json" };
import copies from "./copies.json" with { type: "json" };
import day from "./day.json" with { type: "json" };
import drawn from "./drawn.json" with { type: "json" };
import eye from "./eye.json" with { type: "json" };
import faults from "./faults.json" with { type: "json" };
import handOver from "./hand-over.json" with { type: "json" };
import labelScan from "./label-scan.json" with { type: "json" };
import models from "./models.json" with { type: "json" };
import phone from "./phone.json" with { type: "json" };
import place from "./place.json" with { type: "json" };
import rooms from "./rooms.json" with { type: "json" };
import scan from "./scan.json" with { type: "json" };
import set from "./set.json" with { type: "json" };
import settings from "./settings.json" with { type: "json" };
import shelf from "./shelf.json" with { type: "json" };
import sign from "./sign.json" with { type: "json" };
import survey from "./survey.json" with { type: "json" };
import test from "./test.json" with { type: "json" };
import visit from "./visit.json" with { type: "json" };
import wire from "./wire.json" with { type: "json" };

/** All that the screens say in this language. */
export const spoken: Spoken = {
  sentences: {
    ...after,
    ...arrange,
    ...common,
    ...copies,
    ...day,
    ...drawn,
    ...eye,
    ...faults,
    ...handOver,
    ...labelScan,
    ...models,
    ...phone,
    ...place,
    ...rooms,
    ...scan,
    ...set,
    ...settings,
    ...shelf,
    ...sign,
    ...survey,
    ...test,
    ...visit,
    ...wire,
  },
  said: spanish,
  problems: spanish.problems,
};
