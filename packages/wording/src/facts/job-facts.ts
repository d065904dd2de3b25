import type { Job, SettingKey } from '@pourproof/job';
import { bitName, bitSize, bitText, isHollow } from '@pourproof/job';
import { formatLength } from '@pourproof/plane';
import { type Fact, fact } from './fact.ts';
import { angle, fibreText } from './fibre-text.ts';

/** The job in words; what the maker did not give is marked as a default, or as the shop's. */
export function jobFacts(job: Job): readonly Fact[] {
  const { units } = job;
  const row = (name: string, value: string, ...keys: readonly SettingKey[]): Fact => ({
    name,
    value,
    remark: originOf(keys, job),
  });
  const bits = job.bits.map((bit) => bitName(bit, units));
  const seal = job.rows.seal.name;
  return [
    row(job.bits.length === 1 ? 'Bit' : 'Bits, in order', bits.join(', then '), 'bit'),
    row('Depth', bitSize(job.depthMm, units), 'depth'),
    ...(job.board === null
      ? [
          row('Wood', job.rows.wood.name, 'wood'),
          row('Fibres', fibreText(job.grainDeg, job.diveDeg), 'grain', 'dive'),
          ...(job.thicknessMm === null ? [] : [fact('Thickness', bitSize(job.thicknessMm, units), '')]),
        ]
      : [fact('Board', boardText(job, job.board), '')]),
    row(
      'Seal',
      job.seal === 'none' || job.coats === 0
        ? 'none'
        : `${seal}, ${job.coats === 1 ? '1 coat' : `${job.coats} coats`}, ${Number(job.sealHours.toFixed(2))} h before the pour`,
      'seal',
    ),
    row('Resin', job.rows.resin.name, 'resin'),
    ...(job.colour === null
      ? []
      : [fact('Colour', `${job.colour}, ${Number(job.pigmentPct.toFixed(2))} % ${job.colourant}`, '')]),
    ...(job.colourant === 'dye'
      ? [fact('Dye', 'tints', 'the wood shows through it at any depth; only pigment hides the floor')]
      : []),
    ...colourFacts(job),
    ...(job.boards === 1 ? [] : [fact('Boards', `${job.boards}, poured together`, '')]),
    ...(job.defaults.includes('shopTemp')
      ? []
      : [fact('Shop and resin', `${Number(job.shopTempC.toFixed(1))} °C`, '')]),
    row(
      'Levelling',
      `takes ${formatLength(job.levelMm, units)} off the face${job.rounds.length > 1 ? ' in every round' : ''}`,
      'level',
    ),
  ];
}

/** Where a row comes from, as far as not from the job itself. */
function originOf(keys: readonly SettingKey[], { defaults, fromShop, shop }: Job): string {
  if (keys.every((key) => defaults.includes(key))) {
    return 'default';
  }
  return shop !== null && keys.every((key) => fromShop.includes(key)) ? `from ${shop.name}` : '';
}

/** Resins that are paired with colours of the drawing, and the order of the work. */
function colourFacts({ colourOf, rounds, units }: Job): readonly Fact[] {
  const pairs = colourOf.map(({ drawn, resin }) => `${drawn} in ${resin}`);
  const order = rounds.map(
    ({ drawn, depthMm, bits }) =>
      `${drawn.join(' and ')}${depthMm === null ? '' : `, ${bitSize(depthMm, units)} deep`}${bits === null ? '' : `, with the ${bits.map((bit) => bitText(bit, units)).join(' and the ')}`}`,
  );
  return [
    ...(pairs.length === 0 ? [] : [fact('Colours', pairs.join('; '), '')]),
    ...(order.length === 0 ? [] : [fact('Rounds', order.join('; then '), '')]),
  ];
}

function boardText({ materials, turnDeg, units, obstacles }: Job, board: NonNullable<Job['board']>): string {
  const woods = [...new Set(board.blocks.map(({ wood }) => materials.woods[wood]?.name ?? wood))];
  const size = [board.widthMm, board.heightMm, board.thicknessMm].map((mm) => bitSize(mm, units)).join(' × ');
  const blocks = `${board.blocks.length} ${board.blocks.length === 1 ? 'block' : 'blocks'} of ${woods.join(' and ')}`;
  const held = obstacles.filter((each) => !isHollow(each)).length;
  const clamps = held === 0 ? '' : `; ${held} ${held === 1 ? 'clamp or hold-down' : 'clamps and hold-downs'}`;
  return `${size}, ${blocks}${clamps}${turnDeg === 0 ? '' : `; the artwork turned by ${angle(turnDeg)}`}`;
}
