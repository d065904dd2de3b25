import {
  formatLength,
  inchesFromMm,
  type LengthUnit,
  type Notice,
  type NoticePlace,
  SPECK_AREA_MM2,
} from '@pourproof/plane';
import { lengthText, sizeText } from '../length-text.ts';
import { listed, type Tally } from '../notice-book.ts';
import {
  assumed,
  caution,
  changed,
  counted,
  leftOut,
  makeNotice,
  type NoticeKind,
  note,
} from '../notice-kind.ts';
import { FINE_SEGMENT_MM, HAIRLINE_MM } from './svg-limits.ts';

/** What can occur several times in an SVG file; each is explained in docs/unsupported.md. */
export type SvgNoticeCode =
  | 'animation-ignored'
  | 'broken-reference'
  | 'clip-unknown'
  | 'dashes-too-fine'
  | 'doubled-shape'
  | 'embedded-picture'
  | 'external-reference'
  | 'filter-ignored'
  | 'fine-detail'
  | 'foreign-content'
  | 'gap-closed'
  | 'gradient-fill'
  | 'hairline-stroke'
  | 'hidden-elements'
  | 'invisible-paint'
  | 'length-unreadable'
  | 'likely-knock-out'
  | 'mask-ignored'
  | 'namespace-undeclared'
  | 'nothing-painted'
  | 'number-too-large'
  | 'open-outline'
  | 'outside-page'
  | 'packed-damaged'
  | 'page-background'
  | 'page-size-zero'
  | 'paint-covers-paint'
  | 'paper-left-out'
  | 'path-data-error'
  | 'pattern-fill'
  | 'reference-cycle'
  | 'script-ignored'
  | 'short-segments'
  | 'speck'
  | 'stroke-join-arcs'
  | 'style-not-taken'
  | 'style-skipped'
  | 'switch-choice'
  | 'text-in-given-font'
  | 'text-not-outlined'
  | 'text-simplified'
  | 'transform-ignored'
  | 'translucent-paint'
  | 'unknown-element'
  | 'value-unreadable';

/** Parameters of what occurs at most once in a reading. */
export interface SvgSingleParams {
  'artwork-huge': { readonly widthMm: number; readonly heightMm: number };
  'artwork-tiny': { readonly widthMm: number; readonly heightMm: number };
  'encoding-differs': { readonly declared: string; readonly read: string };
  'size-assumed': {
    /** What the file does say of its size. */
    readonly source: string;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly pxPerInch: number;
    readonly scale: number;
    /** The usual readings: pixels per inch, and the width and height that each would give. */
    readonly ratesPxPerInch: readonly number[];
    readonly widthsMm: readonly number[];
    readonly heightsMm: readonly number[];
  };
  'size-differs': {
    readonly askedWidthMm: number;
    readonly askedHeightMm: number;
    readonly widthMm: number;
    readonly heightMm: number;
  };
}

/** A notice that occurs at most once. */
export function svgNotice<C extends keyof SvgSingleParams & string>(
  code: C,
  params: SvgSingleParams[C],
  where: readonly NoticePlace[] = [],
): Notice {
  return makeNotice(code, SINGLES[code], params, where);
}

const SINGLES: { readonly [C in keyof SvgSingleParams]: NoticeKind<SvgSingleParams[C]> } = {
  'artwork-huge': caution(
    (p, unit) =>
      `The artwork measures ${sizeText(p.widthMm, p.heightMm, unit)}, more than any board is likely to. Check the unit, or give the size wanted.`,
  ),
  'artwork-tiny': caution(
    (p, unit) =>
      `The artwork measures only ${sizeText(p.widthMm, p.heightMm, unit)}. Check the unit, or give the size wanted.`,
  ),
  'encoding-differs': note(
    (p) =>
      `The file declares the encoding ${p.declared}, but its bytes are ${p.read}; it was read as ${p.read}.`,
  ),
  'size-assumed': assumed(
    (p, unit) =>
      `The file does not state its size in a physical unit (${p.source}). The artwork would measure ${p.ratesPxPerInch.map((rate, k) => `${exactSize(p.widthsMm[k] as number, p.heightsMm[k] as number, unit)} at ${rate}`).join(', ')} px per inch; ${p.pxPerInch} was used${p.scale === 1 ? '' : `, times ${p.scale}`}. To be sure, give a width, a height or a scale.`,
  ),
  'size-differs': changed(
    (p, unit) =>
      `The artwork does not have the proportions of ${exactSize(p.askedWidthMm, p.askedHeightMm, unit)}; it was fitted into that size and measures ${exactSize(p.widthMm, p.heightMm, unit)}.`,
  ),
};

/** An area smaller than any cutter leaves. */
function speckText(unit: LengthUnit): string {
  const area = unit === 'mm' ? SPECK_AREA_MM2 : inchesFromMm(inchesFromMm(SPECK_AREA_MM2));
  return `${Number(area.toPrecision(3))} ${unit}²`;
}

/** Width and height to the digits that a shop can use. */
function exactSize(widthMm: number, heightMm: number, unit: LengthUnit): string {
  return `${formatLength(widthMm, unit)} × ${formatLength(heightMm, unit)}`;
}

const is = (n: number): string => (n === 1 ? 'is' : 'are');
const was = (n: number): string => (n === 1 ? 'was' : 'were');
const it = (n: number): string => (n === 1 ? 'it' : 'them');
const list = (tally: Tally): string => listed(tally, 5);

/** Severity and text of everything that can occur several times. */
export const SVG_NOTICES: Readonly<Record<SvgNoticeCode, NoticeKind<Tally>>> = {
  'animation-ignored': note(
    ({ count: n }) => `${counted(n, 'animation')} ${is(n)} ignored; the drawing is read without ${it(n)}.`,
  ),
  'broken-reference': leftOut(
    (t) => `${counted(t.count, 'reference')} to something that the file does not contain: ${list(t)}.`,
  ),
  'clip-unknown': changed(
    (t) =>
      `${counted(t.count, 'clip path')} of a kind that is not supported ${was(t.count)} ignored: ${list(t)}.`,
  ),
  'dashes-too-fine': changed(
    ({ count: n }) =>
      `${counted(n, 'stroke')} ${n === 1 ? 'has' : 'have'} too many or too fine dashes to cut and ${is(n)} drawn without gaps.`,
  ),
  'doubled-shape': caution(
    (t) =>
      `${counted(t.count, 'shape')} ${t.count === 1 ? 'lies' : 'lie'} exactly on top of another: ${list(t)}. Such shapes count once; delete the copies.`,
  ),
  'embedded-picture': leftOut(
    ({ count: n }) =>
      `${counted(n, 'picture')} ${is(n)} left out: only drawn shapes can be carved. Trace ${it(n)} in a drawing program.`,
  ),
  'external-reference': leftOut(
    (t) =>
      `${counted(t.count, 'reference')} to other files, which are never read: ${list(t)}. Embed the parts in the drawing.`,
  ),
  'filter-ignored': changed(
    (t) =>
      `${counted(t.count, 'filter effect')} ${is(t.count)} ignored; the shapes are read without ${it(t.count)}: ${list(t)}.`,
  ),
  'fine-detail': note(
    (_, unit) =>
      `The outlines have more points than most machines can follow: half of their segments are shorter than ${lengthText(FINE_SEGMENT_MM, unit)}. Simplify the paths if the machine stutters.`,
  ),
  'foreign-content': leftOut(
    ({ count: n }) => `${counted(n, 'part')} of the file ${is(n)} not SVG (foreignObject) and left out.`,
  ),
  'gap-closed': note(
    ({ count: n, maxMm }, unit) =>
      `${counted(n, 'filled outline')} ${is(n)} open by a hair, ${lengthText(maxMm, unit)} at most, and ${was(n)} closed by a straight line.`,
  ),
  'gradient-fill': note(
    ({ count: n }) =>
      `${counted(n, 'shape')} ${is(n)} painted with a gradient and ${n === 1 ? 'counts' : 'count'} as painted in its first colour.`,
  ),
  'hairline-stroke': caution(
    ({ count: n, minMm }, unit) =>
      `${counted(n, 'stroke')} ${is(n)} thinner than ${lengthText(HAIRLINE_MM, unit)} (the thinnest ${lengthText(minMm, unit, 2)}). Such strokes are usually meant as mere outlines: give them a real width or remove them.`,
  ),
  'hidden-elements': note(
    ({ count: n }) =>
      `${counted(n, 'element')} ${is(n)} hidden (display or visibility) and not part of the artwork.`,
  ),
  'invisible-paint': note(
    ({ count: n }) =>
      `${counted(n, 'shape or group', 'shapes or groups')} with opacity 0 ${is(n)} not part of the artwork.`,
  ),
  'length-unreadable': leftOut(
    (t) =>
      `${counted(t.count, 'length or number', 'lengths or numbers')} cannot be used as written and ${is(t.count)} taken as not given, so shapes may be missing or of another size: ${list(t)}. Write numbers with a point, units without a space, and sizes of 0 or more.`,
  ),
  'likely-knock-out': caution(
    ({ count: n }) =>
      `${counted(n, 'white shape')} on top of darker ones ${n === 1 ? 'looks' : 'look'} as if meant to leave wood standing, but ${n === 1 ? 'counts' : 'count'} as artwork. Carve only what is visible, or cut the holes in a drawing program.`,
  ),
  'mask-ignored': changed(
    (t) =>
      `${counted(t.count, 'mask')} ${is(t.count)} ignored, since only masks of plain black and white are supported; what ${t.count === 1 ? 'it hides' : 'they hide'} counts as painted: ${list(t)}. Use a clip path, or cut the shapes in a drawing program.`,
  ),
  'namespace-undeclared': note(
    (t) => `The file uses the prefix "${list(t)}" without declaring it; it was read all the same.`,
  ),
  'nothing-painted': caution(() => 'The file paints nothing that could be carved.'),
  'number-too-large': leftOut(
    (t) =>
      `${counted(t.count, 'shape')} ${t.count === 1 ? 'lies' : 'lie'} more than 1000 km away, or cannot be computed, and ${is(t.count)} left out: ${list(t)}. Check the numbers in the file.`,
  ),
  'open-outline': caution(
    ({ count: n, maxMm }, unit) =>
      `${counted(n, 'filled outline')} ${is(n)} open and ${was(n)} closed by a straight line, as SVG fills them; the largest gap is ${lengthText(maxMm, unit)}. If that is not the shape you mean, close the outlines in the drawing.`,
  ),
  'outside-page': caution(
    ({ count: n, maxMm }, unit) =>
      `${counted(n, 'shape')} ${n === 1 ? 'extends' : 'extend'} beyond the page, where a viewer shows nothing, by up to ${lengthText(maxMm, unit)}. That counts as artwork; delete what you do not want.`,
  ),
  'packed-damaged': changed(
    () =>
      'The file is compressed, and what it holds does not match its checksum: it is damaged, and shapes may be missing or changed. Export the drawing again.',
  ),
  'page-background': caution(
    (t) =>
      `A shape the size of the page (${list(t)}) lies beneath the rest and counts as artwork. Delete it if it is only a background.`,
  ),
  'page-size-zero': assumed(
    ({ details }) =>
      `The ${details.join(' and ')} of the page is 0, so a viewer shows nothing. It was read as if it were not given.`,
  ),
  'paint-covers-paint': note(
    ({ count: n }) =>
      `${counted(n, 'shape')} ${n === 1 ? 'lies' : 'lie'} on top of shapes of another colour. All of it counts as one artwork; to give each colour only what is visible of it, carve what is visible.`,
  ),
  'paper-left-out': note(
    ({ count: n }) =>
      `${counted(n, 'white shape')} ${was(n)} taken for paper: ${n === 1 ? 'it hides' : 'they hide'} what lies beneath and ${is(n)} not carved.`,
  ),
  'path-data-error': leftOut(
    (t) =>
      `The data of ${counted(t.count, 'shape')} contains an error and is drawn only up to it: ${list(t)}. Export the drawing again.`,
  ),
  'pattern-fill': note(
    ({ count: n }) =>
      `${counted(n, 'shape')} ${is(n)} painted with a pattern; the whole area counts as painted.`,
  ),
  'reference-cycle': leftOut(
    (t) =>
      `${counted(t.count, 'element')} ${t.count === 1 ? 'refers to itself' : 'refer to themselves'}, directly or through others, and ${is(t.count)} not drawn there: ${list(t)}.`,
  ),
  'script-ignored': note(
    ({ count: n }) => `${counted(n, 'script')} ${is(n)} ignored; scripts are never run.`,
  ),
  'short-segments': note(
    ({ count: n, maxMm }, unit) =>
      `${counted(n, 'shape')} ${n === 1 ? 'has' : 'have'} segments shorter than the tolerance of ${lengthText(maxMm, unit)}.`,
  ),
  speck: caution(
    ({ count: n }, unit) =>
      `${counted(n, 'shape')} ${is(n)} smaller than ${speckText(unit)}: stray marks in the drawing, or detail that no cutter can reach.`,
  ),
  'stroke-join-arcs': note(
    ({ count: n }) =>
      `${counted(n, 'stroke')} ${n === 1 ? 'asks' : 'ask'} for line joins of the kind "arcs", which are drawn as miters.`,
  ),
  'style-not-taken': changed(
    (t) =>
      `${counted(t.count, 'part')} of the style sheets ${is(t.count)} of a kind that is not taken, so shapes may be painted otherwise than drawn: ${list(t)}. Write the styles into the elements.`,
  ),
  'style-skipped': note(
    (t) => `${counted(t.count, 'part')} of the style sheets ${was(t.count)} ignored: ${list(t)}.`,
  ),
  'switch-choice': note(
    ({ count: n }) => `For ${counted(n, 'switch element')} the version of the drawing for English was read.`,
  ),
  'text-in-given-font': note(
    (t) =>
      `${counted(t.count, 'text')} ${is(t.count)} set in the given font, ${t.details.join(', ')}, although the drawing asks for another family.`,
  ),
  'text-not-outlined': leftOut(
    (t) =>
      `${counted(t.count, 'text')} ${is(t.count)} not part of the artwork, since no font was given: ${list(t)}. Convert text to outlines in a drawing program, or give a font.`,
  ),
  'text-simplified': changed(
    (t) =>
      `${counted(t.count, 'text')} could be set only in part: ${list(t)}. To be sure, convert text to outlines in a drawing program.`,
  ),
  'transform-ignored': changed(
    (t) =>
      `${counted(t.count, 'transform')} could not be read and ${was(t.count)} ignored, as SVG requires: ${list(t)}.`,
  ),
  'translucent-paint': note(
    ({ count: n }) =>
      `${counted(n, 'shape')} ${is(n)} partly transparent and ${n === 1 ? 'counts' : 'count'} as fully painted.`,
  ),
  'unknown-element': leftOut(
    (t) =>
      `${counted(t.count, 'element')} of an unknown kind ${t.count === 1 ? 'paints' : 'paint'} nothing: ${list(t)}.`,
  ),
  'value-unreadable': changed(
    (t) =>
      `${counted(t.count, 'colour or other value', 'colours or other values')} cannot be used as written and ${is(t.count)} taken as not given, so shapes may be painted otherwise than drawn: ${list(t)}. Write colours as #rrggbb, and give every variable of the style sheet a value.`,
  ),
};
