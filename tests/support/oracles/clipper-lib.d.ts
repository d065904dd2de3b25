/** The parts of clipper-lib that tests use; the package ships no types. */
declare module 'clipper-lib' {
  interface IntPoint {
    X: number;
    Y: number;
  }
  class ClipperOffset {
    constructor(miterLimit: number, arcTolerance: number);
    AddPaths(paths: IntPoint[][], joinType: number, endType: number): void;
    Execute(solution: IntPoint[][], delta: number): void;
  }
  const ClipperLib: {
    ClipperOffset: typeof ClipperOffset;
    Clipper: { Area(path: IntPoint[]): number };
    JoinType: { jtRound: number };
    EndType: { etClosedPolygon: number };
  };
  export default ClipperLib;
}
