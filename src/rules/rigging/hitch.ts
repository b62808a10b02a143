import { Exact } from '../quantities/exact.js';
import type { HitchBand, HitchMode } from '../gear/kind.js';
import type { Figure, Working } from '../working.js';

/** How a sling is to be hitched on a job. The angle is from the leg to the vertical, in degrees, as decimal text. */
export interface Hitch {
  readonly mode: string;
  readonly angleDeg?: string;
}

export type HitchProblemCode =
  'hitch_unknown' | 'hitch_angle_missing' | 'hitch_angle_out_of_range' | 'hitch_angle_not_of_mode';

/** What one sling must be rated for, or why the table does not say. */
export type HitchNeed =
  | { readonly ok: true; readonly wllKg: Exact; readonly slings: number; readonly working: Working }
  | { readonly ok: false; readonly code: HitchProblemCode };

const ANGLE = /^\d{1,3}(\.\d{1,4})?$/;

/** Decimals that a needed working load limit keeps, rounded up: a milligram. */
const NEED_PLACES = { places: 6, rounding: 'up' } as const;

/**
 * The working load limit that one sling must be marked with to carry `loadKg` on this hitch: load / mode factor.
 * An angle beyond the table's last is refused, never extrapolated (EN 1492: no leg beyond 60 degrees to the vertical).
 * So is an angle on a mode without one: parallel legs that are said to be inclined are not parallel.
 *
 * Example: 800 kg choked (0.8) needs a sling of 1000 kg.
 */
export function hitchNeed(loadKg: Exact, hitch: Hitch, modes: readonly HitchMode[]): HitchNeed {
  const mode = modes.find((known) => known.mode === hitch.mode);
  if (!mode) return { ok: false, code: 'hitch_unknown' };
  const band = bandFor(mode, hitch.angleDeg);
  if (typeof band === 'string') return { ok: false, code: band };
  const factor = Exact.of(band.factor);
  const wllKg = loadKg.dividedBy(factor, NEED_PLACES);
  const angle: readonly Figure[] =
    hitch.angleDeg === undefined ? [] : [{ name: 'leg to the vertical', value: hitch.angleDeg, unit: '°' }];
  const working: Working = {
    title: `Sling hitched ${mode.label}`,
    formula: 'load on the hitch / mode factor',
    inputs: [
      { name: 'load on the hitch', value: loadKg.toString(), unit: 'kg' },
      ...angle,
      { name: 'mode factor', value: band.factor, unit: '' },
    ],
    result: { name: 'least rating of one sling', value: wllKg.toString(), unit: 'kg' },
    source: mode.source.key,
    caution:
      'A sling over an edge, or of another kind than textile, carries less: the maker and the lift plan say how much.',
  };
  return { ok: true, wllKg, slings: mode.slings, working };
}

function bandFor({ bands }: HitchMode, angleDeg: string | undefined): HitchBand | HitchProblemCode {
  const always = bands.find(({ throughDeg }) => throughDeg === undefined);
  if (always) return angleDeg === undefined ? always : 'hitch_angle_not_of_mode';
  if (angleDeg === undefined) return 'hitch_angle_missing';
  if (!ANGLE.test(angleDeg)) return 'hitch_angle_out_of_range';
  const angle = Exact.of(angleDeg);
  const band = bands.find(({ throughDeg }) => angle.compare(Exact.of(throughDeg ?? '0')) <= 0);
  return band ?? 'hitch_angle_out_of_range';
}
