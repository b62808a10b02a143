/** One thing wrong in the config folder: where, what, and what to write instead. */
export interface ConfigProblem {
  /** Path of the file inside the config folder, such as `kinds/sling.yaml`. */
  readonly file: string;
  /** Place inside the file, such as `lines[2].duty`; `line 4` where the text itself cannot be read. */
  readonly path: string;
  readonly reason: string;
  readonly advice: string;
}

/** Collects every problem, so that a config is mended in one go and not one start at a time. */
export class Problems {
  readonly found: ConfigProblem[] = [];

  add(problem: ConfigProblem): void {
    this.found.push(problem);
  }

  /** @throws CatalogueError when anything was found. */
  throwIfAny(): void {
    if (this.found.length > 0) throw new CatalogueError(this.found);
  }
}

/** The config folder cannot be trusted; the server must not start on it. The message lists every problem, one a line. */
export class CatalogueError extends Error {
  override readonly name = 'CatalogueError';

  constructor(readonly problems: readonly ConfigProblem[]) {
    const lines = problems.map(({ file, path, reason, advice }) => `${file}: ${path}: ${reason} — ${advice}`);
    super(`The config folder has ${problems.length} problem(s):\n${lines.join('\n')}`);
  }
}
