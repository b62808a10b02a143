/** Files of the types that people send, as short as their formats allow a reader to tell them. */

/** A whole PNG of one pixel (ISO/IEC 15948). */
export const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

/** The beginning of a JPEG file (ISO/IEC 10918-5: start of image, application marker 0, JFIF), then its end, with some bytes between. */
export function jpeg(content = 'photo'): Buffer {
  const head = [0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0];
  return Buffer.concat([Buffer.from(head), Buffer.from(content), Buffer.from([0xff, 0xd9])]);
}

/** The beginning of a WebP file (RFC 9649, section 2.4). */
export const WEBP = Buffer.concat([
  Buffer.from('RIFF'),
  Buffer.from([22, 0, 0, 0]),
  Buffer.from('WEBPVP8 '),
  Buffer.alloc(14),
]);

/** The beginning and the end of a PDF file (ISO 32000-1, 7.5). */
export const PDF = Buffer.from('%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\ntrailer\n<< >>\n%%EOF\n');

/** The beginning of an HEIC file (ISO/IEC 23008-12: a file type box with the brand `heic`). */
export const HEIC = Buffer.concat([
  Buffer.from([0, 0, 0, 24]),
  Buffer.from('ftypheic'),
  Buffer.alloc(4),
  Buffer.from('mif1heic'),
]);

/** A drawing that would run a script in whoever opens it. */
export const SVG_WITH_SCRIPT = Buffer.from(
  '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
);
