import { type JobInput, settleJob } from '@pourproof/job';
import { type Drawing, type Notice, textInUnits } from '@pourproof/plane';
import { FINDING_CODES, type Report, vetDrawing } from '@pourproof/proof';
import { reportText, screenText, sheetHtml } from '@pourproof/wording';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobs } from '../arbitraries.ts';
import { captured } from '../support/cli/captured-run.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

const SOUND: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 6,
  colour: 'blue',
};
const SQUARE = drawingOf([rectangle(0, 0, 40, 20)]);
const vetted = (job: JobInput, drawing = SQUARE) => {
  const settled = settleJob({ ...SOUND, ...job });
  return { ...vetDrawing(drawing, 'square', settled), job: settled };
};
const report = (job: JobInput, drawing = SQUARE): Report => vetted(job, drawing).report;
const seenTo = ({ findings }: Report, code: string) => findings.find((each) => each.code === code)?.seenTo;

describe('a finding whose way out is work at the bench', () => {
  test('stays in the report and no longer counts once it is seen to', () => {
    const before = report({ oiled: true });
    expect([before.verdict, seenTo(before, 'oil-in-wood')]).toEqual(['stop', false]);
    const after = report({ oiled: true, seenTo: ['oil-in-wood'] });
    expect([after.verdict, seenTo(after, 'oil-in-wood')]).toEqual(['clear', true]);
    expect(after.findings.map(({ code }) => code)).toEqual(before.findings.map(({ code }) => code));
  });

  test('does not hide another', () => {
    const after = report({ oiled: true, level: '4mm', seenTo: ['oil-in-wood'] });
    expect(after.verdict).toBe('stop');
  });

  test('is listed on screen and on the sheet with its work', () => {
    const after = vetted({ oiled: true, seenTo: ['oil-in-wood'] });
    const text = reportText(after, { columns: 80 }).replaceAll(/\s+/gu, ' ');
    expect(text).toMatch(/^CLEAR .*1 seen to by you/u);
    expect(text).toMatch(
      /Seen to by you \d+\. Oil or wax in the wood \(stop\)\. Plane or sand to bare wood/u,
    );
    const sheet = sheetHtml([after], '0');
    expect(sheet).toContain('<h2>Seen to by you</h2>');
    expect(sheet).toContain('>seen to</span>');
    expect(sheetHtml([vetted({ oiled: true })], '0')).not.toContain('Seen to by you');
  });
});

test('a caution that takes a look may be seen to', () => {
  const spiral = drawingOf([[0, 0, 40, 0, 40, 20, 10, 20, 10, 5, 30, 5, 30, 25, 0, 25]]);
  expect(report({}, spiral).verdict).toBe('caution');
  expect(report({ seenTo: ['outline-crosses'] }, spiral).verdict).toBe('clear');
});

test('a code whose finding is not there is told as a note', () => {
  const { artwork, verdict } = report({ seenTo: ['oil-in-wood'] });
  expect(verdict).toBe('clear');
  expect(artwork.notices.map(({ code, text }) => [code, text])).toEqual([
    [
      'setting-without-effect',
      'The job says that oil-in-wood is seen to, but it is not found: it changes nothing.',
    ],
  ]);
});

describe('a caution from reading the artwork', () => {
  const notice = (severity: Notice['severity']): Notice => ({
    code: 'text-not-outlined',
    params: { count: 1 },
    text: textInUnits('1 text is not part of the artwork.'),
    where: [{ line: 7, atMm: [3, 4] }],
    severity,
    ...(severity === 'caution' ? { effect: 'left-out' as const } : {}),
  });
  const without = drawingOf([rectangle(0, 0, 40, 20)], { notices: [notice('caution')] });

  test('no longer counts once the maker has seen to it, and stays in the report', () => {
    const before = report({}, without);
    expect([before.verdict, before.artwork.notices[0]?.seenTo]).toEqual(['caution', false]);
    const after = report({ seenTo: ['text-not-outlined'] }, without);
    expect([after.verdict, after.artwork.notices.length, after.artwork.notices[0]?.seenTo]).toEqual([
      'clear',
      1,
      true,
    ]);
  });

  test('is listed on screen, in the whole answer and on the sheet', () => {
    const after = vetted({ seenTo: ['text-not-outlined'] }, without);
    expect(screenText(after, { columns: 80 })).toMatch(/Seen to by you: \[text-not-outlined\]\./u);
    const whole = reportText(after, { columns: 80 });
    expect(whole.replaceAll(/\s+/gu, ' ')).toMatch(/^CLEAR .*1 seen to by you/u);
    expect(whole).toMatch(/Seen to by you\n {2}- caution: 1 text is not part/u);
    expect(whole).not.toContain('Not as drawn');
    const sheet = sheetHtml([after], '0');
    expect(sheet).toMatch(
      /<h2>Seen to by you<\/h2><ul class="care"><li>1.text is not part of the artwork\. Code: text-not-outlined\./u,
    );
    expect(sheetHtml([vetted({}, without)], '0')).not.toContain('Seen to by you');
  });

  test('cures nothing where it is not found, or is a note', () => {
    const told = (drawing: Drawing): readonly string[] =>
      report({ seenTo: ['text-not-outlined'] }, drawing).artwork.notices.map(({ text }) => text);
    expect(told(SQUARE)).toEqual([
      'The job says that text-not-outlined is seen to, but it is not found: it changes nothing.',
    ]);
    expect(told(drawingOf([rectangle(0, 0, 40, 20)], { notices: [notice('note')] })).at(-1)).toContain(
      'it is only a note',
    );
  });

  test('is seen to by its flag, kept in the job file', async () => {
    const argv = ['vet', 'fixtures/svg/not-taken-text.svg', '--bit', 'flat:1mm', '--json'];
    const before = JSON.parse((await captured(argv)).out) as Report;
    const cautions = before.artwork.notices.filter((each) => each.seenTo === false).map(({ code }) => code);
    expect(cautions).toContain('text-not-outlined');
    const after = JSON.parse((await captured([...argv, '--seen-to', 'text-not-outlined'])).out) as Report;
    expect(after.artwork.notices.find(({ code }) => code === 'text-not-outlined')?.seenTo).toBe(true);
  });
});

describe('what saying so does not cure is refused by name', () => {
  test.each<readonly [string, JobInput, string, string]>([
    ['a lost stroke', { bit: ['flat:25mm'] }, 'bit-cannot-enter', 'change the drawing and vet the new one'],
    ['colour levelled away', { level: '4mm' }, 'sands-through', 'change '],
    ['a seal that is not hard', { sealHours: '0.2h', seal: 'shellac' }, 'seal-not-cured', 'change sealHours'],
    ['a hot shop', { shopTemp: '39C' }, 'resin-too-warm', 'change shopTemp'],
  ])('%s', (_, job, code, remedy) => {
    expect(report(job).findings.map((each) => each.code)).toContain(code);
    expect(() => report({ ...job, seenTo: [code] })).toThrow(
      `seenTo: ${code} is found, and saying that it is seen to does not cure it. Take it out, and`,
    );
    expect(() => report({ ...job, seenTo: [code] })).toThrow(remedy);
  });

  test('a code that is none, with the one that was meant', () => {
    expect(() => report({ seenTo: ['oil-in-would'] })).toThrow(
      'seenTo "oil-in-would" is no finding and no notice. Did you mean oil-in-wood? ',
    );
  });
});

test('the command line takes the flag, repeated, and the exit code follows', async () => {
  const flags = ['--bit', 'flat:2mm', '--depth', '3mm', '--wood', 'teak', '--oiled', '--weigh', 'fine'];
  const argv = ['vet', '--text', 'I', '--single-line', '--cap-height', '30mm', ...flags, '--boards', '20'];
  const without = await captured([...argv, '--json']);
  const report = JSON.parse(without.out) as Report;
  expect([without.code, report.verdict]).toEqual([1, 'stop']);
  const codes = report.findings.flatMap((each) => (each.seenTo === false ? [each.code] : []));
  const all = await captured([...argv, ...codes.flatMap((code) => ['--seen-to', code])]);
  expect(all.code).toBe(0);
  const wrong = await captured([...argv, '--seen-to', 'oil-in-would']);
  expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining('Did you mean oil-in-wood?')]);
});

test('whatever may be seen to leaves the verdict that the other findings give', () => {
  fc.assert(
    fc.property(jobs, fc.boolean(), (job, oiled) => {
      const base = { ...job, oiled, seal: 'none', coats: undefined } as JobInput;
      const before = report(base);
      const may = FINDING_CODES.filter((code) => seenTo(before, code) === false);
      const after = may.length === 0 ? before : report({ ...base, seenTo: may });
      const open = after.findings.filter((each) => each.seenTo !== true);
      expect(after.findings.length).toBe(before.findings.length);
      expect(open.every((each) => each.seenTo === undefined)).toBe(true);
      const grave = (['stop', 'caution'] as const).find((each) =>
        open.some(({ severity }) => severity === each),
      );
      expect(after.verdict).toBe(grave ?? 'clear');
    }),
    cases(40),
  );
});
