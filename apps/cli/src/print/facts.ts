import { formatArea, formatLength, type LengthUnit } from '@pourproof/plane';
import { bitSize, type Job, type Report } from '@pourproof/proof';
import { formatPercent, formatShare } from './amounts.ts';

/** A line of a table: what, how much, and a remark. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly remark: string;
}

/** Words for the verdict, without a full stop. */
export const VERDICT_WORDS: Readonly<Record<Report['verdict'], string>> = {
  clear: 'Nothing here speaks against cutting it',
  caution: 'It can be cut, but read the cautions first',
  stop: 'Do not cut it yet',
};

/** The job in words; what the maker did not give is marked as a default. */
export function jobFacts(job: Job): readonly Fact[] {
  const { units } = job;
  const row = (name: string, value: string, ...keys: readonly string[]): Fact => ({
    name,
    value,
    remark: keys.every((key) => job.defaults.includes(key)) ? 'default' : '',
  });
  const bits = job.bits.map(
    (bit) => `${bitSize(bit.kind === 'taper' ? bit.tipDiameterMm : bit.diameterMm, units)} ${bit.kind}`,
  );
  const seal = job.rows.seal.name;
  return [
    row(job.bits.length === 1 ? 'Bit' : 'Bits, in order', bits.join(', then '), 'bit'),
    row('Depth', bitSize(job.depthMm, units), 'depth'),
    ...(job.board === null
      ? [row('Wood', job.rows.wood.name, 'wood'), row('Fibres', fibres(job), 'grain', 'dive')]
      : [fact('Board', boardText(job, job.board), '')]),
    row(
      'Seal',
      job.seal === 'none' || job.coats === 0
        ? 'none'
        : `${seal}, ${job.coats === 1 ? '1 coat' : `${job.coats} coats`}, ${amount(job.sealHours)} h before the pour`,
      'seal',
    ),
    row('Resin', job.rows.resin.name, 'resin'),
    row('Levelling', `takes ${formatLength(job.levelMm, units)} off the face`, 'level'),
  ];
}

function boardText({ materials, turnDeg, units }: Job, board: NonNullable<Job['board']>): string {
  const woods = [...new Set(board.blocks.map(({ wood }) => materials.woods[wood]?.name ?? wood))];
  const size = [board.widthMm, board.heightMm, board.thicknessMm].map((mm) => bitSize(mm, units)).join(' × ');
  const blocks = `${board.blocks.length} ${board.blocks.length === 1 ? 'block' : 'blocks'} of ${woods.join(' and ')}`;
  return `${size}, ${blocks}; the artwork turned by ${amount(turnDeg)}°`;
}

function fibres({ grainDeg, diveDeg }: Job): string {
  const onFace = `${amount(grainDeg)}° on the face`;
  return diveDeg === 0 ? onFace : `${onFace}, diving ${amount(diveDeg)}° into it`;
}

function amount(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** What will be cut and what not, in one sentence each. */
export function cutSentences(report: Report, unit: LengthUnit): readonly string[] {
  const { artwork, cut, strokes } = report;
  const sentences = [
    `Of ${formatArea(artwork.areaMm2, unit)} drawn, ${formatArea(cut.areaMm2, unit)} will be cut (${formatShare(cut.areaMm2, artwork.areaMm2)}), ${bitSize(cut.maxDepthMm, unit)} deep.`,
    `${formatArea(cut.leftStandingMm2, unit)} of it stays wood, because no bit of the job fits there; the round inside corners that any bit leaves are counted in.`,
  ];
  if (strokes.lengthNarrowerThanBitMm > 0) {
    sentences.push(
      `${formatLength(strokes.lengthNarrowerThanBitMm, unit)} of ${formatLength(strokes.lengthMm, unit)} of stroke is narrower than the smallest bit.`,
    );
  }
  return sentences;
}

/** The measures of artwork, cut, strokes and end grain. */
export function measureFacts(report: Report, unit: LengthUnit): readonly Fact[] {
  const { artwork, cut, strokes, endGrain } = report;
  const [left, top, right, bottom] = artwork.boundsMm;
  const narrowest = strokes.narrowestMm;
  return [
    fact(
      'Artwork',
      formatArea(artwork.areaMm2, unit),
      `${artwork.regions} separate, ${artwork.holes} inside holes`,
    ),
    fact(
      'Size',
      `${formatLength(right - left, unit)} × ${formatLength(bottom - top, unit)}`,
      `size from ${artwork.scaleSource}`,
    ),
    fact('Cut', formatArea(cut.areaMm2, unit), `± ${formatArea(cut.errorBound.areaMm2, unit)} at most`),
    fact(
      'Left standing',
      formatArea(cut.leftStandingMm2, unit),
      formatShare(cut.leftStandingMm2, artwork.areaMm2),
    ),
    ...(cut.perCutter.length > 1
      ? cut.perCutter.map((each) =>
          fact(`  by the ${each.cutter}`, formatArea(each.areaMm2, unit), 'more than the bits before it'),
        )
      : []),
    fact('Wall', formatLength(cut.wallLengthMm, unit), `${formatArea(cut.wallAreaMm2, unit)} of wall`),
    fact(
      'Narrowest stroke',
      narrowest === null ? 'none' : formatLength(narrowest, unit),
      strokes.narrowestToBit === null ? '' : `${strokes.narrowestToBit.toFixed(2)} × the smallest bit`,
    ),
    fact('Strokes', formatLength(strokes.lengthMm, unit), 'along their middle'),
    fact(
      'End grain open',
      formatArea(endGrain.wallExposedMm2 + endGrain.floorExposedMm2, unit),
      `${formatPercent(100 * endGrain.wallFraction)} of the walls`,
    ),
  ];
}

/** A line of a table. */
export function fact(name: string, value: string, remark: string): Fact {
  return { name, value, remark };
}
