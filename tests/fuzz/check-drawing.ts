import { resolveRegions } from '@pourproof/arrangement';
import { type Drawing, ringStart, signedArea } from '@pourproof/plane';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { checkNumbers, checkWords } from './fuzz-target.ts';

/** Regions with more points are resolved but not looked at edge by edge, which goes with the square. */
const MOST_POINTS = 120;

/** Throws where a drawing holds numbers that are not finite, rings without points, words of a program, or resolves to what is no clean region. */
export function checkDrawing(drawing: Drawing): void {
  for (const notice of drawing.notices) {
    for (const text of Object.values(notice.text)) {
      checkWords(text);
      if (text === '') {
        throw new Error(`notice ${notice.code} has no text`);
      }
    }
    checkNumbers(notice.params ?? {}, `notice ${notice.code}`);
    checkNumbers(notice.where, `places of ${notice.code}`);
  }
  for (const text of Object.values(drawing.scaleSource)) {
    checkWords(text);
  }
  checkNumbers(drawing.pageMm ?? {}, 'page');
  checkNumbers(drawing.open ?? {}, 'open outlines');
  let points = 0;
  for (const { region } of drawing.shapes) {
    checkNumbers(region.coords, 'coordinates');
    for (let k = 0; k < region.ringEnds.length; k++) {
      if (!(region.ringEnds[k]! > ringStart(region, k))) {
        throw new Error('a ring has no points');
      }
    }
    points += region.coords.length / 2;
  }
  if (points === 0 || points > 20 * MOST_POINTS) {
    return;
  }
  const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));
  checkNumbers(signedArea(region), 'area');
  const faults = region.coords.length / 2 <= MOST_POINTS ? cleanRegionFaults(region) : [];
  if (faults.length > 0) {
    throw new Error(`the resolved drawing is not clean: ${faults[0]}`);
  }
}
