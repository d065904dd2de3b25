import { settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { calendarFile } from '@pourproof/wording';
import { drawingOf, rectangle } from './drawing-of.ts';

/** A calendar from a whole proof, whose times fall into an hour that summer time skips in New York (8 March 2026, 02:30). */
export function demoCalendar(): Promise<string> {
  const job = settleJob({ seal: 'epoxy', coats: 2, start: '2026-03-08 01:30', shopTemp: '21C' });
  const { report } = judgeDrawing(drawingOf([rectangle(0, 0, 60, 12)]), 'Schild „Öl & Ähre“.svg', job);
  return calendarFile(report.artwork.file, report.pour.schedule);
}
