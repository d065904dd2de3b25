import { JobError, parseShopTime } from '@pourproof/job';
import { invariant } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import type { EventAttributes } from 'ics';
import { STEP_WORDS, stepTitle } from '../facts/step-words.ts';

/** An event is at least this long, in minutes, so that a calendar shows it. */
const MIN_MINUTES = 30;

/**
 * A schedule as an iCalendar file (RFC 5545), times without a zone: the clock of the shop.
 *
 * A window is an event from its earliest to its latest time; everything else stands at its earliest time. The
 * same artwork keeps the names of its events, so that importing a new schedule replaces the old one.
 *
 * @param name what is carved: goes into the titles
 * @param bits those of each round in words, from `bitsOfRounds`; empty where there is one round
 * @throws {JobError} by rejection, when the steps have no dates, because the job has no start
 */
export async function calendarFile(
  name: string,
  steps: Report['pour']['schedule'],
  bits: readonly string[] = [],
): Promise<string> {
  const [first] = steps;
  const events = steps.map((step): EventAttributes => {
    const { remark } = STEP_WORDS[step.step];
    const from = timeOf(step.earliest);
    const to = step.isWindow ? timeOf(step.latest) : from + MIN_MINUTES * 60_000;
    const cautious =
      step.isWindow || step.latest === step.earliest ? '' : ` More cautious rules give ${step.latest}.`;
    // the library's types leave out the stamp that its own schema takes
    const stamped: EventAttributes & { readonly timestamp: string } = {
      title: `${stepTitle(step.step, step.turn, step.round)}: ${name}`,
      description: `${bitsAt(step, bits)}${remark}${cautious} Data sheets come first.`,
      // ready-made texts pass through the library untouched, so that no time zone of this computer gets in
      start: calendarTime(from),
      end: calendarTime(Math.max(to, from + MIN_MINUTES * 60_000)),
      timestamp: `${calendarTime(timeOf(first?.earliest))}Z`,
      uid: `${step.step}-${step.turn}-${step.round === undefined ? '' : `round-${step.round}-`}${hexOf(name)}@pourproof`,
      productId: 'pourproof',
      busyStatus: 'FREE',
    };
    return stamped;
  });
  // loaded when a calendar is asked for, which is seldom
  const { createEvents } = await import('ics');
  const { value, error } = createEvents(events);
  invariant(typeof value === 'string', `the calendar library takes the schedule: ${error?.message ?? ''}`);
  return value;
}

/** What a round is carved with, as a sentence before the others. */
function bitsAt({ step, round }: Report['pour']['schedule'][number], bits: readonly string[]): string {
  const own = step === 'carve' && round !== undefined ? bits[round - 1] : undefined;
  return own === undefined ? '' : `With the ${own}. `;
}

function timeOf(text: string | undefined): number {
  if (text === undefined) {
    throw new JobError('calendar-without-start', 'start', {});
  }
  return parseShopTime(text);
}

/** A time as RFC 5545 writes one without a zone: `20261201T090000`. */
function calendarTime(time: number): string {
  return new Date(time).toISOString().slice(0, 19).replace(/[-:]/gu, '');
}

/** A name as letters that an identifier may hold. */
function hexOf(text: string): string {
  return Array.from(text, (letter) => (letter.codePointAt(0) ?? 0).toString(16)).join('-');
}
