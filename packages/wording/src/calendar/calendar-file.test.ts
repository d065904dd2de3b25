import { JobError, type JobInput, settleJob } from '@pourproof/job';
import { packRings, textInUnits } from '@pourproof/plane';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { calendarFile } from './calendar-file.ts';

/** A pocket of 40 × 20 mm, sealed in two coats and poured in two layers: every step occurs. */
function schedule(job: JobInput): Report['pour']['schedule'] {
  const region = { ...packRings([[0, 0, 40, 0, 40, 20, 0, 20]]), fillRule: 'nonzero' as const };
  const drawing = {
    format: 'svg' as const,
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: [{ region, layer: '', colour: '#000000', source: 'pocket' }],
  };
  const sealed = { seal: 'epoxy', coats: 2, sealHours: '24h', depth: '8mm', bit: ['flat:3mm'] };
  return judgeDrawing(drawing, 'pocket', settleJob({ ...sealed, ...job })).report.pour.schedule;
}
const steps = schedule({});
const dated = (start: string) => schedule({ start });
/** Lines of an iCalendar file, folded ones joined (RFC 5545 §3.1). */
const lines = (text: string): string[] => text.replaceAll('\r\n\t', '').replaceAll('\r\n ', '').split('\r\n');

test('every step is one event on the shop’s own clock, with no zone', async () => {
  const text = lines(await calendarFile('sign.svg', dated('2026-12-01 09:00')));
  expect(text.filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(steps.length);
  expect(text[0]).toBe('BEGIN:VCALENDAR');
  expect(text.filter((line) => line !== '').at(-1)).toBe('END:VCALENDAR');
  const starts = text.filter((line) => line.startsWith('DTSTART'));
  expect(starts[0]).toBe('DTSTART:20261201T090000');
  for (const line of starts) {
    expect(line).toMatch(/^DTSTART:\d{8}T\d{6}$/u);
  }
  expect(text.filter((line) => /^DTSTAMP:\d{8}T\d{6}Z$/u.test(line))).toHaveLength(steps.length);
});

test('lines are at most 75 octets and end with CR LF, as RFC 5545 §3.1 asks', async () => {
  const text = await calendarFile('Schild mit Umlaut äöü.svg', dated('2026-12-01 09:00'));
  expect(text.endsWith('\r\n')).toBe(true);
  for (const line of text.split('\r\n')) {
    expect(line).not.toContain('\n');
    expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  }
});

test('an hour that summer time skips somewhere is kept as it is', async () => {
  expect(await calendarFile('a.svg', dated('2026-03-29 02:30'))).toContain('DTSTART:20260329T023000');
});

test('moving the start keeps the names of the events, which are all different', async () => {
  const names = async (start: string): Promise<string[]> =>
    lines(await calendarFile('sign.svg', dated(start))).filter((line) => line.startsWith('UID'));
  const before = await names('2026-12-01 09:00');
  expect(before).toEqual(await names('2027-01-05 07:00'));
  expect(new Set(before).size).toBe(steps.length);
});

test('without a start there is no calendar, and the message says what to type', async () => {
  await expect(calendarFile('sign.svg', steps)).rejects.toThrow(JobError);
  await expect(calendarFile('sign.svg', steps)).rejects.toThrow('Add start "');
});
