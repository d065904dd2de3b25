import type { Point } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import { readMeasure } from '../values/measure-input.ts';
import type { Block } from './board.ts';
import type { BlockInput, BlockStructure } from './board-input.ts';
import { parsePlace } from './place.ts';

/**
 * One block of a board of any polygons: `walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm 0mm,60mm`, with
 * `dive:10deg` where the fibres leave the face and `/heart` or `/sap` after the wood; or a structure of the
 * same.
 *
 * @throws {JobError} saying what to type
 */
export function readBlock(input: BlockInput): Block {
  const shown = typeof input === 'string' ? input : JSON.stringify(input);
  const { wood, part, grainDeg, diveDeg, outlineMm } = typeof input === 'string' ? parseBlock(input) : input;
  const dive = diveDeg ?? 0;
  if (!(dive >= 0 && dive <= 90)) {
    throw new JobError('block-dive', 'block', { shown });
  }
  return { wood, part: part ?? null, grainDeg: grainDeg ?? 0, diveDeg: dive, outline: outlineMm };
}

function parseBlock(text: string): BlockStructure {
  const [name = '', ...words] = text.trim().split(/\s+/u);
  const [wood = '', part] = name.split('/');
  const key = `block "${text}"`;
  let grainDeg = 0;
  let diveDeg = 0;
  const outlineMm: Point[] = [];
  for (const word of words) {
    if (word.startsWith('grain:')) {
      grainDeg = readMeasure(key, word.slice('grain:'.length), 'angle');
    } else if (word.startsWith('dive:')) {
      diveDeg = readMeasure(key, word.slice('dive:'.length), 'angle');
    } else {
      outlineMm.push(parsePlace(key, word));
    }
  }
  if (wood === '' || outlineMm.length < 3 || (part !== undefined && part !== 'heart' && part !== 'sap')) {
    throw new JobError('not-a-block', 'block', { shown: text });
  }
  return { wood, part, grainDeg, diveDeg, outlineMm };
}
