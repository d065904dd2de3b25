import { type JobInput, SETTING_KEYS, type SettingKey, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { judgeDrawing, STAGE_NAMES, type StageName, Stages } from '@pourproof/proof';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

const [FIRST, SECOND, DOT] = drawingOf([
  rectangle(0, 0, 60, 8),
  rectangle(0, 20, 60, 6),
  rectangle(70, 0, 6, 6),
]).shapes;

/** Two strokes and a dot in two colours. */
export const STAGED_DRAWING: Drawing = {
  ...drawingOf([]),
  shapes: [FIRST, SECOND, DOT].flatMap((shape, k) =>
    shape === undefined ? [] : [{ ...shape, colour: k === 0 ? '#000000' : '#ff0000' }],
  ),
};

/** The job that the changes start from. */
export const STAGED_JOB: JobInput = {
  bit: ['vee:60deg:1/2in', 'flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  grain: '20deg',
  seal: 'shellac',
  coats: 2,
  resin: 'deep-pour',
  start: '2026-12-01 09:00',
};

/** How the artwork is read: another drawing comes of it. */
const ANOTHER_DRAWING = 'another drawing' as const;
const BOARD = 'stripes 300x180x20mm maple:60mm walnut:20mm';

/** A change of every setting; settings that go with a board change a job that has one. */
export const CHANGES: Readonly<Record<SettingKey, Partial<JobInput> | typeof ANOTHER_DRAWING>> = {
  artwork: ANOTHER_DRAWING,
  text: ANOTHER_DRAWING,
  font: ANOTHER_DRAWING,
  carve: ANOTHER_DRAWING,
  fileUnit: ANOTHER_DRAWING,
  join: ANOTHER_DRAWING,
  capHeight: ANOTHER_DRAWING,
  singleLine: ANOTHER_DRAWING,
  align: ANOTHER_DRAWING,
  tracking: ANOTHER_DRAWING,
  lineSpacing: ANOTHER_DRAWING,
  arc: ANOTHER_DRAWING,
  axis: ANOTHER_DRAWING,
  width: ANOTHER_DRAWING,
  height: ANOTHER_DRAWING,
  scale: ANOTHER_DRAWING,
  widen: ANOTHER_DRAWING,
  joins: ANOTHER_DRAWING,
  keepApart: ANOTHER_DRAWING,
  leastStroke: ANOTHER_DRAWING,
  colourWall: ANOTHER_DRAWING,
  roundTips: ANOTHER_DRAWING,
  roundCorners: ANOTHER_DRAWING,
  tolerance: { tolerance: '0.01mm' },
  bit: { bit: ['vee:90deg:1/2in', 'flat:2mm'] },
  depth: { depth: '2.5mm' },
  grain: { grain: '50deg' },
  dive: { dive: '10deg' },
  wood: { wood: 'walnut' },
  oiled: { oiled: true },
  seal: { seal: 'epoxy' },
  coats: { coats: 1 },
  sealHours: { sealHours: '6h' },
  resin: { resin: 'coating' },
  colour: { colour: 'white' },
  colourant: { colourant: 'dye' },
  pigmentPct: { pigmentPct: 5 },
  colourOf: { colourOf: 'red=blue' },
  rounds: { rounds: 'black, red with flat:1mm' },
  level: { level: '0.7mm' },
  levelBy: { levelBy: 'hand' },
  overpour: { overpour: '1mm' },
  wastePct: { wastePct: 20 },
  boards: { boards: 3 },
  weigh: { weigh: 'kitchen' },
  pricePerG: { pricePerG: 0.05 },
  board: { board: 'plain 300x180x20mm maple' },
  thickness: { thickness: '20mm' },
  block: {
    board: 'polygons 300x180x20mm',
    block: ['walnut grain:45deg 0mm,0mm 300mm,0mm 300mm,180mm 0mm,180mm'],
  },
  place: { place: '140mm,90mm' },
  turn: { turn: '10deg' },
  margin: { margin: '12mm' },
  keepClear: { keepClear: ['hole 20mm,30mm 8mm'] },
  reading: {
    reading: [
      '20mm,20mm 19.8mm',
      '280mm,20mm 20mm',
      '280mm,160mm 20.1mm',
      '20mm,160mm 19.9mm',
      '150mm,90mm 20.3mm',
    ],
  },
  shopTemp: { shopTemp: '18C' },
  boardSpread: { boardSpread: 0.5 },
  start: { start: '2026-12-02 08:00' },
  coupons: {
    coupons: [
      { wood: 'maple', seal: 'shellac', resin: 'deep-pour', coats: 2, slots: ['1.2mm', '1.4mm', '1.1mm'] },
    ],
  },
  feed: { feed: '900mm/min' },
  plunge: { plunge: '250mm/min' },
  rapid: { rapid: '2000mm/min' },
  accelerationMmPerS2: { accelerationMmPerS2: 150 },
  passDepth: { passDepth: '1mm' },
  stepoverPct: { stepoverPct: 30 },
  seenTo: { seenTo: ['oil-in-wood'] },
  units: { units: 'in' },
};

/** Settings that mean something on a board only. */
const ON_BOARD: readonly SettingKey[] = ['block', 'place', 'turn', 'margin', 'keepClear', 'reading'];

/** The job that a change is made to, and the job that comes of it; `null` for what is read anew. */
export function changeOf(key: SettingKey): readonly [JobInput, JobInput] | null {
  const change = CHANGES[key];
  if (change === ANOTHER_DRAWING) {
    return null;
  }
  const { wood, grain, ...others } = STAGED_JOB;
  const base = ON_BOARD.includes(key) ? { ...others, board: BOARD } : STAGED_JOB;
  return [
    base,
    { ...(key === 'board' || key === 'thickness' ? (key === 'board' ? others : base) : base), ...change },
  ];
}

/** The stages that run anew when a setting has changed. */
export function stagesAfter(key: SettingKey): readonly StageName[] {
  const ran: StageName[] = [];
  const stages = new Stages({ onStage: (stage) => ran.push(stage) });
  const jobs = changeOf(key);
  for (const input of jobs ?? []) {
    ran.length = 0;
    judgeDrawing(STAGED_DRAWING, 'staged', settleJob(input), stages);
  }
  return jobs === null ? STAGE_NAMES : STAGE_NAMES.filter((stage) => ran.includes(stage));
}

const HEAD = `# Stages of a proof

Written by a test (\`tests/proof/stages.test.ts\`); change the stages, not this page.

A proof is made in stages. Each is a pure function of results of other stages and of the settings that it reads, and its result is kept by them:
of every stage the last four, and the last 64 colour travels and places that colour crosses. A proof of a job that differs in one setting, and each job that is tried as a way out, makes anew
only what depends on it, and is equal to a proof from scratch to the last digit. What stands in no row of the table (adding up, dates, checks, words)
is made anew every time. What is kept is bounded by that number: while ways out are tried, as much again is kept apart for them, of small drawings up to three times as much (for 40,000 edges in all), and goes with them.

Who follows a proof (\`watch\` of \`vet\`) is told of each stage before it runs, those that the verdict hangs on before paths, bounds and contours, and can stop it
between stages, checks and trials and inside the stages: all loops that take long ask as they go on. It ends with a
\`ProofStopped\`, and what was whole by then stays kept. [How soon a proof stops](stopping.md) has the longest time between two of these questions. The page asks its worker to stop, which hears that between two trials of ways out, and ends it when a newer question has waited for a second.

\`\`\`text
rounds ─ resolve ─ axis ┬ widths
                        ├ fit ─ cut ┬ outline ┬ colours ─ fills
                        │           │         ├ surfaces (of elements) ─ walls ─ blocks (with the board and the travel)
                        │           │         ├ heights (with the board)
                        │           │         └ wood-axis ─ slivers (with the board)
                        │           ├ paths
                        │           └ bounds (with standing)
                        ├ standing ─ entering, ends
                        └ margins (with heights) ─ levelling (with colours)
\`\`\`

Which stages run anew when a setting changes, for two strokes and a dot in two colours, cut by a V and a clearing bit:

| setting | stages |
| --- | --- |
`;

/** The page of stages as Markdown. */
export function renderStagesPage(): string {
  const rows = SETTING_KEYS.map((key) => {
    const isRead = CHANGES[key] === ANOTHER_DRAWING;
    const ran = isRead ? 'all: the artwork is read anew' : stagesAfter(key).join(', ') || 'none';
    return `| \`${key}\` | ${ran} |`;
  });
  return `${HEAD}${rows.join('\n')}\n`;
}
