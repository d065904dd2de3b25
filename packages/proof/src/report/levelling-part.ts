import type { Job } from '@pourproof/job';
import { levelMethods, sealerMassG } from '@pourproof/materials';
import { radians } from '@pourproof/plane';
import type { FaceHeights } from '../board/face-heights.ts';
import { veeWidthErrors } from '../board/vee-width-errors.ts';
import { gradeOf } from '../levelling/graded-parts.ts';
import type { LevellingMap } from '../levelling/levelling-map.ts';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

/** What the seal takes of the room for colour. */
export function sealPart({ job, sealFilm, carving, levelling, contact }: Measured): Report['seal'] {
  return {
    filmMm: sealFilm,
    massG: sealerMassG(
      job.rows.seal,
      job.coats,
      carving.floorAreaMm2 * (1 - contact.floor) + carving.wallAreaMm2 * (1 - contact.wall),
    ),
    ghostBelowMm: Number.isFinite(levelling.ghostBelowMm) ? levelling.ghostBelowMm : null,
    ghostLengthMm: levelling.ghostLengthMm,
  };
}

/** What levelling takes and leaves. */
export function levellingPart({ job, levelling, levellingMap, heights }: Measured): Report['levelling'] {
  const { value: usual, low, high } = levelMethods[job.levelBy].removalMm;
  return {
    planMm: levelling.planMm,
    marginMm: levelling.marginMm,
    leftMm: levelling.leftMm,
    leftWidthMm: levelling.leftWidthMm,
    firstLostAt: levelling.firstLostAt,
    lostLengthMm: levellingMap.lengthMm.lost,
    strokesMm: levellingMap.lengthMm,
    areas: countsOf(levellingMap.areas),
    uncutMm: levellingMap.uncutMm,
    parts: levellingMap.parts.map(({ atMm, first }) => ({
      atMm: first?.atMm ?? atMm,
      marginMm: first?.goneMm ?? null,
      grade: first === null ? null : gradeOf(first, levelling.planMm),
    })),
    ...(heights === null ? {} : { flatness: flatnessOf(heights, job) }),
    method: job.levelBy,
    methodMm: { low, usual, high },
  };
}

function countsOf(areas: LevellingMap['areas']): Report['levelling']['areas'] {
  const counts = { lost: 0, spoilt: 0, close: 0, holds: 0 };
  for (const { grade } of areas) {
    counts[grade]++;
  }
  return counts;
}

function flatnessOf(heights: FaceHeights, job: Job): NonNullable<Report['levelling']['flatness']> {
  return {
    rangeMm: heights.highestMm - heights.lowestMm,
    lowestAt: heights.lowestAt,
    highestAt: heights.highestAt,
    residualMm: heights.surface.residualMm,
    ...veeErrors(heights, job),
  };
}

/** Width errors of the V bits of the job, the bluntest told: it errs most. */
function veeErrors(
  heights: FaceHeights,
  job: Job,
): Pick<NonNullable<Report['levelling']['flatness']>, 'veeWidthMm'> {
  const angles = job.bits.flatMap((bit) => (bit.kind === 'vee' ? [radians(bit.angleDeg)] : []));
  if (angles.length === 0) {
    return {};
  }
  const { narrowerByMm, widerByMm } = veeWidthErrors(heights, Math.max(...angles));
  return { veeWidthMm: { narrowerBy: narrowerByMm, widerBy: widerByMm } };
}
