import { bitSize, bitText } from '@pourproof/job';
import { formatArea, formatLength, inchesFromMm, type LengthUnit, SPECK_AREA_MM2 } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { counted } from '../findings/parts-of-sentences.ts';
import { speedText } from './amounts.ts';
import { type Fact, fact } from './fact.ts';

const MM_PER_M = 1000;
const MIN_PER_H = 60;

type PerCutter = Report['cut']['perCutter'][number];
type Assumed = Report['cut']['time']['assumptions'][number];

/** What each bit adds, in how many places and in how long a time; and the time of all. */
export function cutterFacts({ cut, rounds }: Report, unit: LengthUnit): readonly Fact[] {
  // rounds have depths of their own, and each begins on a lower face
  const deepestMm = rounds === undefined ? cut.maxDepthMm : 0;
  const ridged = cut.ridgedFloorMm2 ?? 0;
  return [
    ...cut.perCutter.map((each, k) =>
      fact(
        `  by the ${bitText(each.cutter, unit)}`,
        formatArea(each.areaMm2, unit),
        `${added(each, k, unit)}${reach(each, deepestMm, unit)}${work(each, unit)}`,
      ),
    ),
    ...(ridged > 0
      ? [fact('Ridged floor', formatArea(ridged, unit), 'only tips and balls pass over it')]
      : []),
    cut.areaMm2 === 0
      ? fact('Cutting time', 'none', 'nothing will be cut')
      : fact(
          'Cutting time',
          formatMinutes(cut.time.minutes),
          `${assumed(cut.time.assumptions, unit)}${changes(cut)}${leftOut(cut.time, unit)}`,
        ),
  ];
}

function added({ areaMm2, floorMm2, places }: PerCutter, k: number, unit: LengthUnit): string {
  if (k === 0) {
    return '';
  }
  if (areaMm2 > 0) {
    return `more than the bits before it, in ${counted(places, 'place')}; `;
  }
  return floorMm2 >= SPECK_AREA_MM2
    ? `no more at the face, but it levels ${formatArea(floorMm2, unit)} of floor; `
    : 'no more at the face; ';
}

/** What a bit that ends above the floor reaches; those after it go on. */
function reach({ depthMm, passes }: PerCutter, deepestMm: number, unit: LengthUnit): string {
  return passes > 0 && depthMm < deepestMm ? `down to ${bitSize(depthMm, unit)}, as far as it reaches; ` : '';
}

function work({ minutes, pathMm, passes, retracts, isEstimated }: PerCutter, unit: LengthUnit): string {
  return passes === 0
    ? 'it has nothing to do'
    : `${isEstimated === true ? 'too much to plan, estimated from area and outline: ' : ''}${formatMinutes(minutes)} for ${pathText(pathMm, unit)} in ${counted(passes, 'pass', 'passes')}, ${counted(retracts, 'retract')}`;
}

/** Minutes, from two hours on hours, with sensible digits: a time of a plan is no better than that. */
export function formatMinutes(minutes: number): string {
  if (minutes >= 2 * MIN_PER_H) {
    const hours = minutes / MIN_PER_H;
    return `${hours < 10 ? hours.toFixed(1) : Math.round(hours)} h`;
  }
  return minutes < 1 ? 'under 1 min' : `${minutes < 10 ? minutes.toFixed(1) : Math.round(minutes)} min`;
}

/** How the values that a time rests on are told; those that no maker sets by hand are in the JSON only. */
const WORDS: Readonly<Partial<Record<Assumed['name'], (value: number, unit: LengthUnit) => string>>> = {
  feedMmPerMin: (value, unit) => `feed ${speedText(value, unit)}`,
  plungeMmPerMin: (value, unit) => `plunge ${speedText(value, unit)}`,
  rapidMmPerMin: (value, unit) => `travel ${speedText(value, unit)}`,
  stepoverPct: (value) => `stepover ${value} % of the tip`,
  passToDiameterPct: (value) => `passes as deep as ${value} % of the bit’s diameter`,
  passDepthMm: (value, unit) => `passes ${formatLength(value, unit)} deep`,
};

/** Floor that no bit is planned to clear. */
function leftOut({ floorLeftOutMm2 }: Report['cut']['time'], unit: LengthUnit): string {
  return floorLeftOutMm2 === undefined
    ? ''
    : `; passes of the tip over ${formatArea(floorLeftOutMm2, unit)} of floor are not included`;
}

/** The speeds that a time rests on, and where they come from. */
function assumed(assumptions: readonly Assumed[], unit: LengthUnit): string {
  const told = (from: Assumed['origin'], before: string): string[] => {
    const words = assumptions
      .filter(({ origin }) => origin === from)
      .flatMap(({ name, value }) => WORDS[name]?.(value, unit) ?? [])
      .join(', ');
    return words === '' ? [] : [`${before}${words}`];
  };
  return [
    ...told('given', ''),
    ...told('shop', 'of your shop '),
    ...told('common practice', 'by common practice '),
  ].join('; ');
}

/** What it takes to put the bits in, where the shop says so. */
function changes({ time, perCutter }: Report['cut']): string {
  if (time.changeMinutes !== undefined) {
    return `; plus ${formatMinutes(time.changeMinutes)} of your shop to put in the ${perCutter.length === 1 ? 'bit' : 'bits'}`;
  }
  return perCutter.length === 1 ? '' : ', plus bit changes';
}

/** The length of a path, as exact as it matters. */
function pathText(mm: number, unit: LengthUnit): string {
  if (unit === 'in') {
    return `${Math.round(inchesFromMm(mm))} in`;
  }
  return mm < MM_PER_M ? `${Math.round(mm)} mm` : `${(mm / MM_PER_M).toFixed(1)} m`;
}
