import { useEffect, useState } from "react";
import type { HomeShelf, JobEntry, PlanPicture } from "../contract.ts";
import { t } from "../texts/shelf.ts";

interface JobPictureProps {
  readonly job: JobEntry;
  readonly shelf: Pick<HomeShelf, "picture">;
}

/** A job's plan, small; made again whenever the job is another than the one that it shows. */
export function JobPicture({ job, shelf }: JobPictureProps) {
  const [made, setMade] = useState<
    { readonly of: JobEntry["here"]; readonly drawn: PlanPicture | undefined } | undefined
  >();
  const { id, here } = job;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a picture depends on the job's last change alone, and a list makes new entries each time.
  useEffect(() => {
    let gone = false;
    shelf.picture(job).then(
      (drawn) => {
        if (!gone) setMade({ of: here, drawn });
      },
      // A job that cannot be read says so when it is opened; its row stays.
      () => {
        if (!gone) setMade({ of: here, drawn: undefined });
      },
    );
    return () => {
      gone = true;
    };
  }, [shelf, id, here]);
  const ready = made !== undefined && made.of === here;
  const drawn = ready ? made.drawn : undefined;
  return (
    <span className="home-picture" data-made={ready || undefined}>
      {drawn ? (
        <svg
          viewBox={`0 0 ${drawn.width} ${drawn.height}`}
          role="img"
          aria-label={t("shelf.picture", { name: job.name || t("home.jobs.unnamed"), count: drawn.count })}
        >
          <path className="home-picture-rooms" d={drawn.rooms} />
          <path className="home-picture-doors" d={drawn.doors} />
          {drawn.devices.map(([x, y], index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a still picture; its marks never move.
            <circle key={index} className="home-picture-device" cx={x} cy={y} r={2} />
          ))}
        </svg>
      ) : ready ? (
        <span className="home-picture-none">
          {t(here === undefined ? "shelf.no-picture.server" : "shelf.no-picture")}
        </span>
      ) : null}
    </span>
  );
}
