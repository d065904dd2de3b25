import { byGrain } from '@pourproof/plane';
import type { Report } from '../report/report.ts';

/** The sum of a number over a list. */
export function sumOf<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((total, each) => total + of(each), 0);
}

/** The one with the least of a number, `null` counting as none; the first of equals. */
function leastOf<T>(list: readonly T[], of: (each: T) => number | null): T | undefined {
  return list.reduce<T | undefined>((least, each) => {
    const value = of(each);
    const known = least === undefined ? null : of(least);
    return least === undefined || (value !== null && (known === null || value < known)) ? each : least;
  }, undefined);
}

/** The bits over all rounds in the order in which they first come, each with what it adds, its path and its time. */
export function cutterSums(cuts: readonly Report['cut'][]): Report['cut']['perCutter'] {
  const byBit = new Map<string, Report['cut']['perCutter']>();
  for (const { perCutter } of cuts) {
    const turns = new Map<string, number>();
    for (const each of perCutter) {
      const bit = JSON.stringify(each.cutter);
      const turn = (turns.get(bit) ?? 0) + 1;
      turns.set(bit, turn);
      // a bit that a round uses twice is two steps
      const key = `${bit} ${turn}`;
      byBit.set(key, [...(byBit.get(key) ?? []), each]);
    }
  }
  return [...byBit.values()].flatMap((all) => {
    const [first] = all;
    return first === undefined ? [] : [{ ...first, ...sumsOf(all) }];
  });
}

function sumsOf(all: Report['cut']['perCutter']): Omit<Report['cut']['perCutter'][number], 'cutter'> {
  return {
    depthMm: Math.max(...all.map(({ depthMm }) => depthMm)),
    areaMm2: sumOf(all, ({ areaMm2 }) => areaMm2),
    volumeMm3: sumOf(all, ({ volumeMm3 }) => volumeMm3),
    floorMm2: sumOf(all, ({ floorMm2 }) => floorMm2),
    places: sumOf(all, ({ places }) => places),
    outlineMm: sumOf(all, ({ outlineMm }) => outlineMm),
    pathMm: sumOf(all, ({ pathMm }) => pathMm),
    passes: Math.max(...all.map(({ passes }) => passes)),
    retracts: sumOf(all, ({ retracts }) => retracts),
    minutes: sumOf(all, ({ minutes }) => minutes),
    ...(all.some(({ isEstimated }) => isEstimated === true) ? { isEstimated: true } : {}),
  };
}

/** The time of all rounds, and what it rests on. */
export function timeSum(cuts: readonly Report['cut'][]): Report['cut']['time'] {
  const leftOut = sumOf(cuts, ({ time }) => time.floorLeftOutMm2 ?? 0);
  const all = cuts.flatMap(({ time }) => time.assumptions);
  // a round that cuts nothing puts no bit in
  const changes = cuts.filter(({ areaMm2 }) => areaMm2 > 0).map(({ time }) => time.changeMinutes);
  const isKnown = changes.length > 0 && changes.every((each) => each !== undefined);
  return {
    minutes: sumOf(cuts, ({ time }) => time.minutes),
    ...(isKnown ? { changeMinutes: sumOf(changes, (each) => each) } : {}),
    ...(leftOut > 0 ? { floorLeftOutMm2: leftOut } : {}),
    assumptions: all.filter((each, k) => all.findIndex(({ name }) => name === each.name) === k),
  };
}

/** Strokes of all rounds by width. */
export function mergedStrokes(parts: readonly Report['strokes'][]): Report['strokes'] {
  const {
    narrowestMm = null,
    narrowestAt = null,
    narrowestToBit = null,
  } = leastOf(parts, (part) => part.narrowestMm) ?? {};
  const classes = parts.flatMap(({ widthHistogram }) => widthHistogram);
  const starts = [...new Set(classes.map(({ fromMm }) => fromMm))].toSorted((a, b) => a - b);
  return {
    narrowestMm,
    narrowestAt,
    narrowestToBit,
    lengthMm: sumOf(parts, ({ lengthMm }) => lengthMm),
    lengthNarrowerThanBitMm: sumOf(parts, (part) => part.lengthNarrowerThanBitMm),
    tapers: mergedTapers(parts),
    widthHistogram: starts.flatMap((fromMm) => {
      const rows = classes.filter((row) => row.fromMm === fromMm);
      const [row] = rows;
      return row === undefined ? [] : [{ ...row, lengthMm: sumOf(rows, ({ lengthMm }) => lengthMm) }];
    }),
  };
}

function mergedTapers(parts: readonly Report['strokes'][]): Report['strokes']['tapers'] {
  const tapers = parts.flatMap((part) => part.tapers ?? []);
  const narrowest = leastOf(tapers, ({ narrowestMm }) => narrowestMm);
  return narrowest === undefined
    ? null
    : {
        ...narrowest,
        widestMm: Math.max(...tapers.map(({ widestMm }) => widestMm)),
        lengthMm: sumOf(tapers, ({ lengthMm }) => lengthMm),
        lengthNarrowerThanBitMm: sumOf(tapers, (each) => each.lengthNarrowerThanBitMm),
      };
}

/** Thin wood of all rounds, thinnest relative to its limit first. */
export function mergedSlivers(parts: readonly Report['slivers'][]): Report['slivers'] {
  const { narrowestMm = null, narrowestAt = null } = leastOf(parts, (part) => part.narrowestMm) ?? {};
  return {
    narrowestMm,
    narrowestAt,
    shortGrain: parts
      .flatMap(({ shortGrain }) => shortGrain)
      .toSorted(byGrain(({ widthMm, limitMm }) => widthMm / limitMm)),
  };
}

/** Seal of all rounds: a round that opens no wood takes none. */
export function mergedSeal(parts: readonly Report['seal'][]): Report['seal'] {
  const ghosts = parts.flatMap(({ ghostBelowMm }) => ghostBelowMm ?? []);
  return {
    filmMm: Math.max(...parts.map(({ filmMm }) => filmMm)),
    massG: sumOf(parts, ({ massG }) => massG),
    ghostBelowMm: ghosts.length === 0 ? null : Math.max(...ghosts),
    ghostLengthMm: sumOf(parts, ({ ghostLengthMm }) => ghostLengthMm),
  };
}

/** Levelling of the round that is left with the least colour, and the lengths of all. */
export function mergedLevelling(parts: readonly Report['levelling'][]): Report['levelling'] {
  const cut = parts.filter(({ firstLostAt }) => firstLostAt !== null);
  const worst =
    leastOf(cut, ({ leftMm }) => leftMm ?? Number.POSITIVE_INFINITY) ?? (parts[0] as Report['levelling']);
  const strokes = (grade: keyof Report['levelling']['strokesMm']): number =>
    sumOf(parts, ({ strokesMm }) => strokesMm[grade]);
  const flatness = parts.find((part) => part.flatness !== undefined)?.flatness;
  return {
    ...worst,
    lostLengthMm: sumOf(parts, ({ lostLengthMm }) => lostLengthMm),
    strokesMm: {
      lost: strokes('lost'),
      spoilt: strokes('spoilt'),
      close: strokes('close'),
      holds: strokes('holds'),
    },
    areas: {
      lost: sumOf(parts, ({ areas }) => areas.lost),
      spoilt: sumOf(parts, ({ areas }) => areas.spoilt),
      close: sumOf(parts, ({ areas }) => areas.close),
      holds: sumOf(parts, ({ areas }) => areas.holds),
    },
    uncutMm: sumOf(parts, ({ uncutMm }) => uncutMm),
    parts: parts.flatMap((each) => each.parts),
    ...(flatness === undefined ? {} : { flatness }),
  };
}

/** All colours of all rounds. */
export function mergedPour(parts: readonly Report['pour'][]): Report['pour'] {
  const first = parts[0] as Report['pour'];
  const deepest = parts.reduce((most, each) => (each.layers.count > most.layers.count ? each : most), first);
  return {
    ...first,
    colours: parts.flatMap(({ colours }) => colours),
    layers: deepest.layers,
    ...(first.price === undefined ? {} : { price: sumOf(parts, ({ price }) => price ?? 0) }),
  };
}
