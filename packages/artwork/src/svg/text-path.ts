import { compose, rotation, type Transform, translation } from '@pourproof/plane';
import type { RunLetter } from '../lettering/outlined-text.ts';
import type { Path } from '../path/path.ts';
import { directionAt, segmentAt } from '../path/segment-at.ts';
import { measureSegment } from '../stroke/segment-length.ts';

/** A path that text stands on. */
export interface TextPath {
  readonly total: number;
  /**
   * Moves a letter of a straight run so that its middle stands on the path, square to it; `null` beyond the
   * path's ends.
   */
  place(letter: RunLetter, offset: number): Transform | null;
}

/** Measures a path for setting text on it (SVG 2 §11.8); lengths in the path's unit. */
export function measureTextPath(path: Path): TextPath {
  const segments = path.flatMap((sub) => Array.from(sub.segments));
  const lengths = segments.map(measureSegment);
  const total = lengths.reduce((sum, l) => sum + l.total, 0);
  const place = (letter: RunLetter, offset: number): Transform | null => {
    const middle = letter.x + letter.advance / 2;
    let along = offset + middle;
    if (along < 0 || along > total) {
      return null;
    }
    for (const [i, segment] of segments.entries()) {
      const length = lengths[i];
      if (length !== undefined && (along <= length.total || i === segments.length - 1)) {
        const t = length.parameterAt(along);
        const { x, y } = segmentAt(segment, t);
        const [tx, ty] = directionAt(segment, t) ?? [1, 0];
        return compose(compose(translation(x, y), rotation(Math.atan2(ty, tx))), translation(-middle, 0));
      }
      along -= length?.total ?? 0;
    }
    return null;
  };
  return { total, place };
}
