import type { Notice } from '@pourproof/plane';
import type * as HarfBuzz from 'harfbuzzjs';
import { legacyKern } from './legacy-kern.ts';
import type { FontAxis, LetteringFont } from './lettering-font.ts';
import { letteringNotice } from './lettering-notices.ts';
import { letteringRefusal } from './lettering-refusals.ts';
import type { OpenedFont } from './opened-font.ts';
import { outlineText } from './outline-text.ts';
import { faceCount, unpackFont, view } from './unpack-font.ts';

/**
 * Positions are asked of HarfBuzz in whole numbers; this many to a font unit keep them exact to 0.4 µm at 15
 * mm capitals.
 */
const SUBUNITS = 64;

/**
 * An H may differ from the stated cap height by this fraction before it is worth a notice (our choice: 0.3 mm
 * at 15 mm capitals).
 */
const CAP_HEIGHT_REL = 0.02;

/** How to open a font. */
export interface OpenFontOptions {
  /** Values of a variable font's axes by tag: `{ wght: 650 }`; others keep their default. */
  readonly axes?: Readonly<Record<string, number>>;
  /** Which face of a collection, from 0. */
  readonly faceIndex?: number;
}

/**
 * A font ready for setting text, from the bytes of a TrueType, OpenType, collection, WOFF or WOFF2 file.
 *
 * The shaping library is WebAssembly that sits beside its module and is loaded on the first call, so reading
 * of other artwork does not wait for it; no network beyond the program's own files is used.
 *
 * @throws {ArtworkError} `font-unreadable`, `font-truncated`, `font-without-outlines`,
 *   `font-without-characters`, `font-face-missing`, `font-axis-missing` or `font-axis-range`
 *
 * @example
 * ```ts
 * const font = await openFont(bytesOfFontFile, { axes: { wght: 650 } });
 * const drawing = readSvg(svg, { fonts: [font] }); // live text becomes outlines
 * ```
 */
export async function openFont(bytes: Uint8Array, options: OpenFontOptions = {}): Promise<LetteringFont> {
  const plain = await unpackFont(bytes);
  const { loadShaper } = await import('#load-shaper');
  const shaper = await loadShaper();
  const faces = faceCount(plain);
  const faceIndex = options.faceIndex ?? 0;
  if (!Number.isInteger(faceIndex) || faceIndex < 0 || faceIndex >= faces) {
    throw letteringRefusal('font-face-missing', { face: faceIndex, faces });
  }
  const face = new shaper.Face(new shaper.Blob(plain), faceIndex);
  checkContents(face);
  const shaped = new shaper.Font(face);
  const unitsPerEm = face.upem * SUBUNITS;
  shaped.setScale(unitsPerEm, unitsPerEm);
  const axes = setAxes(shaper, face, shaped, options.axes ?? {});
  const cap = capHeight(shaper, shaped);
  const extents = shaped.hExtents();
  const lineUnits = extents.ascender - extents.descender + extents.lineGap;
  const positioning = face.getTableFeatureTags('GPOS');
  const font: OpenedFont = {
    ...fontIdentity(face, options.axes?.wght),
    ...(cap === undefined ? {} : { capHeightEm: cap.units / unitsPerEm }),
    capHeightFrom: cap?.from ?? 'H',
    // fonts that state no height get the usual 1.2 em (common practice)
    lineEm: lineUnits > 0 ? lineUnits / unitsPerEm : 1.2,
    axes,
    notices: fontNotices(faces, options.faceIndex, cap),
    unitsPerEm,
    kern: positioning.includes('kern') ? new Map() : legacyKern(face.referenceTable('kern')),
    kernUnitsPerEm: face.upem,
    placesMarks: ['mark', 'abvm', 'blwm'].some((tag) => positioning.includes(tag)),
    shaper,
    shaped,
    outlineText: (text, options) => outlineText(font, text, options),
  };
  return font;
}

function checkContents(face: HarfBuzz.Face): void {
  const has = (tag: string): boolean => (face.referenceTable(tag)?.length ?? 0) > 0;
  if (!has('glyf') && !has('CFF ') && !has('CFF2')) {
    throw letteringRefusal('font-without-outlines', {});
  }
  if (!has('head') || face.collectUnicodes().length === 0) {
    throw letteringRefusal('font-without-characters', {});
  }
}

function setAxes(
  shaper: typeof HarfBuzz,
  face: HarfBuzz.Face,
  font: HarfBuzz.Font,
  wanted: Readonly<Record<string, number>>,
): readonly FontAxis[] {
  const axes = Object.entries(face.getAxisInfos()).map(([tag, info]) => ({
    tag,
    min: info.min,
    default: info.default,
    max: info.max,
  }));
  const settings = Object.entries(wanted).map(([tag, value]) => {
    const axis = axes.find((a) => a.tag === tag);
    if (!axis) {
      throw letteringRefusal('font-axis-missing', { tag, axes });
    }
    if (!(value >= axis.min && value <= axis.max)) {
      throw letteringRefusal('font-axis-range', { value, axis });
    }
    return new shaper.Variation(tag, value);
  });
  if (settings.length > 0) {
    font.setVariations(settings);
  }
  return axes;
}

interface CapHeight {
  readonly units: number;
  readonly from: 'OS/2' | 'H';
  /** Height of the outline of H, undefined when there is none. */
  readonly drawn?: number;
}

// the declared height moves with the axes (MVAR), which HarfBuzz takes into account
function capHeight(shaper: typeof HarfBuzz, font: HarfBuzz.Font): CapHeight | undefined {
  const declared = font.getMetricPosition(shaper.MetricsTag.CAP_HEIGHT);
  const glyph = font.nominalGlyph('H'.charCodeAt(0));
  const box = glyph === undefined ? undefined : font.glyphExtents(glyph);
  const drawn = box && box.height !== 0 ? box.yBearing : undefined;
  if (declared !== undefined && declared > 0) {
    return { units: declared, from: 'OS/2', ...(drawn === undefined ? {} : { drawn }) };
  }
  if (drawn !== undefined && drawn > 0) {
    return { units: drawn, from: 'H', drawn };
  }
  return undefined;
}

function fontNotices(
  faces: number,
  faceIndex: number | undefined,
  cap: CapHeight | undefined,
): readonly Notice[] {
  const notices: Notice[] = [];
  if (faces > 1 && faceIndex === undefined) {
    notices.push(letteringNotice('lettering-first-face', { faces }));
  }
  const ratio = cap?.drawn === undefined ? 1 : cap.drawn / cap.units;
  if (Math.abs(ratio - 1) > CAP_HEIGHT_REL) {
    notices.push(letteringNotice('lettering-cap-height', { ratio }));
  }
  return notices;
}

// name records 16 and 17 are the family and style as typographers group them, 1 and 2 the older four-style
// grouping; OS/2 has the weight class at byte 4 and the style bits at byte 62, of which bit 0 is italic and
// bit 9 oblique
function fontIdentity(
  face: HarfBuzz.Face,
  weightAxis: number | undefined,
): Pick<LetteringFont, 'name' | 'family' | 'weight' | 'italic'> {
  const record = (id: number): string => face.getName(id, 'en');
  const family = record(16) || record(1) || 'unnamed font';
  const style = record(17) || record(2);
  const os2 = face.referenceTable('OS/2') ?? new Uint8Array();
  const known = os2.length >= 64;
  return {
    name: style === '' ? family : `${family} ${style}`,
    family,
    weight: weightAxis ?? (known ? view(os2).getUint16(4) : 400),
    italic: known && (view(os2).getUint16(62) & 0x201) !== 0,
  };
}
