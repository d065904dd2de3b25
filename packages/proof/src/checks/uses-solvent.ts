import type { Measured } from '../measured.ts';

/** Whether a solvent is about: one that leaves the seal as it dries, or one that oil is washed off with. Nothing is warmed beside it. */
export function usesSolvent({ job, blocks }: Pick<Measured, 'job' | 'blocks'>): boolean {
  const { seal } = job.rows;
  const dries = job.coats > 0 && seal.curve.value.length > 0 && seal.hardens === 'drying';
  return dries || job.isOiled || blocks.some(({ block }) => block.row.pores.oily);
}
