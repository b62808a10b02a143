import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { createReadStream, type ReadStream } from 'node:fs';
import { mkdir, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { SETTINGS, type Settings } from '../settings.js';

/**
 * The files themselves, each under the SHA-256 of its bytes in the data folder. A file is never changed or deleted, and
 * stands whole on the disk before any row points to it.
 */
@Injectable()
export class DocumentFiles {
  private readonly root: string;

  constructor(@Inject(SETTINGS) { dataDir }: Settings) {
    this.root = join(dataDir, 'documents');
  }

  /** Keeps the bytes. Returns once they and their name have reached the disk; the same bytes are one file. */
  async keep(file: { readonly sha256: string; readonly bytes: Buffer }): Promise<void> {
    const path = this.pathOf(file.sha256);
    const folder = dirname(path);
    await mkdir(folder, { recursive: true });
    if ((await this.sizeOf(file.sha256)) !== file.bytes.length) await placeWhole(path, file.bytes);
    for (const changed of [folder, this.root, dirname(this.root)]) await flushFolder(changed);
  }

  /** How many bytes the file has, or undefined where it is not in the folder. */
  async sizeOf(sha256: string): Promise<number | undefined> {
    try {
      return (await stat(this.pathOf(sha256))).size;
    } catch {
      return undefined;
    }
  }

  /** The file, to be sent. */
  read(sha256: string): ReadStream {
    return createReadStream(this.pathOf(sha256));
  }

  private pathOf(sha256: string): string {
    if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error('A document is asked for by its SHA-256.');
    return join(this.root, sha256.slice(0, 2), sha256);
  }
}

/** Under another name first, so that the file is there as a whole or not at all. */
async function placeWhole(path: string, bytes: Buffer): Promise<void> {
  const unfinished = join(dirname(path), `unfinished-${randomUUID()}`);
  try {
    await writeThrough(unfinished, bytes);
    await rename(unfinished, path);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

async function writeThrough(path: string, bytes: Buffer): Promise<void> {
  const handle = await open(path, 'wx', 0o640);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A new name reaches the disk with the folder that holds it. Windows cannot flush folders, and does it by itself. */
async function flushFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
