import { checkAbove, checkAtLeast, checkPart } from './check-entry.ts';
import { type Cited, type CitedRange, cited, citedRange } from './cited.ts';
import type { MaterialsBook } from './materials-book.ts';
import { MaterialsError } from './materials-error.ts';
import type {
  MaterialsOverrides,
  ResinEntry,
  ScaleEntry,
  SealerEntry,
  WoodEntry,
} from './materials-overrides.ts';
import { type MixRatio, type Resin, thinGel } from './resin.ts';
import type { Sealer } from './sealer.ts';
import type { Scale } from './smallest-batch.ts';
import type { Wood } from './wood.ts';

/**
 * Returns a book in which the maker's entries stand before the defaults; the given book is not changed.
 *
 * An entry with a known id changes that row; one with a new id starts from the row named by `like`. Every
 * value taken over has status `entered` and source `maker-entry`, so that a report can tell it from a
 * default. Cutters, if given, replace the list.
 * @throws {MaterialsError} with code, place and remedy for the first entry that cannot be used
 */
export function mergeMaterials(book: MaterialsBook, overrides: MaterialsOverrides): MaterialsBook {
  return {
    ...book,
    woods: mergeTable('woods', book.woods, overrides.woods, mergeWood),
    sealers: mergeTable('sealers', book.sealers, overrides.sealers, mergeSealer),
    resins: mergeTable('resins', book.resins, overrides.resins, mergeResin),
    scales: { ...book.scales, ...enteredScales(overrides.scales ?? {}) },
    cutters: enteredCutters(overrides) ?? book.cutters,
  };
}

interface Entry {
  readonly like?: string;
  readonly name?: string;
}

function mergeTable<Row extends { readonly name: string }, E extends Entry>(
  table: string,
  rows: Readonly<Record<string, Row>>,
  entries: Readonly<Record<string, E>> | undefined,
  merge: (row: Row, entry: E, place: string) => Row,
): Readonly<Record<string, Row>> {
  const merged = new Map(Object.entries(rows));
  for (const [id, entry] of Object.entries(entries ?? {})) {
    const place = `${table}.${id}`;
    const from = entry.like ?? id;
    const start = merged.get(from);
    if (start === undefined) {
      const known = [...merged.keys()];
      throw entry.like === undefined
        ? new MaterialsError('new-needs-like', place, { known })
        : new MaterialsError('unknown-like', `${place}.like`, { like: entry.like, known });
    }
    const name = entry.name ?? (id === from ? start.name : id);
    merged.set(id, { ...merge(start, entry, place), name });
  }
  return Object.fromEntries(merged);
}

function mergeWood(wood: Wood, entry: WoodEntry, place: string): Wood {
  if (entry.lab) {
    checkPart(`${place}.lab`, entry.lab[0], 100, 'lightness');
  }
  return {
    ...wood,
    botanical: entry.botanical ?? wood.botanical,
    lab: entry.lab ? cited(entry.lab, 'entered', 'maker-entry') : wood.lab,
    bleedPriorMm: above(place, 'bleedPriorMm', entry.bleedPriorMm) ?? wood.bleedPriorMm,
    bleedAnalogy: entry.bleedPriorMm === undefined ? wood.bleedAnalogy : null,
    heartFactor: above(place, 'heartFactor', entry.heartFactor) ?? wood.heartFactor,
    sapFactor: above(place, 'sapFactor', entry.sapFactor) ?? wood.sapFactor,
    pores: entry.oily === undefined ? wood.pores : { ...wood.pores, oily: entry.oily },
  };
}

function mergeSealer(sealer: Sealer, entry: SealerEntry, place: string): Sealer {
  if (entry.curve) {
    checkCurve(`${place}.curve`, entry.curve);
  }
  if (entry.solids !== undefined) {
    checkPart(`${place}.solids`, entry.solids, 1, 'solids');
  }
  return {
    ...sealer,
    curve: entry.curve ? cited(entry.curve, 'entered', 'maker-entry') : sealer.curve,
    solids: entry.solids === undefined ? sealer.solids : cited(entry.solids, 'entered', 'maker-entry'),
    densityGPerMl: above(place, 'densityGPerMl', entry.densityGPerMl) ?? sealer.densityGPerMl,
    wetFilmMm: range(place, 'wetFilmMm', entry.wetFilmMm) ?? sealer.wetFilmMm,
    readyHours: range(place, 'readyHours', entry.readyHours) ?? sealer.readyHours,
  };
}

function mergeResin(resin: Resin, entry: ResinEntry, place: string): Resin {
  if (entry.potLifeMin !== undefined && entry.gelMin !== undefined && entry.gelMin < entry.potLifeMin) {
    throw new MaterialsError('conflict', `${place}.gelMin`, {
      gelMin: entry.gelMin,
      potLifeMin: entry.potLifeMin,
    });
  }
  const potLife = range(place, 'potLifeMin', entry.potLifeMin);
  return {
    ...resin,
    ...mergeRatio(resin, entry, place),
    viscosityPaS: range(place, 'viscosityPaS', entry.viscosityPaS) ?? resin.viscosityPaS,
    potLifeMin: potLife ?? resin.potLifeMin,
    // a label seldom gives the gel time of a thin layer: it then follows the pot life, with its band
    gelMin: range(place, 'gelMin', entry.gelMin) ?? (potLife === null ? resin.gelMin : thinGel(potLife)),
    hardHours: range(place, 'hardHours', entry.hardHours) ?? resin.hardHours,
    fullCureDays: range(place, 'fullCureDays', entry.fullCureDays) ?? resin.fullCureDays,
    ratioTolerancePct: above(place, 'ratioTolerancePct', entry.ratioTolerancePct) ?? resin.ratioTolerancePct,
    densityAGPerMl: above(place, 'densityAGPerMl', entry.densityAGPerMl) ?? resin.densityAGPerMl,
    densityBGPerMl: above(place, 'densityBGPerMl', entry.densityBGPerMl) ?? resin.densityBGPerMl,
    densityMixedGPerMl:
      range(place, 'densityMixedGPerMl', entry.densityMixedGPerMl) ?? resin.densityMixedGPerMl,
    deepestPourMm: range(place, 'deepestPourMm', entry.deepestPourMm) ?? resin.deepestPourMm,
    largestMixG: range(place, 'largestMixG', entry.largestMixG) ?? resin.largestMixG,
    minTempC: range(place, 'minTempC', entry.minTempC) ?? resin.minTempC,
    maxTempC: range(place, 'maxTempC', entry.maxTempC) ?? resin.maxTempC,
    shrinkagePct: shrinkage(place, entry.shrinkagePct) ?? resin.shrinkagePct,
  };
}

/**
 * A label that gives only one kind of ratio takes the default of the other kind away: they would contradict.
 */
function mergeRatio(
  resin: Resin,
  entry: ResinEntry,
  place: string,
): Pick<Resin, 'ratioByVolume' | 'ratioByWeight'> {
  const byVolume = ratio(`${place}.ratioByVolume`, entry.ratioByVolume);
  const byWeight = ratio(`${place}.ratioByWeight`, entry.ratioByWeight);
  if (byVolume === null && byWeight === null) {
    return { ratioByVolume: resin.ratioByVolume, ratioByWeight: resin.ratioByWeight };
  }
  return { ratioByVolume: byVolume, ratioByWeight: byWeight };
}

function ratio(place: string, value: MixRatio | undefined): Cited<MixRatio> | null {
  if (value === undefined) {
    return null;
  }
  checkAbove(`${place}.a`, value.a, 0);
  checkAbove(`${place}.b`, value.b, 0);
  return cited(value, 'entered', 'maker-entry');
}

function shrinkage(place: string, value: number | undefined): CitedRange | null {
  if (value === undefined) {
    return null;
  }
  checkAtLeast(`${place}.shrinkagePct`, value, 0);
  return citedRange(value, [value, value], 'entered', 'maker-entry');
}

function above(place: string, field: string, value: number | undefined): Cited | null {
  if (value === undefined) {
    return null;
  }
  checkAbove(`${place}.${field}`, value, 0);
  return cited(value, 'entered', 'maker-entry');
}

function range(place: string, field: string, value: number | undefined): CitedRange | null {
  const one = above(place, field, value);
  return one && { ...one, low: one.value, high: one.value };
}

function checkCurve(
  place: string,
  curve: readonly { readonly hours: number; readonly factor: number }[],
): void {
  let before = { hours: 0, factor: 1 };
  for (const [index, point] of curve.entries()) {
    checkAbove(`${place}[${index}].factor`, point.factor, 0);
    if (!(point.hours > before.hours && point.factor <= before.factor)) {
      throw new MaterialsError('curve-order', `${place}[${index}]`, { point, before });
    }
    before = point;
  }
}

function enteredScales(entries: Readonly<Record<string, ScaleEntry>>): Record<string, Scale> {
  return Object.fromEntries(
    Object.entries(entries).map(([id, { name, resolutionG, capacityG }]) => {
      const place = `scales.${id}`;
      checkAbove(`${place}.resolutionG`, resolutionG, 0);
      const most = above(place, 'capacityG', capacityG);
      return [
        id,
        {
          name,
          resolutionG: cited(resolutionG, 'entered', 'maker-entry'),
          ...(most === null ? {} : { capacityG: most }),
        },
      ];
    }),
  );
}

function enteredCutters(overrides: MaterialsOverrides): MaterialsBook['cutters'] | null {
  for (const [index, cutter] of (overrides.cutters ?? []).entries()) {
    checkAbove(`cutters[${index}].diameterMm`, cutter.diameterMm, 0);
    if (cutter.shape === 'vee' || cutter.shape === 'tapered-ball') {
      checkPart(`cutters[${index}].angleDeg`, cutter.angleDeg ?? 0, 180, 'angle');
    }
  }
  return overrides.cutters ? cited(overrides.cutters, 'entered', 'maker-entry') : null;
}
