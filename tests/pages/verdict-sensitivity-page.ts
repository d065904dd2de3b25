import { type JobFile, type JobInput, readMaterialsFile, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

/** The artwork of the page: a plate, a stroke of 1.8 mm, and a rib of 2.2 mm of wood between two bars. */
const ARTWORK = drawingOf([
  rectangle(0, 0, 60, 12),
  rectangle(0, 20, 60, 1.8),
  rectangle(0, 30, 25, 20),
  rectangle(27.2, 30, 25, 20),
]);

const REFERENCE: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['flat:1.5mm'],
  depth: '3mm',
  wood: 'cherry',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  level: '0.5mm',
};

/** One uncertain input with its low and its high end; what the maker's own table says, or a key of the job. */
interface Input {
  readonly name: string;
  readonly ends: readonly [End, End];
}

interface End {
  readonly name: string;
  readonly job?: JobInput;
  readonly materials?: object;
}

const job = (name: string, change: JobInput): End => ({ name, job: change });
const own = (name: string, materials: object): End => ({ name, materials });

const INPUTS: readonly Input[] = [
  {
    name: 'seal',
    ends: [job('none', { seal: 'none' }), job('shellac, 2 h', { seal: 'shellac', sealHours: '2h' })],
  },
  { name: 'hours of the seal', ends: [job('5 h', { sealHours: '5h' }), job('48 h', { sealHours: '48h' })] },
  { name: 'coats of the seal', ends: [job('2', { coats: 2 }), job('4', { coats: 4 })] },
  {
    name: 'wet film of a coat',
    ends: [
      own('0.05 mm', { sealers: { epoxy: { wetFilmMm: 0.05 } } }),
      own('0.15 mm', { sealers: { epoxy: { wetFilmMm: 0.15 } } }),
    ],
  },
  {
    name: 'travel in the unsealed board',
    ends: [
      own('1.5 mm', { woods: { cherry: { bleedPriorMm: 1.5 } } }),
      own('25 mm', { woods: { cherry: { bleedPriorMm: 25 } } }),
    ],
  },
  {
    name: 'grain on the face',
    ends: [job('90°', { grain: '90deg' }), job('45°', { grain: '45deg' })],
  },
  { name: 'dive of the fibres', ends: [job('10°', { dive: '10deg' }), job('90°', { dive: '90deg' })] },
  { name: 'depth', ends: [job('1.5 mm', { depth: '1.5mm' }), job('6 mm', { depth: '6mm' })] },
  { name: 'levelling', ends: [job('0.3 mm', { level: '0.3mm' }), job('1.6 mm', { level: '1.6mm' })] },
  {
    name: 'shrinkage',
    ends: [
      own('0 %', { resins: { coating: { shrinkagePct: 0 } } }),
      own('5 %', { resins: { coating: { shrinkagePct: 5 } } }),
    ],
  },
  { name: 'overpour', ends: [job('0.3 mm', { overpour: '0.3mm' }), job('1 mm', { overpour: '1mm' })] },
  { name: 'waste', ends: [job('10 %', { wastePct: 10 }), job('20 %', { wastePct: 20 })] },
  {
    name: 'density of part B',
    ends: [
      own('0.94 g/ml', { resins: { coating: { densityBGPerMl: 0.94 } } }),
      own('1.1 g/ml', { resins: { coating: { densityBGPerMl: 1.1 } } }),
    ],
  },
  { name: 'shop temperature', ends: [job('15 °C', { shopTemp: '15C' }), job('30 °C', { shopTemp: '30C' })] },
  { name: 'scale', ends: [job('0.01 g', { weigh: 'fine' }), job('1 g', { weigh: 'kitchen' })] },
];

/** The page docs/method/verdict-sensitivity.md: what each uncertain input does to the verdict, computed. */
export function renderVerdictSensitivityPage(): string {
  const reference = reportFor({ name: 'reference' });
  const rows = INPUTS.flatMap(({ name, ends }) =>
    ends.map((end) => `| ${name} | ${end.name} | ${told(reportFor(end), reference)} |`),
  );
  return `# The verdict: what each uncertain input moves

One input at a time, all others as in the reference: a plate, a stroke of 1.8 mm and a rib of 2.2 mm of wood between two bars, cut 3 mm
deep with a 1.5 mm flat bit in black cherry, fibres along the strokes, one coat of clear epoxy cured 24 h, coating resin, 0.5 mm
levelled off. The reference is ${reference.verdict} and mixes ${grams(reference)}. Computed by a test with the program itself.

| input | set to | verdict | findings that come or go | mix | fill may be off by |
| --- | --- | --- | --- | --- | --- |
${rows.join('\n')}

What to take from it: the seal, its hours and the depth decide the verdict; overpour and depth decide the mix. Density and waste
move grams, not the verdict. Where a row changes the verdict and you do not know the input, measure it or cut a coupon first.
`;
}

function reportFor(end: End): Report {
  const book = readMaterialsFile({ schema: 'pourproof/materials@1', ...end.materials }, 'materials.json');
  return judgeDrawing(
    ARTWORK,
    'reference',
    settleJob({ ...REFERENCE, ...(end.job ?? {}) }, { materials: book }),
  ).report;
}

function told(report: Report, reference: Report): string {
  const codes = (from: Report): ReadonlySet<string> => new Set(from.findings.map(({ code }) => code));
  const now = codes(report);
  const before = codes(reference);
  const changes = [
    ...[...now].filter((code) => !before.has(code)).map((code) => `+ \`${code}\``),
    ...[...before].filter((code) => !now.has(code)).map((code) => `− \`${code}\``),
  ];
  const off = report.pour.colours[0]?.uncertaintyPct ?? 0;
  return `${report.verdict} | ${changes.join(', ') || '–'} | ${grams(report)} | ${off.toFixed(0)} %`;
}

function grams({ pour }: Report): string {
  return `${(pour.colours[0]?.massG ?? 0).toFixed(2)} g`;
}
