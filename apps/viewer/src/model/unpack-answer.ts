import { unpackReport } from './packed-report.ts';
import type { Answer, PackedAnswer } from './question.ts';

/** An answer as the page takes it. */
export function unpackAnswer(answer: PackedAnswer): Answer {
  switch (answer.kind) {
    case 'judged':
      return { ...answer, vetted: { ...answer.vetted, report: unpackReport(answer.vetted.report) } };
    case 'vetted':
      return { ...answer, report: unpackReport(answer.report) };
    default:
      return answer;
  }
}
