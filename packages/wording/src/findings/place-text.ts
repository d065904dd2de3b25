import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { Amount, FindingPlace, PlaceKind } from '@pourproof/proof';
import { besideLimit } from './amount-texts.ts';

const NOUNS: Readonly<Record<PlaceKind, string>> = {
  stroke: 'stroke',
  tip: 'tip',
  corner: 'corner',
  waist: 'waist',
  dot: 'dot',
  part: 'part',
  wood: 'wood',
  island: 'island',
  rim: 'rim',
  wall: 'wall',
  floor: 'floor',
  area: 'area',
  contact: 'contact',
  gap: 'gap',
  crossing: 'crossing',
  clamp: 'clamp',
  block: 'block',
  hole: 'hole',
  groove: 'groove',
  spot: 'spot',
};

/**
 * What a place is a part of, and how large that is: `stroke 44.00 mm long, 1.50 mm wide`.
 *
 * @param limit of its finding: a length that prints as this does and is not the same is said to be just under or over it
 */
export function placeText(place: FindingPlace, unit: LengthUnit, limit?: Amount): string {
  return [NOUNS[place.what], sizeText(place, unit, limit)].filter((part) => part !== '').join(' ');
}

/** Places counted by what they are, as the subject of a sentence: `One tip`, `5 tips and 2 corners`. */
export function partsText(where: readonly FindingPlace[]): string {
  if (where.length === 1) {
    return `One ${NOUNS[where[0]?.what ?? 'tip']}`;
  }
  const kinds = [...new Set(where.map(({ what }) => what))].map((kind) => {
    const count = where.filter(({ what }) => what === kind).length;
    return `${count} ${NOUNS[kind]}${count === 1 ? '' : 's'}`;
  });
  return kinds.length === 1 ? (kinds[0] ?? '') : `${kinds.slice(0, -1).join(', ')} and ${kinds.at(-1)}`;
}

function lengthText(mm: number, unit: LengthUnit, limit: Amount | undefined): string {
  const text = formatLength(mm, unit);
  return limit?.unit === 'mm'
    ? besideLimit(text, mm, { text: formatLength(limit.value, unit), value: limit.value })
    : text;
}

/** How large a place is; empty where that is not known. */
export function sizeText(
  { what, lengthMm, widthMm, areaMm2 }: FindingPlace,
  unit: LengthUnit,
  limit?: Amount,
): string {
  const said = (mm: number | undefined): string | null =>
    mm === undefined ? null : lengthText(mm, unit, limit);
  const [length, width] = [said(lengthMm), said(widthMm)];
  switch (what) {
    case 'waist':
      return [
        ...(width === null ? [] : [`${width} wide`]),
        ...(length === null ? [] : [`that keeps the bit ${length} off its walls`]),
      ].join(' ');
    case 'tip':
    case 'corner':
      return length === null ? '' : `that ends ${length} short`;
    case 'gap':
      return length === null
        ? ''
        : `of ${length}${areaMm2 === undefined ? '' : ` in an outline around ${formatArea(areaMm2, unit)}`}`;
    case 'dot':
    case 'island':
      return width === null ? '' : `${width} across`;
    case 'part':
    case 'floor':
    case 'area':
    case 'block':
      return areaMm2 === undefined ? '' : `of ${formatArea(areaMm2, unit)}`;
    default:
      return [
        ...(length === null ? [] : [`${length} long`]),
        ...(width === null ? [] : [`${width} ${what === 'wood' ? 'thick' : 'wide'}`]),
        ...(what === 'wood' && areaMm2 !== undefined ? [`of ${formatArea(areaMm2, unit)}`] : []),
      ].join(', ');
  }
}
