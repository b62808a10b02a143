import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * The folder that holds `package.json`, `config/` and `migrations/`, the same from `src/` and from `dist/src/`.
 * @throws Error when no folder above this file has a `package.json`.
 */
export function packageRoot(): string {
  let folder = import.meta.dirname;
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder);
    if (above === folder) throw new Error(`No package.json in any folder above ${import.meta.dirname}`);
    folder = above;
  }
  return folder;
}
