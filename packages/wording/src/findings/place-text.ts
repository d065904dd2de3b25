import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import type { FindingPlace, PlaceKind } from '@pourproof/proof';

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
  spot: 'spot',
};

/** What a place is a part of, and how large that is: `stroke 44.00 mm long, 1.50 mm wide`. */
export function placeText(place: FindingPlace, unit: LengthUnit): string {
  return [NOUNS[place.what], sizeText(place, unit)].filter((part) => part !== '').join(' ');
}

/** Tips, corners and waists counted, as the subject of a sentence: `One tip`, `5 tips and 2 corners`. */
export function endsText(where: readonly FindingPlace[]): string {
  if (where.length === 1) {
    return `One ${NOUNS[where[0]?.what ?? 'tip']}`;
  }
  const kinds = [...new Set(where.map(({ what }) => what))].map((kind) => {
    const count = where.filter(({ what }) => what === kind).length;
    return `${count} ${NOUNS[kind]}${count === 1 ? '' : 's'}`;
  });
  return kinds.length === 1 ? (kinds[0] ?? '') : `${kinds.slice(0, -1).join(', ')} and ${kinds.at(-1)}`;
}

/** How large a place is; empty where that is not known. */
export function sizeText({ what, lengthMm, widthMm, areaMm2 }: FindingPlace, unit: LengthUnit): string {
  const length = lengthMm === undefined ? null : formatLength(lengthMm, unit);
  const width = widthMm === undefined ? null : formatLength(widthMm, unit);
  switch (what) {
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
      ].join(', ');
  }
}
