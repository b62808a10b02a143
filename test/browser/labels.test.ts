import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SHEET_LAYOUTS } from '../../src/labels/sheet-layout.js';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { greyPicture, inColour, type GreyPicture } from '../support/grey-picture.js';

const STOREMAN = DEMO_ACCOUNTS.find(({ roles }) => roles.includes('storeman'));

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
        const picture = await greyPicture(canvas, await label.screenshot(), 600);
        expect(read(picture)).toBe(`${server.address}/t/${encodeURIComponent(tag)}`);
      }
      expect(await page.evaluate(wordsOutside)).toEqual([]);
    },
  );

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

function read(picture: GreyPicture): string | undefined {
  return jsQR.default(inColour(picture), picture.width, picture.height)?.data;
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
