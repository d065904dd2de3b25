import { mmFromInches } from '@pourproof/plane';
import { type Cited, type CitedRange, cited, citedRange } from './cited.ts';
import { REFERENCE_TEMPERATURE_C } from './flow-parameters.ts';

/** Id of a limit of practice that findings compare with. */
export type LimitId =
  | 'strokeToBit'
  | 'narrowestStrokeFlat'
  | 'narrowestStrokeVee'
  | 'faintWidth'
  | 'wallAlongGrain'
  | 'wallAlongGrainToDepth'
  | 'wallShortGrain'
  | 'wallShortGrainToDepth'
  | 'islandWidth'
  | 'islandFootToHeight'
  | 'floorUnderPocket'
  | 'floorToBoard'
  | 'floorGone'
  | 'rimLongGrainToDepth'
  | 'rimEndGrainToDepth'
  | 'rimLongGrainHabit'
  | 'rimEndGrainHabit'
  | 'wallGone'
  | 'roomToClamp'
  | 'endSeen'
  | 'tipShort'
  | 'cornerShort'
  | 'endToWidth'
  | 'tipToReach'
  | 'visibleStreak'
  | 'visibleStretch'
  | 'visibleStain'
  | 'colourDifferencePlain'
  | 'colourDifferenceFigured'
  | 'usualBit'
  | 'usualEdgeToBit'
  | 'usualDepth'
  | 'sealWait'
  | 'abradedPocket'
  | 'shopTemperature'
  | 'opaqueDepth'
  | 'opaqueDepthBlack'
  | 'opaqueDepthPale'
  | 'faintDepth'
  | 'faintDepthBlack'
  | 'faintDepthPale'
  | 'tintDepth'
  | 'faintTintDepth'
  | 'overpour'
  | 'waste'
  | 'pigmentShare'
  | 'dyeShare'
  | 'streakTint';

/** Units that limits are given in; `ratio` has none. */
export type LimitUnit = 'ratio' | 'mm' | 'mm²' | '%' | 'ΔE00' | 'h' | '°C';

/** One limit: the value findings use, the range that practice gives, the reason in words. */
export interface Limit extends Cited {
  readonly unit: LimitUnit;
  readonly low: number;
  readonly high: number;
  /** One sentence: what happens beyond it. */
  readonly reason: string;
}

/** Limits of practice by id. */
export const limits: Readonly<Record<LimitId, Limit>> = {
  strokeToBit: limit(
    'ratio',
    citedRange(1.05, [1.05, 1.05], 'memory', 'from-memory'),
    'A stroke less than 5 % wider than the bit leaves no room for runout, and the bit may not enter at all.',
  ),
  narrowestStrokeFlat: limit(
    'mm',
    citedRange(0.8, [0.8, 1], 'memory', 'from-memory'),
    'Narrower flat-bottomed strokes fill badly and level unevenly.',
  ),
  narrowestStrokeVee: limit(
    'mm',
    exactly(cited(0.5, 'memory', 'from-memory')),
    'Narrower V strokes fade when the face is levelled.',
  ),
  faintWidth: limit(
    'mm',
    citedRange(0.2, [0.1, 0.3], 'inference', 'own-inference'),
    'A narrower line of colour reads as a pore or a scratch and not as a stroke: 2′ of arc at 35 cm, and as wide as the vessels of open woods.',
  ),
  wallAlongGrain: limit(
    'mm',
    exactly(cited(1, 'memory', 'from-memory', 'own-inference')),
    'Thinner wood between pockets, with the fibres along it, breaks under the cutter or in levelling.',
  ),
  wallAlongGrainToDepth: limit(
    'ratio',
    exactly(cited(1 / 3, 'memory', 'from-memory', 'own-inference')),
    'A wall along the fibres needs a third of its height as thickness.',
  ),
  wallShortGrain: limit(
    'mm',
    citedRange(1.5, [1.5, 2], 'memory', 'from-memory', 'own-inference'),
    'Where the fibres run across a thin wall it snaps: short grain.',
  ),
  wallShortGrainToDepth: limit(
    'ratio',
    exactly(cited(1 / 2, 'memory', 'from-memory', 'own-inference')),
    'A wall with the fibres across it needs half of its height as thickness.',
  ),
  islandWidth: limit(
    'mm',
    exactly(cited(3, 'practice', 'common-practice')),
    'A smaller post of wood in a pocket breaks or comes loose, unless it is low.',
  ),
  islandFootToHeight: limit(
    'mm',
    exactly(cited(2, 'practice', 'common-practice')),
    'A post whose foot has this much area for each millimetre of height stands all the same.',
  ),
  floorUnderPocket: limit(
    'mm',
    exactly(cited(3, 'practice', 'common-practice')),
    'Less wood under a pocket gives under the bit, cups and lets resin through pores.',
  ),
  floorToBoard: limit(
    'ratio',
    exactly(cited(1 / 3, 'practice', 'common-practice')),
    'A board that loses more than two thirds of its thickness on one side cups.',
  ),
  floorGone: limit(
    'mm',
    exactly(cited(1.5, 'inference', 'own-inference')),
    'Half of the least floor: the cup of a board and the setting of the bit can take what is left.',
  ),
  rimLongGrainToDepth: limit(
    'ratio',
    exactly(cited(1, 'practice', 'common-practice')),
    'At a long-grain edge shops leave as much wood as the pocket is deep.',
  ),
  rimEndGrainToDepth: limit(
    'ratio',
    exactly(cited(2, 'practice', 'common-practice')),
    'At an end-grain edge shops leave twice the depth: short grain splits and colour runs out.',
  ),
  rimLongGrainHabit: limit(
    'mm',
    exactly(cited(5, 'practice', 'common-practice')),
    'By habit shops leave this much at a long-grain edge, however shallow the pocket is.',
  ),
  rimEndGrainHabit: limit(
    'mm',
    exactly(cited(10, 'practice', 'common-practice')),
    'By habit shops leave this much at an end-grain edge, however shallow the pocket is.',
  ),
  wallGone: limit(
    'mm',
    exactly(cited(0.2, 'inference', 'own-inference')),
    'Wood thinner than the run-out of a bit on both of its sides does not stand between two pockets.',
  ),
  roomToClamp: limit(
    'mm',
    citedRange(10, [5, 15], 'inference', 'own-inference', 'from-memory'),
    'The nut that holds the bit is about this much wider than a small bit on each side, and hits a clamp that stands higher than the bit sticks out.',
  ),
  endSeen: limit(
    'mm',
    exactly(cited(0.3, 'inference', 'own-inference')),
    'What is lost is not seen at reading distance where it is smaller: 3′ of arc at 35 cm.',
  ),
  tipShort: limit(
    'mm',
    exactly(cited(1, 'inference', 'own-inference')),
    'A tip that ends farther short is seen at once at reading distance: 10′ of arc at 35 cm.',
  ),
  cornerShort: limit(
    'mm',
    exactly(cited(2, 'inference', 'own-inference')),
    'A corner of which more is left is seen as round; its sides still lead the eye to where it was.',
  ),
  endToWidth: limit(
    'ratio',
    exactly(cited(0.25, 'inference', 'own-inference')),
    'A tip or corner that loses more than a quarter of the width of its stroke changes the shape.',
  ),
  tipToReach: limit(
    'ratio',
    exactly(cited(0.5, 'inference', 'own-inference')),
    'A taper that loses more than half of what reaches beyond its root is lost, not only its tip.',
  ),
  visibleStreak: limit(
    'mm',
    exactly(cited(0.45, 'prior', 'own-prior')),
    'A shorter streak is taken not to be seen at arm’s length.',
  ),
  visibleStretch: limit(
    'mm',
    exactly(cited(0.5, 'inference', 'own-inference')),
    'A stain narrower than this across the fibres is not seen at arm’s length: four times what an eye resolves there.',
  ),
  visibleStain: limit(
    'mm²',
    exactly(cited(1, 'inference', 'own-inference')),
    'A stain of less, length times width, reads as a soft edge and not as a streak.',
  ),
  colourDifferencePlain: limit(
    'ΔE00',
    exactly(cited(6, 'inference', 'own-inference', 'wood-difference-scale', 'sharma-2005')),
    'Where wood is compared with wood, up to 6 is a medium difference; a tinted streak more different shows on plain wood.',
  ),
  colourDifferenceFigured: limit(
    'ΔE00',
    citedRange(9, [6, 12], 'inference', 'own-inference', 'texture-and-lightness', 'sharma-2005'),
    'Figure hides half as much again, between nothing and the twice that texture does to lightness; a streak more different shows even there.',
  ),
  usualBit: limit(
    'mm',
    exactly(cited(mmFromInches(1 / 8), 'practice', 'common-practice')),
    'A flat bit of an eighth of an inch is at hand in most shops.',
  ),
  usualEdgeToBit: limit(
    'ratio',
    exactly(cited(3, 'practice', 'common-practice')),
    'The cutting edge of a straight bit is commonly three diameters long; for a deeper cut a longer one has to be asked for.',
  ),
  usualDepth: limit(
    'mm',
    citedRange(mmFromInches(1 / 8), [1.6, 4.8], 'practice', 'common-practice', 'inlay-technique'),
    'An eighth of an inch is the usual depth of a filled pocket; shallower ones than 1/16 in lose colour and life in levelling.',
  ),
  sealWait: limit(
    'h',
    exactly(cited(24, 'practice', 'common-practice')),
    'A seal is usually left for a day before the pour.',
  ),
  abradedPocket: limit(
    'mm',
    citedRange(5, [3, 6], 'inference', 'own-inference'),
    'A folded strip of abrasive reaches the walls and the floor of no narrower pocket.',
  ),
  shopTemperature: limit(
    '°C',
    exactly(cited(REFERENCE_TEMPERATURE_C, 'practice', 'common-practice')),
    'The tables hold at this temperature.',
  ),
  opaqueDepth: limit(
    'mm',
    exactly(cited(1, 'practice', 'common-practice')),
    'Shallower colour lets the floor show through.',
  ),
  opaqueDepthBlack: limit(
    'mm',
    citedRange(0.3, [0.14, 0.54], 'inference', 'own-inference', 'from-memory'),
    'Black absorbs at all wavelengths: 0.1 % of carbon in the mix leaves a twentieth of the floor to be seen through 0.27 mm.',
  ),
  opaqueDepthPale: limit(
    'mm',
    citedRange(1.5, [0.5, 2], 'inference', 'own-inference', 'from-memory'),
    'White and pale colours hide by scattering, which takes several times the depth of an absorbing colour: 1 % of white pigment by volume takes 1 to 2 mm.',
  ),
  faintDepth: limit(
    'mm',
    citedRange(0.3, [0.1, 0.5], 'inference', 'own-inference', 'from-memory'),
    'Even a strong paste lets the floor show through less: that is no colour.',
  ),
  faintDepthBlack: limit(
    'mm',
    citedRange(0.15, [0.07, 0.27], 'inference', 'own-inference', 'from-memory'),
    'Through half of the depth at which black hides it, a fifth of the floor still shows.',
  ),
  faintDepthPale: limit(
    'mm',
    citedRange(0.75, [0.25, 1], 'inference', 'own-inference', 'from-memory'),
    'Through half of the depth at which white hides it, wood gives its own colour to a pale one.',
  ),
  tintDepth: limit(
    'mm',
    citedRange(0.5, [0.24, 1], 'inference', 'own-inference', 'from-memory'),
    'A dye never hides the floor: 0.02 % of it takes all but a twentieth of the light of its own band in 0.24 mm and no other light at all. Twice that is taken as its full tint.',
  ),
  faintTintDepth: limit(
    'mm',
    citedRange(0.25, [0.12, 0.5], 'inference', 'own-inference', 'from-memory'),
    'Half of the depth of the full tint; through less, wood of any colour looks as if it were only wet.',
  ),
  overpour: limit(
    'mm',
    citedRange(0.5, [0.3, 1], 'memory', 'from-memory'),
    'Resin stands this proud of the face so that it can be levelled.',
  ),
  waste: limit(
    '%',
    citedRange(15, [10, 20], 'memory', 'from-memory'),
    'Cup, stick and drips keep this share of the mix.',
  ),
  pigmentShare: limit(
    '%',
    citedRange(3, [1, 6], 'memory', 'from-memory'),
    'Pigment by weight of the mix; more than the upper end weakens the cure.',
  ),
  dyeShare: limit(
    '%',
    citedRange(0.5, [0.1, 1], 'practice', 'common-practice'),
    'Dye or alcohol ink by weight of the mix; its solvent softens the cure, and more than the upper end fades no less.',
  ),
  streakTint: limit(
    'ratio',
    citedRange(0.2, [0.15, 0.3], 'inference', 'own-inference', 'wood-descriptions'),
    'A streak is wood tinted by the share of its face that vessels take: their number times the square of their diameter.',
  ),
};

function limit(unit: LimitUnit, range: CitedRange, reason: string): Limit {
  return { ...range, unit, reason };
}

function exactly(one: Cited): CitedRange {
  return { ...one, low: one.value, high: one.value };
}
