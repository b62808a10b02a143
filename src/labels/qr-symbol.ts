import { encode } from 'uqr';

/** The blank edge that a symbol needs on each side, in modules: ISO/IEC 18004. */
export const QUIET_ZONE_MODULES = 4;

/** A QR symbol as drawing commands, one unit to a module. */
export interface QrSymbol {
  /** Modules along an edge, the quiet zone included. */
  readonly edgeModules: number;
  /** The dark modules as the `d` of an SVG path; the origin is the corner of the quiet zone. */
  readonly path: string;
}

/** The QR symbol of a text at error correction level Q, so that a quarter of it may be scratched or muddy (ISO/IEC 18004). */
export function qrSymbol(text: string): QrSymbol {
  const { data, size } = encode(text, { ecc: 'Q', boostEcc: false, border: 0 });
  const runs = data.flatMap((row, y) => runsOf(row).map(({ start, length }) => ({ x: start, y, length })));
  const path = runs
    .map(({ x, y, length }) => `M${x + QUIET_ZONE_MODULES} ${y + QUIET_ZONE_MODULES}h${length}v1h-${length}z`)
    .join('');
  return { edgeModules: size + 2 * QUIET_ZONE_MODULES, path };
}

/** The dark runs of a row: one shape each, so that no hairline is printed between two modules. */
function runsOf(row: readonly boolean[]): { start: number; length: number }[] {
  const runs: { start: number; length: number }[] = [];
  for (const [x, dark] of row.entries()) {
    const last = runs.at(-1);
    if (!dark) continue;
    if (last && last.start + last.length === x) last.length += 1;
    else runs.push({ start: x, length: 1 });
  }
  return runs;
}
