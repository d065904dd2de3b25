import { proposed } from '../checks/proposed.ts';
import type { Finding } from '../report/finding-schema.ts';

/** Proves a job and gives its findings; their ways out are found when they are asked for. */
export type LateProposals = (prove: () => readonly Finding[]) => readonly Finding[];

/**
 * Findings of jobs that are only tried, one job after the other: few of their ways out are ever asked for. They are made from all that is
 * measured of the job, which is kept for the last few; of one before them the job is proved again.
 *
 * @param most jobs of which it is kept: as many as there are kept results of a stage
 */
export function lateProposals(most: number): LateProposals {
  const recent: { findings: readonly Finding[] | null }[] = [];
  return (prove) => {
    const job: (typeof recent)[number] = { findings: null };
    const whole = (): readonly Finding[] => {
      if (job.findings === null) {
        job.findings = prove();
        recent.push(job);
        for (const oldest of recent.splice(0, recent.length - most)) {
          oldest.findings = null;
        }
      }
      return job.findings;
    };
    return whole().map((finding, k) => ({
      ...finding,
      fix: proposed(() => whole()[k]?.fix.options ?? []),
    }));
  };
}
