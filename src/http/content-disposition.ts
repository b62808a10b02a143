/** The header that names a file, written as RFC 6266 and RFC 8187 ask, so that every letter arrives. */
export function contentDisposition(type: 'attachment' | 'inline', fileName: string): string {
  const plain = fileName.replace(/[^\w.-]+/g, '_');
  const encoded = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return `${type}; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
