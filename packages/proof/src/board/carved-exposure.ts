import { type CarvedWalls, type Carving, carvedWalls, type FibreSetting } from '@pourproof/cutting';
import { type CleanRegion, pollStep, radians } from '@pourproof/plane';
import type { Stages } from '../stages/stages.ts';
import { blockAt } from './block-at.ts';
import { isWithin } from './is-within.ts';
import type { PlacedBlock } from './place-board.ts';

/** Surfaces of a cut in one block, and the end grain exposed in them, mm². */
export interface CarvedExposure {
  readonly wallAreaMm2: number;
  readonly floorAreaMm2: number;
  /** ∫ |n·f| dA over the walls, along their slope. */
  readonly wallExposedMm2: number;
  readonly floorExposedMm2: number;
}

/**
 * Length of the stretches by which walls are divided among several blocks, mm (our choice: finer than blocks
 * are laid).
 */
const STRETCH_MM = 0.5;

/**
 * Walls and floors of a cut of any shape by block, with their exposure of end grain in three dimensions. Each
 * element belongs to the block under its point; those outside all blocks are left out.
 *
 * Where blocks divide them the elements are kept, for a board that is moved has the same.
 *
 * @param cut outline of the cut
 */
export function carvedExposure(
  carving: Carving,
  cut: CleanRegion,
  blocks: readonly PlacedBlock[],
  stages: Stages,
): readonly CarvedExposure[] {
  // what lies within one block need not be divided
  const isOne = blocks.every(
    ({ region }) => region === null || (blocks.length === 1 && isWithin(cut, region)),
  );
  const byFibre = new Map<string, Elements>();
  const wallsFor = ({ grainDeg, diveDeg }: PlacedBlock): Elements => {
    const key = `${grainDeg} ${diveDeg}`;
    const known = byFibre.get(key);
    const fibre = { grainRad: radians(grainDeg), diveRad: radians(diveDeg) };
    const walls =
      known ??
      (isOne
        ? carvedWalls(carving, fibre)
        : stages.of('elements', [carving], fibre, () => elementsOf(carving, fibre)));
    byFibre.set(key, walls);
    return walls;
  };
  const [first] = blocks;
  if (first === undefined) {
    return [];
  }
  // elements and their order do not depend on the fibre
  const { count, points, areasMm2, isFloor } = wallsFor(first);
  const sums = blocks.map(() => ({ wallAreaMm2: 0, floorAreaMm2: 0, wallExposedMm2: 0, floorExposedMm2: 0 }));
  const under = blockAt(blocks);
  const exposuresIn = new Map<number, Float64Array>();
  for (let k = 0; k < count; k++) {
    pollStep();
    const b = under(points[2 * k] as number, points[2 * k + 1] as number);
    const [sum, block] = [sums[b], blocks[b]];
    if (sum === undefined || block === undefined) {
      continue;
    }
    const exposures = exposuresIn.get(b) ?? wallsFor(block).exposures;
    exposuresIn.set(b, exposures);
    const area = areasMm2[k] as number;
    const exposed = area * (exposures[k] as number);
    if (isFloor[k] === 1) {
      sum.floorAreaMm2 += area;
      sum.floorExposedMm2 += exposed;
    } else {
      sum.wallAreaMm2 += area;
      sum.wallExposedMm2 += exposed;
    }
  }
  return sums;
}

/** Elements without their normals. */
type Elements = Pick<CarvedWalls, 'count' | 'points' | 'areasMm2' | 'exposures' | 'isFloor'>;

function elementsOf(carving: Carving, fibre: FibreSetting): Elements {
  const { count, points, areasMm2, exposures, isFloor } = carvedWalls(carving, {
    ...fibre,
    longestMm: STRETCH_MM,
  });
  return { count, points, areasMm2, exposures, isFloor };
}
