import { resolveRegions } from '@pourproof/arrangement';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import type { LevellingMap } from '../levelling/levelling-map.ts';
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
    standing: pictures.flatMap(({ standing }) => standing),
    narrow: pictures.flatMap(({ narrow }) => narrow),
    bleedWalls: pictures.flatMap(({ bleedWalls }) => bleedWalls),
    bleed: pictures.flatMap(({ bleed }) => bleed),
    levelling: mergedMap(pictures.map(({ levelling }) => levelling)),
    depths: pictures.flatMap(({ depths }) => depths),
    boundsMm: boundsOrZero(artwork),
  };
}

/** Strokes of all rounds by what the levellings from their own on leave of them; the plan is that of the round in which colour goes first. */
function mergedMap(maps: readonly LevellingMap[]): LevellingMap {
  const spare = ({ goesFirstMm, planMm }: LevellingMap): number => goesFirstMm - planMm;
  const cut = maps.filter(({ goesFirstAt }) => goesFirstAt !== null);
  const worst = cut.reduce(
    (least, each) => (spare(each) < spare(least) ? each : least),
    cut[0] ?? (maps[0] as LevellingMap),
  );
  const length = (grade: keyof LevellingMap['lengthMm']): number =>
    sumOf(maps, ({ lengthMm }) => lengthMm[grade]);
  return {
    ...worst,
    stretches: maps.flatMap(({ stretches }) => stretches),
    lengthMm: {
      lost: length('lost'),
      spoilt: length('spoilt'),
      close: length('close'),
      holds: length('holds'),
    },
  };
}
