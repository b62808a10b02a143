import { Exact } from '../rules/quantities/exact.js';
import type { HitchBand, HitchMode } from '../rules/gear/kind.js';
import { readCitation, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

const MODE_SHAPE = { shape: /^[a-z][A-Za-z]*$/, advice: "write a mode such as 'basketParallel'" };
const FACTOR_SHAPE = {
  shape: /^([1-9]\d*(\.\d+)?|0\.\d*[1-9]\d*)$/,
  advice: "write a factor above 0 in quotes, as in '1.4'",
};
const ANGLE_SHAPE = {
  shape: /^([1-8]?\d)(\.\d+)?$/,
  advice: "write an angle from '0' to below '90' in quotes",
};

/** Reads the ways to hitch a sling: each mode once, its bands by rising angle, or one band without an angle. */
export function readHitches(reader: Reader, sources: Sources): HitchMode[] {
  const seen = new Set<string>();
  return reader.readList((entry) => {
    entry.expectKeys(['mode', 'label', 'slings', 'bands', 'source']);
    const mode = entry.at('mode').readText(MODE_SHAPE);
    if (seen.has(mode)) entry.at('mode').refuse(`'${mode}' is there already`, 'write each mode once');
    seen.add(mode);
    const bands = entry.at('bands').readList(readBand);
    if (!isRising(bands)) {
      entry
        .at('bands')
        .refuse(
          'bands are out of order',
          'write one band without throughDeg, or several by rising throughDeg',
        );
    }
    return {
      mode,
      label: entry.at('label').readText(),
      slings: entry.at('slings').readWhole({ from: 1, to: 2 }),
      bands,
      source: readCitation(entry.at('source'), sources),
    };
  });
}

function readBand(reader: Reader): HitchBand {
  reader.expectKeys(['factor'], ['throughDeg']);
  const factor = reader.at('factor').readText(FACTOR_SHAPE);
  return reader.has('throughDeg')
    ? { throughDeg: reader.at('throughDeg').readText(ANGLE_SHAPE), factor }
    : { factor };
}

/** One band for every angle, or bands whose angles rise and whose factors do not: flatter never carries more. */
function isRising(bands: readonly HitchBand[]): boolean {
  if (bands.length === 1) return true;
  return bands.every(({ throughDeg, factor }, index) => {
    const before = bands[index - 1];
    if (throughDeg === undefined || !ANGLE_SHAPE.shape.test(throughDeg) || !FACTOR_SHAPE.shape.test(factor))
      return false;
    if (before?.throughDeg === undefined) return index === 0;
    const [angle, angleBefore] = [Exact.of(throughDeg), Exact.of(before.throughDeg)];
    return angleBefore.isLessThan(angle) && !Exact.of(before.factor).isLessThan(Exact.of(factor));
  });
}
