import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";
import type { PackStanding, RoomRules, RuleResult, Verdict } from "#engine";
import type { SettingsKnown } from "../calculate/set-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { More, Tick } from "../fields/index.ts";
import { Evidence } from "../findings/evidence.tsx";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/set.ts";
import { OwnPack, takeOut } from "./own-pack.tsx";
import { RuleFacts } from "./rule-facts.tsx";

interface RulesSectionProps {
  readonly job: OpenJob;
  readonly known: SettingsKnown;
}

/** Packs of rules, on or off with the reason, and what those that are on say of each room. */
export function RulesSection({ job, known: { packs, rooms } }: RulesSectionProps) {
  const anyOn = packs.some(({ on }) => on);
  return (
    <section aria-label={t("set.rules")} className="set-rules">
      <h3 className="set-room">{t("set.rules")}</h3>
      {anyOn ? null : <p className="hint">{t("set.rules.all-off")}</p>}
      {rooms.map((room) => (
        <RoomRow key={room.room} room={room} packs={packs} />
      ))}
      {anyOn && rooms.length > 0 ? <RuleFacts job={job} rooms={rooms} /> : null}
      <More word={t("set.rules.packs")}>
        <ul className="set-packs">
          {packs.map((standing) => (
            <li key={standing.pack.code}>
              <Tick on={standing.on} disabled={job.readOnly} onChange={(on) => toggle(job, standing, on)}>
                {spoken(standing.pack.title)}
              </Tick>
              <p className="hint set-pack-why">
                {t("set.rules.edition", {
                  edition: spoken(standing.pack.edition),
                  jurisdiction: spoken(standing.pack.jurisdiction),
                })}
                <br />
                {spoken(standing.why)}
              </p>
              {standing.pack.source === "OWN-RULES" && !job.readOnly ? (
                <Button
                  className="button button-quiet set-pack-out"
                  onPress={() => takeOut(job, standing.pack.code)}
                >
                  {t("set.rules.take-out")}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
        {job.readOnly ? null : <OwnPack job={job} packs={packs} />}
      </More>
    </section>
  );
}

/** A person's switch comes before the region; each code stands in one of the two lists. */
function toggle(job: OpenJob, { pack: { code } }: PackStanding, on: boolean): void {
  const { rulesOn = [], rulesOff = [] } = job.file.details;
  const without = (list: readonly string[]): readonly string[] => list.filter((one) => one !== code);
  job.setRules({
    rulesOn: on ? [...without(rulesOn), code] : without(rulesOn),
    rulesOff: on ? without(rulesOff) : [...without(rulesOff), code],
  });
}

const order: readonly Verdict[] = ["fail", "not-proven", "pass"];

function RoomRow({ room, packs }: { readonly room: RoomRules; readonly packs: readonly PackStanding[] }) {
  const count = (verdict: Verdict): number =>
    room.results.filter(({ check }) => check.verdict === verdict).length;
  return (
    <Disclosure className="set-setting">
      <Heading level={4}>
        <Button slot="trigger" className="line-button set-rules-trigger">
          <svg viewBox="0 0 12 12" aria-hidden="true" className="more-sign">
            <path d="M4 2l4 4-4 4" />
          </svg>
          <span className="set-setting-name">{room.title}</span>
          <span className={count("fail") > 0 ? "set-mark set-mark-fail" : "set-mark"}>
            {order
              .filter((verdict) => count(verdict) > 0)
              .map((verdict) => t(`set.rules.count.${verdict}`, { count: count(verdict) }))
              .join(", ")}
          </span>
        </Button>
      </Heading>
      <DisclosurePanel className="set-setting-panel">
        <ul className="set-results">
          {order.flatMap((verdict) =>
            room.results
              .filter(({ check }) => check.verdict === verdict)
              .map((result) => (
                <ResultLine key={`${result.pack} ${result.rule}`} result={result} packs={packs} />
              )),
          )}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

function ResultLine({
  result: { pack, check },
  packs,
}: {
  readonly result: RuleResult;
  readonly packs: readonly PackStanding[];
}) {
  return (
    <li className="set-result">
      <span>
        <span className={`set-verdict set-verdict-${check.verdict}`}>
          {t(`findings.verdict.${check.verdict}`)}
        </span>{" "}
        {spoken(check.what)}
      </span>
      <span className="hint">{spoken(packs.find((one) => one.pack.code === pack)?.pack.title ?? "")}</span>
      <Evidence checks={[check]} />
    </li>
  );
}
