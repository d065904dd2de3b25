import type { Point } from '@pourproof/plane';
import type {
  BlockInput,
  BoardInput,
  BoardWood,
  ObstacleInput,
  PlaceInput,
  ReadingInput,
} from './board-input.ts';

/** A glue-up as it is typed, lengths in mm: `stripes 300x180x20mm maple:60mm walnut:20mm`. */
export function typedBoard(board: BoardInput): string {
  if (typeof board === 'string') {
    return board;
  }
  const { pattern, widthMm, heightMm, thicknessMm, woods = [], squareMm, lengthMm, rowMm } = board;
  const lengths = Object.entries({ square: squareMm, length: lengthMm, row: rowMm }).flatMap(([name, mm]) =>
    mm === undefined ? [] : [`${name}:${mm}mm`],
  );
  return [pattern, `${widthMm}x${heightMm}x${thicknessMm}mm`, ...woods.map(typedWood), ...lengths].join(' ');
}

function typedWood({ wood, part, widthMm }: BoardWood): string {
  return `${ofPart(wood, part)}${widthMm === undefined ? '' : `:${widthMm}mm`}`;
}

function ofPart(wood: string, part: BoardWood['part']): string {
  return typeof part === 'string' ? `${wood}/${part}` : wood;
}

/** A block as it is typed: `walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm`. */
export function typedBlock(block: BlockInput): string {
  if (typeof block === 'string') {
    return block;
  }
  const { wood, part, grainDeg = 0, diveDeg = 0, outlineMm } = block;
  return [
    ofPart(wood, part),
    ...(grainDeg === 0 ? [] : [`grain:${grainDeg}deg`]),
    ...(diveDeg === 0 ? [] : [`dive:${diveDeg}deg`]),
    ...outlineMm.map(typedPoint),
  ].join(' ');
}

/** What the cut stays off, as it is typed: `hole 20mm,30mm 8mm`. */
export function typedObstacle(obstacle: ObstacleInput): string {
  if (typeof obstacle === 'string') {
    return obstacle;
  }
  const deep =
    'fromBackMm' in obstacle && obstacle.fromBackMm !== undefined ? ` back:${obstacle.fromBackMm}mm` : '';
  switch (obstacle.kind) {
    case 'groove':
      return `groove ${typedPoint(obstacle.fromMm)} ${typedPoint(obstacle.toMm)} ${obstacle.widthMm}mm${deep}`;
    case 'clamp':
      return `clamp ${typedPoint(obstacle.atMm)} ${obstacle.sizeMm.join('x')}mm`;
    default:
      return `${obstacle.kind} ${typedPoint(obstacle.atMm)} ${obstacle.diameterMm}mm${deep}`;
  }
}

/** A place as it is typed: `150mm,90mm`. */
export function typedPlace(place: PlaceInput): string {
  return typeof place === 'string' ? place : typedPoint(place.atMm);
}

/** A height of the face as it is typed: `20mm,30mm 19.8mm`. */
export function typedReading(reading: ReadingInput): string {
  return typeof reading === 'string' ? reading : `${typedPoint(reading.atMm)} ${reading.heightMm}mm`;
}

function typedPoint([x, y]: Point): string {
  return `${x}mm,${y}mm`;
}
