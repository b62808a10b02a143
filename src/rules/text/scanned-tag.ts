/** The code of a label holds the address `http(s)://…/t/TAG`, with whatever host it was printed for. */
const LABEL_ADDRESS = /^https?:\/\/[^?#\s]+\/t\/([^/?#\s]+)\/?(?:[?#].*)?$/i;

/**
 * The tag that a scanner or a person means: of the address on a label its last part, decoded, and anything else as it
 * is, without spaces round it.
 */
export function scannedTag(text: string): string {
  const inAddress = LABEL_ADDRESS.exec(text.trim())?.[1];
  return (inAddress === undefined ? text : decoded(inAddress)).trim();
}

/** What is not rightly encoded was not printed by us, and is taken as it stands. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
