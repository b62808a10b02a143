import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHEET_LAYOUTS } from '../../src/labels/sheet-layout.js';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { seededRandom } from '../support/seeded-random.js';

const STOREMAN = DEMO_ACCOUNTS.find(({ roles }) => roles.includes('storeman'));

/** How a label looks to a camera on site. */
interface Look {
  readonly turnDegrees?: number;
  readonly blurPixels?: number;
  readonly brightness?: number;
  /** Largest change of a sign of a pixel, of 255. */
  readonly noise?: number;
  /** Part of the code's edge that is covered by a blot. */
  readonly blot?: number;
}

const LOOKS: readonly (readonly [string, Look])[] = [
  ['as printed', {}],
  ['turned by 7 degrees', { turnDegrees: 7 }],
  ['turned by a right angle', { turnDegrees: 90 }],
  ['out of focus', { blurPixels: 2 }],
  ['in the dark', { brightness: 0.3 }],
  ['with noise', { noise: 11 }],
  ['turned, out of focus, dark and noisy', { turnDegrees: 7, blurPixels: 1.2, brightness: 0.6, noise: 12 }],
  ['with a blot on it', { blot: 0.2 }],
];

interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

// Decoded by jsQR, a reader of ISO/IEC 18004 that shares no code with the maker of our codes.
describe('printed labels', () => {
  let server: BuiltServer;
  let browser: Browser;
  let page: Page;
  let canvas: Page;

  beforeAll(async () => {
    server = await startBuiltServer({ demo: true });
    browser = await launchBrowser();
    const context = await browser.newContext({
      viewport: { width: 900, height: 1200 },
      deviceScaleFactor: 4,
    });
    page = await context.newPage();
    canvas = await context.newPage();
    await page.goto(`${server.address}/sign-in`);
    await page.getByLabel('Sign-in name').fill(STOREMAN?.signInName ?? '');
    await page.getByLabel('Password').fill(STOREMAN?.password ?? '');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL(`${server.address}/`);
  });
  afterAll(async () => {
    await browser.close();
    await server.stop();
  });

  const open = (query: string) => page.goto(`${server.address}/labels/sheets?${query}`);

  it.each(SHEET_LAYOUTS.map(({ name, key }) => [name, key] as const))(
    'on %s are read back by another reader, and keep their words inside',
    async (_name, key) => {
      await open(`kind=panelLifter&layout=${key}`);
      const labels = await page.locator('.label').all();
      expect(labels.length).toBeGreaterThan(2);
      for (const label of labels.slice(0, 3)) {
        const tag = (await label.getAttribute('data-tag')) ?? '';
        const pixels = await look(canvas, await label.screenshot(), {});
        expect(read(pixels)).toBe(`${server.address}/t/${encodeURIComponent(tag)}`);
      }
      expect(await page.evaluate(wordsOutside)).toEqual([]);
    },
  );

  it.each(LOOKS)('are read back %s', async (_name, how) => {
    await open('kind=ratchetStrap&layout=a4-4x10-52x29');
    const label = page.locator('.label').first();
    const url = `${server.address}/t/${await label.getAttribute('data-tag')}`;
    const pixels = await look(canvas, await label.locator('.symbol').screenshot(), how);
    expect(read(withNoise(pixels, how.noise ?? 0))).toBe(url);
  });

  it('lead to the item on a phone', async () => {
    await open('kind=panelLifter&layout=single-60x40');
    const tag = (await page.locator('.label').first().getAttribute('data-tag')) ?? '';
    await page.goto(`${server.address}/t/${encodeURIComponent(tag)}`);
    expect(page.url()).toMatch(/\/register\/\d+$/);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(tag);
  });

  it.each([
    ['a4-3x8-70x37', 22, [210, 297]],
    ['a4-4x10-52x29', 1, [210, 297]],
    ['single-60x40', 1, [60, 40]],
    ['a4-plain', 1, [210, 297]],
  ] as const)(
    'of %s come out of the printer on as many pages of the right size',
    async (key, start, size) => {
      await open(`kind=panelLifter&layout=${key}&start=${start}`);
      const sheets = await page.locator('.label-sheet').count();
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      expect(boxes).toHaveLength(sheets);
      for (const [, width, height] of boxes) {
        const inMm = [Number(width), Number(height)].map((points) => (points * 25.4) / 72);
        expect(Math.abs((inMm[0] ?? 0) - size[0])).toBeLessThan(0.5);
        expect(Math.abs((inMm[1] ?? 0) - size[1])).toBeLessThan(0.5);
      }
    },
  );
});

function read({ data, width, height }: Pixels): string | undefined {
  return jsQR.default(data, width, height)?.data;
}

/** The picture as a camera would see it, on grey ground so that its edge is no help. */
async function look(canvas: Page, png: Buffer, how: Look): Promise<Pixels> {
  const drawn = await canvas.evaluate(
    async ({ source, turnDegrees = 0, blurPixels = 0, brightness = 1, blot = 0 }) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const surface = document.createElement('canvas');
      const scale = Math.min(1, 600 / Math.max(image.width, image.height));
      const [imageWidth, imageHeight] = [image.width * scale, image.height * scale];
      const edge = Math.ceil(Math.hypot(imageWidth, imageHeight)) + 40;
      [surface.width, surface.height] = [edge, edge];
      const context = surface.getContext('2d');
      if (!context) throw new Error('There is no canvas.');
      context.filter = `blur(${blurPixels}px) brightness(${brightness})`;
      context.fillStyle = '#bbb';
      context.fillRect(0, 0, edge, edge);
      context.translate(edge / 2, edge / 2);
      context.rotate((turnDegrees * Math.PI) / 180);
      context.drawImage(image, -imageWidth / 2, -imageHeight / 2, imageWidth, imageHeight);
      context.fillStyle = '#222';
      const blotEdge = blot * imageWidth;
      context.fillRect(-blotEdge / 2, -blotEdge / 2, blotEdge, blotEdge);
      const { data } = context.getImageData(0, 0, edge, edge);
      const grey = Array.from({ length: edge * edge }, (_, pixel) => data[pixel * 4] ?? 0);
      return { grey, width: edge, height: edge };
    },
    { source: `data:image/png;base64,${png.toString('base64')}`, ...how },
  );
  const data = Uint8ClampedArray.from(drawn.grey.flatMap((value) => [value, value, value, 255]));
  return { data, width: drawn.width, height: drawn.height };
}

/** The same pixels with noise, the same each time. */
function withNoise({ data, width, height }: Pixels, most: number): Pixels {
  const random = seededRandom(18_004);
  const noisy = data.map((value, place) => (place % 4 === 3 ? value : value + random.whole(-most, most)));
  return { data: noisy, width, height };
}

/** Runs in the page: words that stick out of their label or run into its code. */
function wordsOutside(): string[] {
  return Array.from(document.querySelectorAll('.label')).flatMap((label) => {
    const edge = label.querySelector('.label-edge')?.getBoundingClientRect();
    const code = label.querySelector('.symbol')?.getBoundingClientRect();
    if (!edge || !code) return ['a label without edge or code'];
    return Array.from(label.querySelectorAll('text')).flatMap((text) => {
      const box = text.getBoundingClientRect();
      const isInside = box.left >= edge.left && box.right <= edge.right && box.bottom <= edge.bottom;
      const isClear = box.left >= code.right || box.top >= code.bottom;
      return isInside && isClear ? [] : [text.textContent ?? ''];
    });
  });
}
