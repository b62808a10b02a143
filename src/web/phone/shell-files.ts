import { Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import { packageRoot } from '../../package-root.js';

/** Where the page's own scripts and the libraries are served. */
const APP = '/phone/app/';

/** The libraries of the page as they come from npm: by what they are imported as, where from, and where to. */
const LIBRARIES = [
  { name: 'idb', file: 'idb/build/index.js', at: 'lib/idb.js' },
  { name: 'preact', file: 'preact/dist/preact.module.js', at: 'lib/preact.js' },
  { name: 'preact/hooks', file: 'preact/hooks/dist/hooks.module.js', at: 'lib/preact-hooks.js' },
  {
    name: 'preact/jsx-runtime',
    file: 'preact/jsx-runtime/dist/jsxRuntime.module.js',
    at: 'lib/preact-jsx.js',
  },
  { name: 'zxing-wasm/reader', file: 'zxing-wasm/dist/es/reader/index.js', at: 'lib/zxing/reader/index.js' },
  { name: undefined, file: 'zxing-wasm/dist/es/share.js', at: 'lib/zxing/share.js' },
  { name: undefined, file: 'zxing-wasm/dist/reader/zxing_reader.wasm', at: 'lib/zxing_reader.wasm' },
] as const;

const ASSETS = ['phone.css', 'peg.svg'];

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.js': 'text/javascript; charset=utf-8',
  '.wasm': 'application/wasm',
};

/** A file as it is served. */
export interface ShellFile {
  readonly bytes: Buffer;
  readonly mediaType: string;
}

/** Which address a library that is imported by its name has. */
export const IMPORT_MAP = JSON.stringify({
  imports: Object.fromEntries(
    LIBRARIES.flatMap(({ name, at }) => (name === undefined ? [] : [[name, APP + at]])),
  ),
});

/** The files that the phone page needs while there is no signal, read once: the build puts its scripts in `dist/phone`. */
@Injectable()
export class ShellFiles {
  private readonly served = readServed();
  private readonly script = readBuilt('web/phone/worker/sw.js');
  private readonly shell = this.describeShell();

  /** A file under `/phone/app/`, or undefined. */
  at(path: string): ShellFile | undefined {
    return this.served.get(path);
  }

  /** The service worker: its two constants, then its script. It changes when any of the files does. */
  serviceWorker(): string {
    return `const worker = self;\nconst SHELL = ${this.shell};\n${this.script}`;
  }

  private describeShell(): string {
    const assets = ASSETS.map((name) => readFileSync(join(import.meta.dirname, '..', 'assets', name)));
    const digest = createHash('sha256').update(IMPORT_MAP);
    for (const bytes of [...assets, ...[...this.served.values()].map((file) => file.bytes)])
      digest.update(bytes);
    return JSON.stringify({
      version: digest.digest('hex').slice(0, 16),
      files: [
        ...ASSETS.map((name) => `/assets/${name}`),
        '/phone/manifest.webmanifest',
        ...[...this.served.keys()].map((path) => APP + path),
      ],
    });
  }
}

function readServed(): ReadonlyMap<string, ShellFile> {
  const modules = join(packageRoot(), 'node_modules');
  const files = [
    ...builtScripts().map((path) => ({ at: path, file: join(builtFolder(), path) })),
    ...LIBRARIES.map(({ at, file }) => ({ at, file: join(modules, file) })),
  ];
  return new Map(
    files.map(({ at, file }) => [
      at,
      { bytes: readFileSync(file), mediaType: MEDIA_TYPES[extname(file)] ?? 'application/octet-stream' },
    ]),
  );
}

function builtFolder(): string {
  return join(packageRoot(), 'dist', 'phone');
}

/** Every script of the page but the worker; none before the first build. */
function builtScripts(): string[] {
  if (!existsSync(builtFolder())) return [];
  return readdirSync(builtFolder(), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.js'))
    .map((path) => path.split(sep).join('/'))
    .filter((path) => !path.startsWith('web/phone/worker/'))
    .sort();
}

function readBuilt(path: string): string {
  const file = join(builtFolder(), path);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}
