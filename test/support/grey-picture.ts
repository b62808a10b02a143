import type { Page } from 'playwright-core';

/** A grey picture, row by row, 0 for black and 255 for white. */
export interface GreyPicture {
  readonly grey: ArrayLike<number>;
  readonly width: number;
  readonly height: number;
}

/** The pixels of a picture, decoded by the browser, and made smaller where its longer side is more than `mostPx`. */
export async function greyPicture(page: Page, png: Buffer, mostPx = Infinity): Promise<GreyPicture> {
  const { address, width, height } = await page.evaluate(
    async ({ source, most }) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const scale = Math.min(1, most / Math.max(image.width, image.height));
      const surface = document.createElement('canvas');
      [surface.width, surface.height] = [image.width * scale, image.height * scale];
      const pencil = surface.getContext('2d');
      if (!pencil) throw new Error('There is no canvas.');
      pencil.drawImage(image, 0, 0, surface.width, surface.height);
      const { data } = pencil.getImageData(0, 0, surface.width, surface.height);
      const grey = Uint8Array.from({ length: data.length / 4 }, (_, pixel) => data[pixel * 4] ?? 0);
      const reader = new FileReader();
      const isRead = new Promise((give) => reader.addEventListener('load', give));
      reader.readAsDataURL(new Blob([grey]));
      await isRead;
      const told = typeof reader.result === 'string' ? reader.result : '';
      return { address: told, width: surface.width, height: surface.height };
    },
    { source: `data:image/png;base64,${png.toString('base64')}`, most: mostPx },
  );
  return { grey: Buffer.from(address.slice(address.indexOf(',') + 1), 'base64'), width, height };
}

/** The same picture as a decoder takes it: red, green, blue and opacity. */
export function inColour({ grey, width, height }: GreyPicture): Uint8ClampedArray<ArrayBuffer> {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let pixel = 0; pixel < width * height; pixel += 1)
    data.fill(grey[pixel] ?? 0, pixel * 4, pixel * 4 + 3);
  return data;
}
