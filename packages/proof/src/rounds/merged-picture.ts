import { resolveRegions } from '@pourproof/arrangement';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import type { PicturedLevelling } from '../levelling/pictured-levelling.ts';
import { type Picture, pictureOf } from '../picture.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { MeasuredRounds } from './measured-rounds.ts';
import { sumOf } from './merge-parts.ts';

/** The shapes of all rounds of a job in one picture. */
export function mergedPicture({ artwork, rounds }: MeasuredRounds, findings: readonly Finding[]): Picture {
  const pictures = rounds.map(({ measured }, k) =>
    pictureOf(
      measured,
      findings.filter(({ round = k + 1 }) => round === k + 1),
    ),
  );
  const [first] = pictures;
  const cuts = rounds.map(({ measured }) => ({ ...measured.cutRegion, fillRule: 'nonzero' as const }));
  return {
    ...(first as Picture),
    artwork,
    cut: resolveRegions(cuts).region,
    colours: pictures.flatMap(({ colours }) => colours),
    standing: pictures.flatMap(({ standing }) => standing),
    narrow: pictures.flatMap(({ narrow }) => narrow),
    bleedWalls: pictures.flatMap(({ bleedWalls }) => bleedWalls),
    bleed: pictures.flatMap(({ bleed }) => bleed),
    levelling: mergedLevels(pictures.map(({ levelling }) => levelling)),
    depths: pictures.flatMap(({ depths }) => depths),
    boundsMm: boundsOrZero(artwork),
  };
}

/** Strokes and areas of all rounds by what the levellings from their own on leave of them; the plan is that of the round in which colour goes first. */
function mergedLevels(rounds: readonly PicturedLevelling[]): PicturedLevelling {
  const cut = rounds.filter(({ goesFirstAt }) => goesFirstAt !== null);
  const worst = cut.reduce(
    (least, each) => (each.spareMm < least.spareMm ? each : least),
    cut[0] ?? (rounds[0] as PicturedLevelling),
  );
  return {
    ...worst,
    grades: worst.grades.map(({ grade }) => {
      const all = rounds.flatMap(({ grades }) => grades.filter((each) => each.grade === grade));
      return {
        grade,
        lines: all.flatMap(({ lines }) => lines),
        outlines: all.flatMap(({ outlines }) => outlines),
        lengthMm: sumOf(all, ({ lengthMm }) => lengthMm),
      };
    }),
  };
}
