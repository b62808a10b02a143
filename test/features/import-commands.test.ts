import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { exportCommand } from '../../src/commands/export.command.js';
import { importCommand } from '../../src/commands/import.command.js';
import { makeStore, sample, stopClock } from '../support/import-client.js';
import { startServer, type TestServer } from '../support/test-server.js';

describe('import and export at the command line', () => {
  const dir = mkdtempSync(join(tmpdir(), 'tackleroom-files-'));
  let server: TestServer;
  let said: string[];

  beforeAll(async () => {
    server = await startServer('sqlite');
    stopClock(server);
    await makeStore(server, 'Halle 2', 'eu');
    const say = (...words: unknown[]) => void said.push(words.join(' '));
    vi.spyOn(console, 'log').mockImplementation(say);
    vi.spyOn(console, 'error').mockImplementation(say);
  });
  afterAll(async () => {
    vi.restoreAllMocks();
    rmSync(dir, { recursive: true });
    await server.close();
  });

  async function run(command: typeof importCommand, ...words: string[]): Promise<number> {
    said = [];
    return command.run(server.app, words);
  }

  it('looks at a file, takes it, and finds it taken', async () => {
    const path = join(dir, 'list.csv');
    writeFileSync(path, sample('register-continental.csv'));
    expect(await run(importCommand, path)).toBe(0);
    expect(said.at(-1)).toBe('Sound: 60. In the register already: 0. Faulty: 0.');
    expect(await run(importCommand, path, '--take', 'all')).toBe(0);
    expect(await run(importCommand, path, '--take', 'all')).toBe(0);
    expect(said).toEqual(['Taken: 0. In the register already: 60. Faulty: 0.']);
  });

  it('writes the faulty rows to mend', async () => {
    const [path, mend] = [join(dir, 'bad.csv'), join(dir, 'mend.csv')];
    writeFileSync(path, 'Tag,Kind,Make,Serial,WLL\nA,sling,N,S1,2 ton\n');
    expect(await run(importCommand, path)).toBe(1);
    expect(said[0]).toContain("Row 2, WLL, '2 ton': A ton may be 1000 kg");
    expect(await run(importCommand, path, '--take', 'sound', '--to-mend', mend)).toBe(1);
    expect(readFileSync(mend, 'utf8')).toContain('A,sling,N,S1,2 ton,');
  });

  it('writes the register to a file named as CSV or XLSX', async () => {
    expect(await run(exportCommand, join(dir, 'out.csv'))).toBe(0);
    expect(readFileSync(join(dir, 'out.csv'), 'utf8')).toContain('Z-0060');
    expect(await run(exportCommand, join(dir, 'out.xlsx'))).toBe(0);
    expect(readFileSync(join(dir, 'out.xlsx')).subarray(0, 2).toString()).toBe('PK');
  });

  it('says how to be typed', async () => {
    expect(await run(importCommand)).toBe(2);
    expect(await run(importCommand, 'a.csv', '--take', 'some')).toBe(2);
    expect(await run(exportCommand, 'out.pdf')).toBe(2);
    expect(said).toEqual([`npm run tackleroom -- ${exportCommand.usage}`]);
  });
});
