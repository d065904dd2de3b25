import { createRequire } from 'node:module';
import { type Rings, ringCoords } from '@pourproof/plane';

const factory = createRequire(import.meta.url)('clipper2-wasm/dist/umd/clipper2z.js');
const engine = await (factory.default ?? factory)();
/** Digits after the point that the engine keeps: its whole numbers are 1e-7 mm. */
const DIGITS = 7;

/** Area of a region's offset by another engine, arcs put as chords within `arcMm`. */
export function floatOffsetArea(region: Rings, byMm: number, arcMm: number): number {
  const { JoinType, EndType } = engine;
  return engine.AreaPathsD(
    engine.InflatePathsD(pathsOf(region), byMm, JoinType.Round, EndType.Polygon, 2, DIGITS, arcMm),
  );
}

/** Area that discs of a radius sweep along open lines, each `[x, y, …]`, together with a region, by another engine. */
export function floatSweptArea(
  lines: readonly (readonly number[])[],
  radiusMm: number,
  arcMm: number,
  also: Rings,
): number {
  const { JoinType, EndType, FillRule } = engine;
  const paths = new engine.PathsD();
  for (const line of lines) {
    paths.push_back(pathOf(line));
  }
  const swept = engine.InflatePathsD(paths, radiusMm, JoinType.Round, EndType.Round, 2, DIGITS, arcMm);
  return engine.AreaPathsD(engine.UnionD(swept, pathsOf(also), FillRule.NonZero, DIGITS));
}

function pathsOf(region: Rings): unknown {
  const paths = new engine.PathsD();
  for (let k = 0; k < region.ringEnds.length; k++) {
    paths.push_back(pathOf(ringCoords(region, k)));
  }
  return paths;
}

function pathOf(line: ArrayLike<number>): unknown {
  const path = new engine.PathD();
  for (let i = 0; i < line.length; i += 2) {
    path.push_back(new engine.PointD(line[i]!, line[i + 1]!, 0));
  }
  return path;
}
