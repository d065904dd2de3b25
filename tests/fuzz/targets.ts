import type { FuzzTarget } from './fuzz-target.ts';
import { dxfFiles } from './targets/dxf-files.ts';
import { damagedFonts } from './targets/fonts.ts';
import { couponsFiles, jobValues, materialsFiles } from './targets/jobs.ts';
import { bits, measures } from './targets/measures.ts';
import { carvedRegions, drawnRegions, measuredRegions } from './targets/regions.ts';
import { svgFiles } from './targets/svg-files.ts';
import { svgPaths } from './targets/svg-paths.ts';
import { svgValues } from './targets/svg-values.ts';
import { wholeJobs } from './targets/whole-jobs.ts';

/** Everything that is fuzzed, the quick ones first. */
export const FUZZ_TARGETS: readonly FuzzTarget[] = [
  measures,
  bits,
  svgValues,
  svgPaths,
  svgFiles,
  dxfFiles,
  jobValues,
  materialsFiles,
  couponsFiles,
  drawnRegions,
  measuredRegions,
  carvedRegions,
  damagedFonts,
  wholeJobs,
];
