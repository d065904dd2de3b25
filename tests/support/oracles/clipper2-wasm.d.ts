/** The parts of clipper2-wasm that tests use; the package points to types that it does not ship. */
declare module 'clipper2-wasm' {
  /** Objects live in the engine's own memory until deleted. */
  interface Paths {
    push_back(path: Path): void;
    delete(): void;
  }
  interface Path {
    /** Takes x, y and a third number for each point. */
    assign(triples: Float64Array): void;
    delete(): void;
  }
  interface Engine {
    PathD: new () => Path;
    PathsD: new () => Paths;
    JoinType: { Round: number };
    EndType: { Polygon: number };
    AreaPathsD(paths: Paths): number;
    InflatePathsD(
      paths: Paths,
      delta: number,
      joinType: number,
      endType: number,
      miterLimit: number,
      decimals: number,
      arcTolerance: number,
    ): Paths;
  }
  export default function load(): Promise<Engine>;
}
