import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type TestAgent from 'supertest/lib/agent.js';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { DocumentFiles } from '../../src/documents/document-files.js';
import { Ledger } from '../../src/ledger/ledger.service.js';
import { SETTINGS, type Settings } from '../../src/settings.js';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';
import { expectWholeLedger } from '../support/invariants.js';
import { HEIC, jpeg, PDF, PNG, SVG_WITH_SCRIPT, WEBP } from '../support/sample-files.js';

interface Sent {
  readonly bytes: Buffer;
  readonly filename?: string;
  readonly filepath?: string;
  readonly contentType?: string;
}

describe.each(ENGINES)('documents on %s', (engine) => {
  let server: GearServer;
  let folder: string;
  let itemId: number;
  beforeAll(async () => {
    server = await startGearServer(engine);
    folder = join(server.app.get<Settings>(SETTINGS).dataDir, 'documents');
    itemId = (await server.newItem()).id;
  });
  afterAll(() => server.close());
  afterEach(() => vi.restoreAllMocks());

  const send = (who: TestAgent, kind: string, { bytes, ...named }: Sent, fields: object = {}) => {
    const request = who.post(`/api/items/${itemId}/documents`).field('kind', kind);
    for (const [name, value] of Object.entries(fields)) void request.field(name, String(value));
    return request.attach('file', bytes, { filename: 'x', ...named });
  };
  const fileOf = (sha256: string) => join(folder, sha256.slice(0, 2), sha256);
  const hash = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');
  const documents = async (): Promise<{ id: number; sha256: string }[]> =>
    (await server.crew.get(`/api/items/${itemId}/documents`).expect(200)).body;

  it.each([
    ['a JPEG photo', 'photo', jpeg('a'), 'sling.JPG', 'image/jpeg'],
    ['a PNG photo', 'photo', PNG, 'hook.png', 'image/png'],
    ['a WebP photo', 'photo', WEBP, 'latch.webp', 'image/webp'],
    ['a PDF certificate', 'certificate', PDF, 'report 7.pdf', 'application/pdf'],
    ['a scanned certificate', 'certificate', jpeg('scan'), 'scan.jpeg', 'image/jpeg'],
  ])('keeps %s byte for byte, and gives it back', async (_what, kind, bytes, filename, mediaType) => {
    const { body } = await send(server.storeman, kind, { bytes, filename }).expect(201);
    const expected = {
      kind,
      mediaType,
      name: filename,
      sizeBytes: bytes.length,
      sha256: hash(bytes),
      itemId,
    };
    expect(body).toMatchObject({ ...expected, inspectionId: null, defectId: null });
    expect(body.keptBy).toMatch(/^Person \d/);
    expect(readFileSync(fileOf(hash(bytes)))).toEqual(bytes);
    const answer = await server.crew.get(`/documents/${body.id}`).buffer(true).expect(200);
    expect(answer.headers).toMatchObject({
      'content-type': mediaType,
      'content-length': String(bytes.length),
      etag: `"${hash(bytes)}"`,
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-cache',
      'content-security-policy': "default-src 'none'; sandbox; frame-ancestors 'none'",
    });
    const shown = mediaType.startsWith('image/') ? 'inline' : 'attachment';
    expect(answer.headers['content-disposition']).toBe(
      `${shown}; filename="${filename.replace(' ', '_')}"; filename*=UTF-8''${encodeURIComponent(filename)}`,
    );
    expect(hash(answer.body)).toBe(hash(bytes));
    const again = server.crew.get(`/documents/${body.id}`).set('if-none-match', answer.headers['etag'] ?? '');
    expect((await again.expect(304)).text).toBe('');
  });

  it('keeps the same file twice as one, and one file for two items', async () => {
    const bytes = jpeg('twice');
    const first = await send(server.crew, 'photo', { bytes, filename: 'one.jpg' }).expect(201);
    const before = await expectWholeLedger(server.app);
    const second = await send(server.crew, 'photo', { bytes, filename: 'two.jpg' }).expect(201);
    expect(second.body).toEqual(first.body);
    expect(await expectWholeLedger(server.app)).toBe(before);
    const other = (await server.newItem()).id;
    const third = await server.crew
      .post(`/api/items/${other}/documents`)
      .field('kind', 'photo')
      .attach('file', bytes, 'three.jpg')
      .expect(201);
    expect(third.body.id).not.toBe(first.body.id);
    expect(third.body.sha256).toBe(first.body.sha256);
    expect(
      readdirSync(join(folder, hash(bytes).slice(0, 2))).filter((name) => name === hash(bytes)),
    ).toHaveLength(1);
  });

  it('belongs to a record of the same item only', async () => {
    const defect = { severity: 'observation', description: 'scratched' };
    await server.crew.post(`/api/items/${itemId}/defects`).send(defect).expect(201);
    const [{ id: defectId }] = (await server.crew.get(`/api/items/${itemId}/defects`)).body;
    const sent = { bytes: jpeg('scratch'), filename: 'a.jpg' };
    const { body } = await send(server.crew, 'photo', sent, { defectId }).expect(201);
    expect(body).toMatchObject({ defectId, inspectionId: null });
    for (const field of ['defectId', 'inspectionId']) {
      const refused = await send(server.crew, 'photo', sent, { [field]: 99_999 }).expect(400);
      expect(refused.body.errors[0].field).toBe(field);
    }
  });

  it.each<[string, string, Sent, string]>([
    ['an HTML page named .jpg', 'photo', { bytes: Buffer.from('<html>'), filename: 'a.jpg' }, 'no JPEG'],
    [
      'a PNG named .jpg',
      'photo',
      { bytes: PNG, filename: 'a.jpg', contentType: 'image/png' },
      'ends in .jpg',
    ],
    ['a PNG sent as JPEG', 'photo', { bytes: PNG, filename: 'a.png', contentType: 'image/jpeg' }, 'sent as'],
    ['a PDF named .pdf.exe', 'certificate', { bytes: PDF, filename: 'a.pdf.exe' }, 'ends in .exe'],
    ['an SVG with a script', 'photo', { bytes: SVG_WITH_SCRIPT, filename: 'a.svg' }, 'no JPEG'],
    ['an SVG that says it is a PNG', 'photo', { bytes: SVG_WITH_SCRIPT, filename: 'a.png' }, 'no JPEG'],
    ['an HEIC photo', 'photo', { bytes: HEIC, filename: 'IMG_1.HEIC' }, 'most compatible'],
    ['an HEIC photo named .jpg', 'photo', { bytes: HEIC, filename: 'IMG_1.jpg' }, 'send a JPEG'],
    ['a PDF as a photo', 'photo', { bytes: PDF, filename: 'a.pdf' }, 'kept as a certificate'],
    ['a WebP as a certificate', 'certificate', { bytes: WEBP, filename: 'a.webp' }, 'PDF, JPEG or PNG'],
  ])('refuses %s', async (what, kind, file, words) => {
    const sent = { ...file, bytes: Buffer.concat([file.bytes, Buffer.from(what)]) };
    const before = await documents();
    const { body } = await send(server.storeman, kind, sent).expect(415);
    expect(body.code).toBe('wrong_file_type');
    expect(body.detail).toContain(words);
    expect(await documents()).toEqual(before);
    expect(existsSync(fileOf(hash(sent.bytes)))).toBe(false);
  });

  it.each([
    ['a blob without a name of its own', 'blob', 'image/jpeg'],
    ['a name in capitals', 'A.JPEG', 'image/jpeg'],
    ['a type that says nothing', 'a.jpg', 'application/octet-stream'],
    ['the old name of the type', 'a.jpg', 'image/jpg'],
  ])('takes %s', async (what, filename, contentType) => {
    const sent = { bytes: jpeg(what), filename, contentType };
    const { body } = await send(server.crew, 'photo', sent).expect(201);
    expect(body.mediaType).toBe('image/jpeg');
  });

  it('refuses no file, an empty file, an unknown kind and what is no form, naming each', async () => {
    const fieldOf = async (request: ReturnType<typeof send>) =>
      (await request.expect(400)).body.errors[0].field;
    const path = `/api/items/${itemId}/documents`;
    expect(await fieldOf(send(server.crew, 'photo', { bytes: Buffer.alloc(0), filename: 'a.jpg' }))).toBe(
      'file',
    );
    expect(await fieldOf(server.crew.post(path).field('kind', 'photo'))).toBe('file');
    expect(await fieldOf(server.crew.post(path).send({ kind: 'photo' }))).toBe('file');
    expect(await fieldOf(send(server.crew, 'video', { bytes: jpeg(), filename: 'a.jpg' }))).toBe('kind');
    const surprise = send(server.crew, 'photo', { bytes: jpeg(), filename: 'a.jpg' }, { surprise: 1 });
    expect(await fieldOf(surprise)).toBe('surprise');
    await server.crew
      .post('/api/items/99999/documents')
      .field('kind', 'photo')
      .attach('file', PNG, 'a.png')
      .expect(404);
  });

  it('takes 10 MB, and refuses a byte more and 12 MB', async () => {
    const large = (size: number) => Buffer.concat([jpeg(String(size)), Buffer.alloc(size)]).subarray(0, size);
    await send(server.crew, 'photo', { bytes: large(10_000_000), filename: 'a.jpg' }).expect(201);
    for (const size of [10_000_001, 12_000_000]) {
      const { body } = await send(server.crew, 'photo', { bytes: large(size), filename: 'a.jpg' }).expect(
        413,
      );
      expect(body).toMatchObject({ code: 'document_too_large', detail: 'A file may have 10 MB at most.' });
      expect(existsSync(fileOf(hash(large(size))))).toBe(false);
    }
  });

  it('finds no way out of its folder by any name', async () => {
    const names = [
      '../../../etc/passwd.jpg',
      '..\\..\\boot.jpg',
      '/etc/shadow.jpg',
      'C:\\x.jpg',
      '.jpg',
      '..',
      'a\u202egpj.jpg',
    ];
    for (const [place, filepath] of names.entries()) {
      const bytes = jpeg(`path ${place}`);
      const { body } = await send(server.crew, 'photo', { bytes, filepath }).expect(201);
      expect(body.name).not.toMatch(/[/\\\u202e]/);
      expect(readFileSync(fileOf(hash(bytes)))).toEqual(bytes);
      const answer = await server.crew.get(`/documents/${body.id}`).expect(200);
      expect(answer.headers['content-disposition']).not.toMatch(/[/\\\n]/);
    }
    const kept = readdirSync(folder, { recursive: true, withFileTypes: true });
    const strange = kept.filter((entry) => entry.isFile() && !/^[0-9a-f]{64}$/.test(entry.name));
    expect(strange.map(({ name }) => name)).toEqual([]);
    for (const path of ['0', '-1', 'x', '..%2f..%2fetc%2fpasswd', '99999', '2147483648']) {
      await server.crew.get(`/documents/${path}`).expect(404);
    }
  });

  it('writes no row where the file could not be written, and loses nothing where the row could not', async () => {
    const sent = { bytes: jpeg('cut off'), filename: 'a.jpg' };
    const before = await documents();
    vi.spyOn(DocumentFiles.prototype, 'keep').mockRejectedValueOnce(new Error('the disk is full'));
    await send(server.crew, 'photo', sent).expect(500);
    expect(await documents()).toEqual(before);
    vi.spyOn(Ledger.prototype, 'change').mockRejectedValueOnce(new Error('the database is gone'));
    await send(server.crew, 'photo', sent).expect(500);
    expect(await documents()).toEqual(before);
    expect(existsSync(fileOf(hash(sent.bytes)))).toBe(true);
    await send(server.crew, 'photo', sent).expect(201);
    expect(await documents()).toHaveLength(before.length + 1);
  });

  it('mends a file that a crash of the machine left short, and says when one is missing', async () => {
    const sent = { bytes: jpeg('short'), filename: 'a.jpg' };
    const { body } = await send(server.crew, 'photo', sent).expect(201);
    writeFileSync(fileOf(body.sha256), 'sh');
    await send(server.crew, 'photo', sent).expect(201);
    expect(readFileSync(fileOf(body.sha256))).toEqual(sent.bytes);
    rmSync(fileOf(body.sha256));
    const { text } = await server.crew.get(`/documents/${body.id}`).expect(404);
    expect(text).toContain('restore it from the backup');
  });

  it('takes effect once for one Idempotency-Key, and refuses the key with another file', async () => {
    const post = (content: string) =>
      send(server.crew, 'photo', { bytes: jpeg(content), filename: 'a.jpg' }).set(
        'idempotency-key',
        'photo-1',
      );
    const first = await post('once').expect(201);
    const before = await expectWholeLedger(server.app);
    expect((await post('once').expect(201)).body).toEqual(first.body);
    expect((await post('another').expect(422)).body.code).toBe('key_used_otherwise');
    expect(await expectWholeLedger(server.app)).toBe(before);
  });

  it('lets everyone signed in add photos, and certificates those who answer for them', async () => {
    const certificate = { bytes: PDF, filename: 'a.pdf' };
    const { body } = await send(server.crew, 'certificate', certificate).expect(403);
    expect(body.code).toBe('not_your_role');
    for (const who of [server.storeman, server.examiner, server.manager]) {
      await send(who, 'certificate', certificate).expect(201);
    }
    await send(server.visitor(), 'photo', { bytes: PNG, filename: 'a.png' }).expect(401);
    const [some] = await documents();
    await server.visitor().get(`/documents/${some?.id}`).expect(303);
    await server.visitor().get(`/api/items/${itemId}/documents`).expect(401);
  });

  it('stand on the page of the item, and a refused file brings the form again', async () => {
    const { id } = await server.newItem();
    const path = `/register/${id}/documents`;
    const once = (file: string, bytes: Buffer) =>
      server.crew.post(path).field('kind', 'photo').field('_once', 'form-1').attach('file', bytes, file);
    await once('hook.png', PNG).expect(303).expect('location', `/register/${id}#documents`);
    await once('hook.png', PNG).expect(303);
    await once('other.png', Buffer.concat([PNG, PNG])).expect(422);
    const { text } = await server.crew.get(`/register/${id}`).expect(200);
    expect(text.match(/<img[^>]*src="\/documents\/\d+"[^>]*>/g)).toHaveLength(1);
    expect(text).toMatch(/<img[^>]*alt="Photo hook.png"[^>]*loading="lazy"/);
    expect(text).toContain('photo or certificate added');
    expect(text).not.toContain('value="certificate"');
    const refused = await server.crew
      .post(path)
      .field('kind', 'photo')
      .attach('file', HEIC, 'a.heic')
      .expect(415);
    expect(refused.text).toContain('most compatible');
    expect(refused.text).toContain(`action="${path}"`);
    const large = Buffer.concat([jpeg(), Buffer.alloc(11_000_000)]);
    const tooLarge = await server.crew
      .post(path)
      .field('kind', 'photo')
      .attach('file', large, 'a.jpg')
      .expect(413);
    expect(tooLarge.text).toContain(`action="${path}"`);
    expect((await server.storeman.get(path).expect(200)).text).toContain('value="certificate"');
  });
});
