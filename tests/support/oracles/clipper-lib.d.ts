/** The parts of clipper-lib that tests use; the package ships no types. */
declare module 'clipper-lib' {
  interface IntPoint {
    X: number;
    Y: number;
  }
  class ClipperOffset {
    constructor(miterLimit: number, arcTolerance: number);
    AddPath(path: IntPoint[], joinType: number, endType: number): void;
    AddPaths(paths: IntPoint[][], joinType: number, endType: number): void;
    Execute(solution: IntPoint[][], delta: number): void;
  }
  class Clipper {
    AddPaths(paths: IntPoint[][], polyType: number, isClosed: boolean): void;
    Execute(clipType: number, solution: IntPoint[][], subjectFill: number, clipFill: number): void;
    static Area(path: IntPoint[]): number;
  }
  const ClipperLib: {
    ClipperOffset: typeof ClipperOffset;
    Clipper: typeof Clipper;
    ClipType: { ctUnion: number; ctDifference: number };
    PolyType: { ptSubject: number; ptClip: number };
    PolyFillType: { pftEvenOdd: number; pftNonZero: number };
    JoinType: { jtRound: number; jtMiter: number };
    EndType: { etClosedPolygon: number; etClosedLine: number; etOpenButt: number };
  };
  export default ClipperLib;
}
