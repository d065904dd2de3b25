import {
  type Cited,
  type CitedRange,
  cutterSizes,
  type LevelMethodId,
  levelMethods,
  limits,
  resinColours,
  resins,
  scales,
  sealers,
  woods,
} from '@pourproof/materials';
import { LEVELLING_WORDS } from '@pourproof/wording';

/** The page docs/method/materials-tables.md: every row that ships, with its status and sources. */
export function renderTablesPage(): string {
  return `# Materials: the tables

Written from the tables of \`@pourproof/materials\`. The letter after a value is its status: s seen, m from memory, c computed, p
common practice, i our inference, r our prior. Ids in the last column are explained in [sources](../sources.md). All of it are
defaults: a maker's own \`materials.json\` replaces them.

## Woods: pores, colour, bleed prior

Vessel diameters are from memory, ±30 %. The bleed prior is the median streak of coating resin in the unsealed wood.

${table(
  ['wood', 'pores', 'vessels µm', 'blocking', 'L\\*a\\*b\\*', 'prior mm', 'sources'],
  Object.entries(woods).map(([id, wood]) => [
    `${id}: ${wood.name}, *${wood.botanical}*`,
    `${wood.pores.porosity} ${wood.pores.status.charAt(0)}`,
    wood.pores.diameterUm ? `${wood.pores.diameterUm.join('–')} m` : '–',
    wood.pores.blocking,
    wood.lab ? `${wood.lab.value.join(' ')} ${letter(wood.lab)}` : '–',
    wood.bleedPriorMm === null && wood.bleedAnalogy !== null
      ? `${cell(wood.bleedAnalogy.medianMm)}, ±${wood.bleedAnalogy.boardSpread.value}`
      : cell(wood.bleedPriorMm),
    sourcesOf(wood).join(', '),
  ]),
)}

## Sealers

${table(
  [
    'sealer',
    'travel left after h',
    'solids',
    'g/ml',
    'wet film mm',
    'ready h',
    'tacky h',
    'abrade after h',
    'coats on end grain',
  ],
  Object.entries(sealers).map(([id, seal]) => [
    `${id}: ${seal.name}`,
    `${seal.curve.value.map((point) => `${point.factor} after ${point.hours}`).join(', ') || '1'} ${letter(seal.curve)}`,
    cell(seal.solids),
    cell(seal.densityGPerMl),
    span(seal.wetFilmMm),
    span(seal.readyHours),
    seal.tackyHours ? span(seal.tackyHours) : '–',
    seal.abradeAfterHours ? cell(seal.abradeAfterHours) : '–',
    cell(seal.coats),
  ]),
)}

## Resins

${table(
  ['', ...Object.values(resins).map((resin) => resin.name)],
  resinRows().map(([label, read]) => [label, ...Object.values(resins).map(read)]),
)}

## Limits of practice

${table(
  ['limit', 'value', 'range', 'why', 'sources'],
  Object.entries(limits).map(([id, limit]) => [
    id,
    `${round(limit.value)} ${limit.unit} ${letter(limit)}`,
    limit.low === limit.high ? '' : `${round(limit.low)}–${round(limit.high)}`,
    limit.reason,
    limit.because.join(', '),
  ]),
)}

## Levelling, scales, cutters, resin colours

${table(
  ['levelling', 'takes off mm', 'advice', 'sources'],
  Object.entries(levelMethods).map(([id, method]) => [
    method.name,
    span(method.removalMm),
    LEVELLING_WORDS[id as LevelMethodId],
    method.removalMm.because.join(', '),
  ]),
)}

Scales: ${Object.values(scales)
    .map((scale) => `${scale.name} ${letter(scale.resolutionG)}`)
    .join('; ')}.

Cutter sizes in common use (${letter(cutterSizes)}): ${cutterSizes.value.map((size) => `${size.shape} ${size.label}`).join(', ')}.

Resin colours as L\\*a\\*b\\*, plain examples: ${Object.entries(resinColours)
    .map(([id, colour]) => `${id} ${colour.value.join(' ')} ${letter(colour)}`)
    .join('; ')}.
`;
}

type Resin = (typeof resins)[keyof typeof resins];

function resinRows(): [string, (resin: Resin) => string][] {
  return [
    ['viscosity Pa·s', (r) => span(r.viscosityPaS)],
    ['pot life min, 100 g', (r) => span(r.potLifeMin)],
    ['gel min, thin layer', (r) => span(r.gelMin)],
    ['tacky h', (r) => span(r.tackyHours)],
    ['hard h', (r) => span(r.hardHours)],
    ['full cure d', (r) => span(r.fullCureDays)],
    [
      'A:B by volume',
      (r) =>
        r.ratioByVolume
          ? `${r.ratioByVolume.value.a}:${r.ratioByVolume.value.b} ${letter(r.ratioByVolume)}`
          : '–',
    ],
    ['ratio may be off by %', (r) => cell(r.ratioTolerancePct)],
    ['density A, B g/ml', (r) => `${cell(r.densityAGPerMl)}, ${cell(r.densityBGPerMl)}`],
    ['density mixed g/ml', (r) => span(r.densityMixedGPerMl)],
    ['deepest pour mm', (r) => span(r.deepestPourMm)],
    ['largest mix g', (r) => span(r.largestMixG)],
    ['coldest and warmest shop °C', (r) => `${span(r.minTempC)}, ${span(r.maxTempC)}`],
    ['shrinkage % of volume', (r) => span(r.shrinkagePct)],
  ];
}

/** The sources behind every value of a wood, each once. */
function sourcesOf({ pores, lab, bleedPriorMm }: (typeof woods)[keyof typeof woods]): readonly string[] {
  return [...new Set([pores, lab, bleedPriorMm].flatMap((row) => row?.because ?? []))];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

function letter(row: Cited<unknown>): string {
  return row.status === 'prior' ? 'r' : row.status.charAt(0);
}

function cell(row: Cited | null): string {
  return row ? `${round(row.value)} ${letter(row)}` : '–';
}

function span(row: CitedRange): string {
  const ends = row.low === row.high ? '' : ` (${round(row.low)}–${round(row.high)})`;
  return `${round(row.value)}${ends} ${letter(row)}`;
}

function round(value: number): string {
  return String(Number(value.toPrecision(4)));
}
