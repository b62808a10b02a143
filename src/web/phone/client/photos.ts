/** The longer side of a photo as it is kept and sent, in pixels: a crack in webbing still shows. */
const LONGEST_SIDE_PX = 1600;
const JPEG_QUALITY = 0.8;

/** A photo as it is kept. */
export interface SmallPhoto {
  readonly name: string;
  readonly image: Blob;
}

/** A photo that this phone cannot take, with what to do about it. */
export class PhotoRefused extends Error {}

/**
 * Makes a small JPEG of what the camera gave. What is drawn anew is a photo whatever its name says, and carries no
 * place it was taken at.
 * @throws PhotoRefused of what this browser cannot read as a picture.
 */
export async function shrinkPhoto(file: File): Promise<SmallPhoto> {
  const picture = await decode(file);
  const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const image = await new Promise<Blob | null>((give) => canvas.toBlob(give, 'image/jpeg', JPEG_QUALITY));
  if (!image)
    throw new PhotoRefused('This phone has no memory left for the photo. Close other pages and try again.');
  return { name: `${file.name.replace(/\.[^.]*$/, '') || 'photo'}.jpg`, image };
}

async function decode(file: File): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file);
  } catch {
    throw new PhotoRefused(
      (await isHeif(file))
        ? `'${file.name}' is a HEIC photo, which this browser cannot read. Set the camera to save JPEG and take it again.`
        : `'${file.name}' is not a photo, or it is damaged. Take the photo again.`,
    );
  }
}

/** HEIC is a HEIF file (ISO/IEC 23008-12): a box `ftyp` with one of its brands. */
async function isHeif(file: File): Promise<boolean> {
  const start = new TextDecoder('latin1').decode(await file.slice(4, 12).arrayBuffer());
  return /^ftyp(hei|hev|mif1|msf1)/.test(start);
}
