import { settleJob } from '@pourproof/job';
import { packRings, textInUnits } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { judgeDrawing } from './vet-drawing.ts';

const SQUARE = {
  region: { ...packRings([[0, 0, 20, 0, 20, 20, 0, 20]]), fillRule: 'nonzero' as const },
  layer: '',
  colour: '#000000',
  source: '',
};

test('what reading the artwork cautions of keeps the verdict from being clear, what it only notes does not', () => {
  const verdict = (severity: 'caution' | 'note'): string => {
    const notices = [
      { code: 'text-not-outlined', text: textInUnits('One text is left out.'), where: [], severity },
    ];
    const drawing = {
      format: 'svg' as const,
      scaleSource: textInUnits('made by a test'),
      toleranceMm: 0.005,
      notices,
      shapes: [SQUARE],
    };
    const job = settleJob({ bit: ['flat:3mm'], depth: '2mm', seal: 'epoxy' });
    return judgeDrawing(drawing, 'square', job).report.verdict;
  };
  expect(verdict('note')).toBe('clear');
  expect(verdict('caution')).toBe('caution');
});

test('a drawing without any area is a stop, and its bounds of error are nothing', () => {
  const empty = {
    format: 'svg' as const,
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: [],
  };
  const { report } = judgeDrawing(empty, 'empty', settleJob({ bit: ['flat:3mm'], depth: '2mm' }));
  expect(report.findings).toEqual([]);
  expect(report.verdict).toBe('stop');
  expect(Object.values(report.cut.errorBound).filter((bound) => bound !== 0)).toEqual([]);
});
