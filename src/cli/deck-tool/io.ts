/** Everything the deck tool has to do with the world outside, so that tests can put their own there. */
export interface Io {
  /** Writes a line to the standard output. */
  out(line: string): void;
  /** Writes a line to the standard error. */
  err(line: string): void;
  /** The text of a file; else why it can't be read, in words. */
  readFile(path: string): Promise<FileText>;
  /** The lines of the standard input, without their ends. */
  readonly lines: AsyncIterable<string>;
}

export type FileText =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string };

/** 0 all well; 1 the input has faults, each said; 2 the command line is wrong. */
export type ExitCode = 0 | 1 | 2;
