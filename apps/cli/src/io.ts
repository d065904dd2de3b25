/** All input and output of the command line, so that a test can stand in for a terminal. */
export interface Io {
  readonly out: OutputStream;
  readonly err: OutputStream;
  /** Reads all of standard input, to its end. */
  readonly readStdin: () => Promise<Uint8Array>;
  /** Whether someone would have to type the standard input. */
  readonly isStdinTerminal: boolean;
  /** Reads a whole file; rejects with a Node error (`ENOENT`, `EISDIR`, …). */
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** Writes a whole file, replacing what is there; rejects with a Node error. */
  readonly writeFile: (path: string, text: string) => Promise<void>;
  /** Makes a folder and its parents, if they do not exist. */
  readonly makeFolder: (path: string) => Promise<void>;
  /** Equal for two paths to one file, links included; `null` if there is no file. */
  readonly fileIdentity: (path: string) => Promise<string | null>;
  /** Calls someone when the program is interrupted (Ctrl-C), in place of ending it; until what is returned is called. */
  readonly onInterrupt?: (stop: () => void) => () => void;
  /** Absolute folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Where text goes. */
export interface OutputStream {
  readonly write: (text: string) => void;
  readonly isTerminal: boolean;
  /** Width of the terminal in characters, where it tells. */
  readonly columns?: number | undefined;
}
