import { MeasureError, type Point, parseMeasure } from '@pourproof/plane';
import { JobError } from '../job-error.ts';
import type { Block } from './board.ts';
import { parsePlace } from './parse-obstacle.ts';

/**
 * Reads one block of a board of any polygons: `walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm 0mm,60mm`, with `dive:10deg` where the
 * fibres leave the face and `/heart` or `/sap` after the wood.
 *
 * @throws {JobError} saying what to type
 */
export function parseBlock(text: string): Block {
  const [name = '', ...words] = text.trim().split(/\s+/u);
  const [wood = '', part] = name.split('/');
  let grainDeg = 0;
  let diveDeg = 0;
  const outline: Point[] = [];
  try {
    for (const word of words) {
      if (word.startsWith('grain:')) {
        grainDeg = parseMeasure(word.slice('grain:'.length), 'angle').value;
      } else if (word.startsWith('dive:')) {
        diveDeg = parseMeasure(word.slice('dive:'.length), 'angle').value;
      } else {
        outline.push(parsePlace(word));
      }
    }
  } catch (error) {
    throw error instanceof MeasureError ? new JobError(`block "${text}": ${error.message}`) : error;
  }
  if (wood === '' || outline.length < 3 || (part !== undefined && part !== 'heart' && part !== 'sap')) {
    throw new JobError(
      `block "${text}" needs a wood and at least three corners, as in "walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm".`,
    );
  }
  if (!(diveDeg >= 0 && diveDeg <= 90)) {
    throw new JobError(`block "${text}": dive lies between 0deg and 90deg.`);
  }
  return { wood, part: part ?? null, grainDeg, diveDeg, outline };
}
