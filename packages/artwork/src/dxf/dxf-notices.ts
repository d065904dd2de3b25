import { formatLength, type LengthUnit, type Notice, type NoticePlace } from '@pourproof/plane';
import { TWIN_MM } from '../chains/distinct-rings.ts';
import { lengthText } from '../length-text.ts';
import { listed, NoticeBook, type Tally } from '../notice-book.ts';
import { assumed, caution, changed, leftOut, makeNotice, type NoticeKind, note } from '../notice-kind.ts';

/** What can occur several times in a DXF file; each is explained in docs/unsupported.md. */
export type DxfNoticeCode =
  | 'areas-in-outlines'
  | 'bad-number'
  | 'branching-outline'
  | 'broken-hatch'
  | 'broken-spline'
  | 'crossed-solid'
  | 'definition-points'
  | 'doubled-line'
  | 'doubled-outline'
  | 'entity-not-taken'
  | 'hatch-pattern'
  | 'hidden-layer'
  | 'infinite-line'
  | 'invisible-entity'
  | 'layer-not-plotted'
  | 'layers-overlap'
  | 'missing-block'
  | 'nearly-doubled-outline'
  | 'paper-space'
  | 'point-without-size'
  | 'recursive-block'
  | 'spline-through-points'
  | 'text-in-given-font'
  | 'text-not-outlined'
  | 'tilted-plane'
  | 'zero-size';

/** Parameters that the three notices of an assumed unit share. */
export type AssumedUnit = {
  /** The value of `$INSUNITS`; `''` where there is none or it cannot be read. */
  readonly insertUnits: number | '';
  readonly hasHeader: 'yes' | 'no';
  /** Size of the artwork with drawing units taken as millimetres, and as inches. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly widthIfInchMm: number;
  readonly heightIfInchMm: number;
  readonly used: 'mm' | 'inches';
};

/** Parameters of what occurs at most once in a reading. */
export interface DxfSingleParams {
  'far-from-origin': { readonly rightMm: number; readonly downMm: number };
  'file-damaged': { readonly line: number };
  'gap-closed': { readonly count: number; readonly largestMm: number; readonly toleranceMm: number };
  'loose-line': { readonly count: number };
  'missing-end': Readonly<Record<string, never>>;
  'open-outline': {
    readonly count: number;
    readonly toleranceMm: number;
    /** Smallest gap between two loose ends. */
    readonly smallestGapMm: number;
  };
  'unit-missing': AssumedUnit;
  'unit-unknown': AssumedUnit;
  unitless: AssumedUnit;
  /** `codePage` is `''` where the file is not the UTF-8 that its version calls for. */
  'unknown-encoding': { readonly codePage: string };
}

/** The notices of the entities of a DXF file as they are collected. */
export type DxfNotices = NoticeBook<DxfNoticeCode>;

/** An empty book for the notices of one reading. */
export function dxfNotices(): DxfNotices {
  return new NoticeBook(DXF_NOTICES);
}

/** A notice that occurs at most once. */
export function dxfNotice<C extends keyof DxfSingleParams & string>(
  code: C,
  params: DxfSingleParams[C],
  where: readonly NoticePlace[] = [],
): Notice {
  return makeNotice(code, SINGLES[code], params, where);
}

const SINGLES: { readonly [C in keyof DxfSingleParams]: NoticeKind<DxfSingleParams[C]> } = {
  'far-from-origin': note(
    (p, unit) =>
      `The artwork lies far from the origin of the drawing and was moved by ${formatLength(p.rightMm, unit)} to the right and ${formatLength(p.downMm, unit)} down. All places are given as moved.`,
  ),
  'file-damaged': leftOut(
    (p) => `The file is damaged at line ${p.line}; nothing after it was read. Export the drawing again.`,
  ),
  'gap-closed': note(
    (p, unit) =>
      `${p.count === 1 ? 'One gap' : `${p.count} gaps`} between line ends ${was(p.count)} closed by a straight line; the largest is ${lengthText(p.largestMm, unit)} (limit ${lengthText(p.toleranceMm, unit)}).`,
  ),
  'loose-line': leftOut(
    ({ count: n }) =>
      `${one(n, 'line')} ${n === 1 ? 'bounds' : 'bound'} nothing and ${was(n)} left out. If ${n === 1 ? 'it is' : 'they are'} to be carved, give ${n === 1 ? 'it' : 'them'} a width, or draw the outline.`,
  ),
  'missing-end': leftOut(
    () => 'The file has no end mark, so it may have been cut off. Compare the picture with the drawing.',
  ),
  'open-outline': leftOut(
    ({ count: n, toleranceMm, smallestGapMm }, unit) =>
      `${one(n, 'outline')} ${n === 1 ? 'does' : 'do'} not close within ${lengthText(toleranceMm, unit)} and ${was(n)} left out with what ${n === 1 ? 'it bounds' : 'they bound'}; the smallest gap is ${lengthText(smallestGapMm, unit)}. Close ${n === 1 ? 'it' : 'them'} in a drawing program, or allow a larger joining tolerance.`,
  ),
  'unit-missing': assumed(
    (p, unit) =>
      `${p.hasHeader === 'yes' ? 'The header of the file has no unit ($INSUNITS)' : 'The file has no header'}, so its numbers could be millimetres or inches. ${readings(p, unit)}`,
  ),
  'unit-unknown': assumed(
    (p, unit) =>
      `The file names a unit that does not exist ($INSUNITS ${p.insertUnits === '' ? 'cannot be read' : `is ${p.insertUnits}`}). ${readings(p, unit)}`,
  ),
  unitless: assumed(
    (p, unit) => `The file says that its numbers have no unit ($INSUNITS 0). ${readings(p, unit)}`,
  ),
  'unknown-encoding': note(
    (p) =>
      `${p.codePage === '' ? 'By its version the file should be UTF-8, but it is not; it was read as Western European.' : `The file is in code page ${p.codePage}, which is not supported.`} Letters beyond A–Z in layer names and texts may be wrong; shapes are not affected.`,
  ),
};

function readings(p: AssumedUnit, unit: LengthUnit): string {
  const size = (width: number, height: number): string =>
    `${formatLength(width, unit)} × ${formatLength(height, unit)}`;
  return `In millimetres the artwork measures ${size(p.widthMm, p.heightMm)}, in inches ${size(p.widthIfInchMm, p.heightIfInchMm)}; it was read in ${p.used === 'mm' ? 'millimetres' : 'inches'}. To be sure, give the unit, a width, a height or a scale.`;
}

const one = (count: number, noun: string, many = `${noun}s`): string =>
  count === 1 ? `One ${noun}` : `${count} ${many}`;
const entities = (count: number): string => one(count, 'entity', 'entities');
const was = (count: number): string => (count === 1 ? 'was' : 'were');
const list = (tally: Tally): string => listed(tally, 12);

/** Severity and text of everything that can occur several times. */
export const DXF_NOTICES: Readonly<Record<DxfNoticeCode, NoticeKind<Tally>>> = {
  'areas-in-outlines': caution(
    (t) =>
      `Filled areas (hatches, solids, wide lines) lie within the extent of outlines: ${list(t)}. Closed outlines count as filled too, so such areas may add nothing. Leave out, or turn off, what is not to be carved.`,
  ),
  'bad-number': leftOut(
    ({ count: n }) =>
      `${entities(n)} with a number that cannot be read, or is beyond 1000 km, ${was(n)} left out. Export the drawing again.`,
  ),
  'branching-outline': changed(
    ({ count: n }) =>
      `An odd number of lines meet at ${one(n, 'point').toLowerCase()}, so inside and outside cannot be told apart by even-odd; every closed cell there was filled. Split such a figure into closed outlines.`,
  ),
  'broken-hatch': leftOut(
    ({ count: n }) =>
      `The boundary of ${one(n, 'hatch', 'hatches').toLowerCase()} does not close, so ${n === 1 ? 'it' : 'they'} could be read only in part or not at all. Draw the boundary as closed polylines.`,
  ),
  'broken-spline': leftOut(
    (t) =>
      `${one(t.count, 'spline')} cannot be computed and ${was(t.count)} left out: ${list(t)}. Convert to polylines in a drawing program.`,
  ),
  'crossed-solid': note(
    ({ count: n }) =>
      `${one(n, 'SOLID')} with swapped corners ${n === 1 ? 'crosses itself' : 'cross themselves'} and ${was(n)} filled as the two triangles that the file describes. If you mean a full quadrilateral, swap the last two corners.`,
  ),
  'definition-points': note(
    ({ count: n }) => `${entities(n)} on the layer of definition points (Defpoints) ${was(n)} left out.`,
  ),
  'doubled-line': caution(
    ({ count: n }) => `${one(n, 'line')} lying on other lines ${was(n)} merged with them.`,
  ),
  'doubled-outline': caution(
    ({ count: n }) =>
      `${one(n, 'outline')} drawn twice in the same place ${was(n)} read once. A machine would cut such lines twice.`,
  ),
  'entity-not-taken': leftOut(
    (t) =>
      `Entities that are not supported were left out: ${list(t)}. If they are to be carved, explode them into lines, arcs and polylines in a drawing program.`,
  ),
  'hatch-pattern': note(
    ({ count: n }) =>
      `${one(n, 'hatch', 'hatches')} with a line pattern ${was(n)} read as a full area; the lines of the pattern are not carved one by one.`,
  ),
  'hidden-layer': leftOut(
    (t) =>
      `${entities(t.count)} on layers that are off or frozen ${was(t.count)} left out: ${list(t)}. Turn the layers on if they are to be carved.`,
  ),
  'infinite-line': note(
    ({ count: n }) =>
      `${one(n, 'construction line')} without end (RAY, XLINE) ${n === 1 ? 'bounds' : 'bound'} nothing and ${was(n)} left out.`,
  ),
  'invisible-entity': note(({ count: n }) => `${entities(n)} marked as invisible ${was(n)} left out.`),
  // a program shows such layers on the screen, so that they may be meant
  'layer-not-plotted': leftOut(
    (t) =>
      `${entities(t.count)} on layers that are not plotted ${was(t.count)} left out: ${list(t)}. Let the layers be plotted if they are to be carved.`,
  ),
  'layers-overlap': caution(
    (t) =>
      `Outlines lie within the extent of another layer or colour: ${list(t)}. Each layer is an area of its own, so they make no holes there. If they are meant as holes, put them on the same layer in the same colour.`,
  ),
  'missing-block': leftOut(
    (t) =>
      `The file inserts blocks that it does not contain: ${list(t)}. Bind or embed external references and export again.`,
  ),
  'nearly-doubled-outline': caution(
    ({ count: n }, unit) =>
      `${one(n, 'outline')} ${n === 1 ? 'runs' : 'run'} within ${lengthText(TWIN_MM, unit)} of another all along. By even-odd only the thin frame between them is filled. If they are the same outline drawn twice, delete one.`,
  ),
  'paper-space': note(
    ({ count: n }) =>
      `${entities(n)} in paper space (sheet borders and the like) ${was(n)} left out; only the model is carved.`,
  ),
  'point-without-size': note(
    ({ count: n }) =>
      `${one(n, 'point')} (POINT) ${n === 1 ? 'covers' : 'cover'} nothing and ${was(n)} left out.`,
  ),
  'recursive-block': leftOut(
    (t) => `Blocks that contain themselves were cut off where they repeat: ${list(t)}.`,
  ),
  'spline-through-points': note(
    ({ count: n }) =>
      `${one(n, 'spline')} ${n === 1 ? 'has' : 'have'} no usable control points and ${was(n)} drawn as the smooth curve through ${n === 1 ? 'its' : 'their'} fit points; the drawing program may shape it slightly differently.`,
  ),
  'text-in-given-font': note(
    (t) =>
      `${one(t.count, 'text')} ${was(t.count)} set in the given font (${t.details.join(', ')}); the drawing program may have used another, so widths can differ.`,
  ),
  'text-not-outlined': leftOut(
    (t) =>
      `${one(t.count, 'text')} ${was(t.count)} left out, since a DXF file holds letters but not their outlines: ${list(t)}. Give a font, or convert text to curves in a drawing program.`,
  ),
  'tilted-plane': changed(
    ({ count: n }) =>
      `${entities(n)} drawn in a tilted plane ${was(n)} read as seen from above, and so ${n === 1 ? 'is' : 'are'} foreshortened.`,
  ),
  'zero-size': note(({ count: n }) => `${entities(n)} without size ${was(n)} left out.`),
};
