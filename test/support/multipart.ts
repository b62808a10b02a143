const BOUNDARY = 'tackleroom-test-boundary';

/** Headers and payload of a form that holds one file. */
export function multipartFile(
  content: Buffer,
  fileName: string,
): { headers: Record<string, string>; payload: Buffer } {
  const head = `--${BOUNDARY}\r\ncontent-disposition: form-data; name="file"; filename="${fileName}"\r\ncontent-type: application/octet-stream\r\n\r\n`;
  return {
    headers: { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` },
    payload: Buffer.concat([Buffer.from(head), content, Buffer.from(`\r\n--${BOUNDARY}--\r\n`)]),
  };
}

/** The same of CSV text. */
export function multipartCsv(text: string): { headers: Record<string, string>; payload: Buffer } {
  return multipartFile(Buffer.from(text), 'gear.csv');
}
