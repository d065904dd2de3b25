import { type CleanRegion, ringCoords } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import clipper2 from 'clipper2-wasm';

/** Grid of both engines, mm: they round every coordinate to it, ours and their own. */
export const PEER_GRID_MM = 1e-6;
const DECIMALS = 6;

/** Another engine's way to the areas that cutters remove: offset inwards, then outwards. */
export interface OffsetPeer {
  readonly name: string;
  /** Its chords leave their arc by at most this many times `arcMm`. */
  readonly arcExcess: number;
  /** Areas in mm² of the region shrunk by `centreMm` and then grown by each of `reachesMm`; arcs become chords. */
  readonly areas: (
    region: CleanRegion,
    centreMm: number,
    reachesMm: readonly number[],
    arcMm: number,
  ) => number[];
}

/** Both offset engines, ready to use. */
export async function offsetPeers(): Promise<readonly OffsetPeer[]> {
  return [integerPeer(), await wasmPeer()];
}

function integerPeer(): OffsetPeer {
  const { Clipper, ClipperOffset, JoinType, EndType } = ClipperLib;
  type Paths = { X: number; Y: number }[][];
  const pathsOf = (region: CleanRegion): Paths =>
    Array.from(region.ringEnds, (_, k) => {
      const ring = ringCoords(region, k);
      return Array.from({ length: ring.length / 2 }, (_, i) => ({
        X: Math.round(ring[2 * i] / PEER_GRID_MM),
        Y: Math.round(ring[2 * i + 1] / PEER_GRID_MM),
      }));
    });
  const offset = (paths: Paths, byMm: number, arcMm: number): Paths => {
    const engine = new ClipperOffset(2, arcMm / PEER_GRID_MM);
    engine.AddPaths(paths, JoinType.jtRound, EndType.etClosedPolygon);
    const out: Paths = [];
    engine.Execute(out, byMm / PEER_GRID_MM);
    return out;
  };
  const area = (paths: Paths): number =>
    paths.reduce((sum, path) => sum + Clipper.Area(path), 0) * PEER_GRID_MM ** 2;
  return {
    name: 'clipper-lib',
    // it rounds the number of chords to the nearest, so that the last one may span one and a half: 1.5² times the sagitta
    arcExcess: 2.25,
    areas: (region, centreMm, reachesMm, arcMm) => {
      const eroded = offset(pathsOf(region), -centreMm, arcMm);
      return reachesMm.map((reach) => area(reach === 0 ? eroded : offset(eroded, reach, arcMm)));
    },
  };
}

async function wasmPeer(): Promise<OffsetPeer> {
  const c2 = await clipper2();
  type Paths = InstanceType<typeof c2.PathsD>;
  const pathsOf = (region: CleanRegion): Paths => {
    const paths = new c2.PathsD();
    for (let k = 0; k < region.ringEnds.length; k++) {
      const ring = ringCoords(region, k);
      // its points carry a third number
      const triples = Float64Array.from({ length: (ring.length / 2) * 3 }, (_, i) =>
        i % 3 === 2 ? 0 : ring[2 * Math.floor(i / 3) + (i % 3)],
      );
      const path = new c2.PathD();
      path.assign(triples);
      paths.push_back(path);
      path.delete();
    }
    return paths;
  };
  const offset = (paths: Paths, byMm: number, arcMm: number): Paths =>
    c2.InflatePathsD(paths, byMm, c2.JoinType.Round, c2.EndType.Polygon, 2, DECIMALS, arcMm);
  const areaOnce = (paths: Paths): number => {
    const area = c2.AreaPathsD(paths);
    paths.delete();
    return area;
  };
  return {
    name: 'clipper2-wasm',
    arcExcess: 1,
    areas: (region, centreMm, reachesMm, arcMm) => {
      const paths = pathsOf(region);
      const eroded = offset(paths, -centreMm, arcMm);
      const areas = reachesMm.map((reach) =>
        reach === 0 ? c2.AreaPathsD(eroded) : areaOnce(offset(eroded, reach, arcMm)),
      );
      paths.delete();
      eroded.delete();
      return areas;
    },
  };
}
