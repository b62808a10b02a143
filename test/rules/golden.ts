import { readFileSync } from 'node:fs';
import { parse } from 'yaml';

/** The rows of a file of `test/golden`, as the caller's own row type: the tests read them as data they were written as. */
export function golden<Content>(name: string): Content {
  return parse(readFileSync(new URL(`../golden/${name}.yaml`, import.meta.url), 'utf8')) as Content;
}
