import { scannedTag } from '../../../rules/text/scanned-tag.js';

/** Gives the text of a QR code in a picture of the camera, or undefined where there is none. */
export type Decoder = (video: HTMLVideoElement) => Promise<string | undefined>;

/** The browser's own detector, as far as it is used here; not every browser has one. */
interface Detector {
  detect(source: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { formats: readonly string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}
declare global {
  var BarcodeDetector: DetectorClass | undefined;
}

/** The browser's own detector where it reads QR codes, else the one that Tackleroom brings along. */
export async function chooseDecoder(): Promise<Decoder> {
  return (await ownDecoder().catch(() => undefined)) ?? broughtDecoder();
}

async function ownDecoder(): Promise<Decoder | undefined> {
  const Detector = globalThis.BarcodeDetector;
  if (!Detector) return undefined;
  const formats = await Detector.getSupportedFormats();
  if (!formats.includes('qr_code')) return undefined;
  const detector = new Detector({ formats: ['qr_code'] });
  return async (video) => (await detector.detect(video))[0]?.rawValue;
}

/** Loaded when it is first needed: it is the largest part of the page. The service worker has it for offline. */
async function broughtDecoder(): Promise<Decoder> {
  const { prepareZXingModule, readBarcodes } = await import('zxing-wasm/reader');
  await prepareZXingModule({
    overrides: { locateFile: () => '/phone/app/lib/zxing_reader.wasm' },
    fireImmediately: true,
  });
  const canvas = document.createElement('canvas');
  const pencil = canvas.getContext('2d', { willReadFrequently: true });
  return async (video) => {
    if (!pencil || video.videoWidth === 0) return undefined;
    [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
    pencil.drawImage(video, 0, 0);
    const picture = pencil.getImageData(0, 0, canvas.width, canvas.height);
    const found = await readBarcodes(picture, { formats: ['QRCode'], maxNumberOfSymbols: 1 });
    return found.find(({ isValid }) => isValid)?.text;
  };
}

/** The tag that a label or a person means. Tags are written in capitals. */
export function tagFrom(text: string): string {
  return scannedTag(text).toUpperCase();
}
