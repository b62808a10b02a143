import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { Catalogue } from './catalogue.js';
import { parseYaml } from './parse-yaml.js';
import { Problems } from './problems.js';
import { readKind, refuseSharedWords } from './read-kind.js';
import { readMethod } from './read-method.js';
import { readScheme } from './read-scheme.js';
import { readSources } from './read-source.js';
import { Reader } from './reader.js';

/** One file of the config folder, opened for reading. `name` is the file's name without its ending. */
interface ConfigFile {
  readonly name: string;
  readonly reader: Reader;
}

/**
 * Reads and checks the whole config folder: `sources.yaml`, `kinds/`, `schemes/`, `methods/`.
 * @throws CatalogueError that lists every problem, each with file, path, reason and what to write.
 */
export function loadCatalogue(configFolder: string): Catalogue {
  const problems = new Problems();
  const sources = readSources(openFile(configFolder, 'sources.yaml', problems).reader);
  const kindFiles = openFolder(configFolder, 'kinds', problems);
  const kindsRead = kindFiles.map(({ name, reader }) => ({
    definition: readKind(reader, name, sources),
    reader,
  }));
  refuseSharedWords(kindsRead);
  const kinds = kindsRead.map(({ definition }) => definition);
  const schemes = openFolder(configFolder, 'schemes', problems).map(({ name, reader }) =>
    readScheme(reader, name, { sources, kinds: kinds.map(({ kind }) => kind) }),
  );
  const methods = openFolder(configFolder, 'methods', problems).map(({ name, reader }) =>
    readMethod(reader, name, { sources, kinds }),
  );
  problems.throwIfAny();
  return new Catalogue({ sources: [...sources.values()], kinds, schemes, methods });
}

function openFolder(configFolder: string, folder: string, problems: Problems): ConfigFile[] {
  const path = join(configFolder, folder);
  const names = existsSync(path) ? readdirSync(path).sort() : [];
  const strays = names.filter((name) => !/^[A-Za-z][A-Za-z-]*\.yaml$/.test(name));
  for (const stray of strays)
    refuseFile(
      `${folder}/${stray}`,
      'not a .yaml file of letters and hyphens',
      'rename or remove it',
      problems,
    );
  const files = names.filter((name) => !strays.includes(name));
  if (files.length === 0) refuseFile(folder, 'no .yaml file in it', 'write at least one', problems);
  return files.map((name) => openFile(configFolder, `${folder}/${name}`, problems));
}

function openFile(configFolder: string, file: string, problems: Problems): ConfigFile {
  const path = join(configFolder, file);
  const name = basename(file, '.yaml');
  if (!existsSync(path)) refuseFile(file, 'there is no such file', 'write it', problems);
  const value = existsSync(path) ? parseYaml(file, readFileSync(path, 'utf8'), problems) : undefined;
  return { name, reader: Reader.of(problems, file, value) };
}

function refuseFile(file: string, reason: string, advice: string, problems: Problems): void {
  problems.add({ file, path: 'whole file', reason, advice });
}
