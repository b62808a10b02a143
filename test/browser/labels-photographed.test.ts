import jsQR from 'jsqr';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { SMALLEST_MODULE_MM } from '../../src/labels/draw-label.js';
import { SHEET_LAYOUTS } from '../../src/labels/sheet-layout.js';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { launchBrowser } from '../support/browser.js';
import { startBuiltServer, type BuiltServer } from '../support/built-server.js';
import { greyPicture, inColour, type GreyPicture } from '../support/grey-picture.js';
import { FRAME, photograph, type Shot } from '../support/phone-camera.js';

const STOREMAN = DEMO_ACCOUNTS.find(({ roles }) => roles.includes('storeman'));

/** So long that the codes have the most modules that fit the smallest label: the hardest print that is made. */
const PUBLIC_URL = 'https://gear.a-rather-long-name-of-a-firm-of-riggers.example';

/** The pixels of the page for a CSS pixel, of which there are 96 in an inch. */
const SHARPNESS = 4;
const PIXELS_PER_MM = (96 / 25.4) * SHARPNESS;

/** From where a label is read: its code is as wide as the reach of a hand. Common practice, no source. */
const DISTANCE_MM: Readonly<Record<string, number>> = { 'a4-plain': 1_000 };
const HAND_MM = 200;

/** A printed label, and where its code is from the middle of it. */
interface Printed {
  readonly picture: GreyPicture;
  readonly url: string;
  readonly code: { readonly xMm: number; readonly yMm: number; readonly edgeMm: number };
  readonly moduleMm: number;
}

type Look = Omit<Shot, 'distanceMm' | 'blurMm' | 'glare'> & {
  /** Out of focus, in modules of the code. */
  readonly blurModules?: number;
  /** A patch of glare on the code: where from its middle and how wide, in edges of the code. */
  readonly glareAt?: readonly [x: number, y: number, radius: number];
};

const LOOKS: readonly (readonly [string, Look])[] = [
  ['held straight', {}],
  ['leaning away by 40 degrees', { tiltDegrees: 40 }],
  ['round a corner, turned by 33 degrees', { panDegrees: 35, rollDegrees: 33 }],
  ['upside down and askew', { tiltDegrees: 30, panDegrees: -25, rollDegrees: 200 }],
  ['on its side, in a hand that is not still', { rollDegrees: 90, blurModules: 0.35 }],
  ['pale in a dim hall', { ink: 90, paper: 140, noise: 4 }],
  ['half in the shade', { rollDegrees: -20, shade: 0.7, noise: 3 }],
  ['under a lamp that is mirrored in it', { glareAt: [0.12, 0.1, 0.14] }],
  [
    'with some of all that',
    {
      ...{ tiltDegrees: 20, panDegrees: 15, rollDegrees: 33, blurModules: 0.25 },
      ...{ ink: 50, paper: 150, noise: 5, shade: 0.4, glareAt: [0.1, 0.05, 0.1] },
    },
  ],
];

// Two readers of ISO/IEC 18004 that share no code with the maker of our codes: the one the phone page brings along, and
// a weaker one, from less far.
describe('labels as a camera sees them on site', () => {
  let server: BuiltServer;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
    const wasmBinary = new Uint8Array(await readFile(wasm)).buffer;
    await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true });
    server = await startBuiltServer({ demo: true, environment: { PUBLIC_URL } });
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 900, height: 1200 }, deviceScaleFactor: SHARPNESS });
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

  async function labelOn(layout: string): Promise<Printed> {
    await page.goto(`${server.address}/labels/sheets?tags=RS-001&layout=${layout}`);
    const label = page.locator('.label').first();
    const tag = (await label.getAttribute('data-tag')) ?? '';
    const [around, code] = [
      await box(label.locator('.label-edge')),
      await box(label.locator('.symbol > rect')),
    ];
    const edgeMm = code.width / (96 / 25.4);
    const modules = Number(await label.locator('.symbol > rect').getAttribute('width'));
    return {
      picture: await greyPicture(page, await page.screenshot({ clip: around })),
      url: `${PUBLIC_URL}/t/${encodeURIComponent(tag)}`,
      code: {
        xMm: (code.x + code.width / 2 - around.x - around.width / 2) / (96 / 25.4),
        yMm: (code.y + code.height / 2 - around.y - around.height / 2) / (96 / 25.4),
        edgeMm,
      },
      moduleMm: edgeMm / modules,
    };
  }

  describe.each(SHEET_LAYOUTS.map(({ name, key }) => [name, key] as const))('%s', (_name, key) => {
    let printed: Printed;
    beforeAll(async () => void (printed = await labelOn(key)));

    it.each(LOOKS)('%s', async (_look, look) => {
      const picture = photograph(
        printed.picture,
        PIXELS_PER_MM,
        shotOf(printed, look, DISTANCE_MM[key] ?? HAND_MM),
      );
      expect(await readByPhone(picture)).toBe(printed.url);
    });
  });

  describe('the hardest print, by the weaker reader, from a hand’s breadth away', () => {
    let printed: Printed;
    beforeAll(async () => void (printed = await labelOn('a4-4x10-52x29')));

    it('has modules as small as any that are printed', () => {
      expect(printed.moduleMm).toBeGreaterThanOrEqual(SMALLEST_MODULE_MM);
      expect(printed.moduleMm).toBeLessThan(1.1 * SMALLEST_MODULE_MM);
    });

    it.each(LOOKS.filter(([, { ink }]) => ink === undefined))('%s', (_look, look) => {
      const picture = photograph(printed.picture, PIXELS_PER_MM, shotOf(printed, look, 110));
      expect(jsQR.default(inColour(picture), FRAME.width, FRAME.height)?.data).toBe(printed.url);
    });
  });
});

function shotOf({ code, moduleMm }: Printed, look: Look, distanceMm: number): Shot {
  const { blurModules = 0, glareAt, ...rest } = look;
  const [x, y, radius] = glareAt ?? [0, 0, 0];
  const glare = {
    xMm: code.xMm + x * code.edgeMm,
    yMm: code.yMm + y * code.edgeMm,
    radiusMm: radius * code.edgeMm,
  };
  return { ...rest, distanceMm, blurMm: blurModules * moduleMm, ...(glareAt && { glare }) };
}

async function readByPhone(picture: GreyPicture): Promise<string | undefined> {
  const image = { data: inColour(picture), ...FRAME, colorSpace: 'srgb' as const };
  const found = await readBarcodes(image, { formats: ['QRCode'], maxNumberOfSymbols: 1 });
  return found.find(({ isValid }) => isValid)?.text;
}

async function box(place: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  const found = await place.boundingBox();
  if (!found) throw new Error('There is no such label on the page.');
  return found;
}
