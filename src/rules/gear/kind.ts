import type { Measure } from '../quantities/marking.js';
import type { SourceKey } from '../working.js';
import type { Duty } from './gear.js';

/**
 * How a cited value was checked: seen in the published text itself, seen in a reproduction or sister text of it,
 * or written from memory and still to be looked up.
 */
export const VERIFICATIONS = ['read', 'readInReproduction', 'memory'] as const;
export type Verification = (typeof VERIFICATIONS)[number];

/** Where a fact of the catalogue comes from: a key of `config/sources.yaml` with the place inside it. */
export interface Citation {
  readonly key: SourceKey;
  readonly clause?: string;
  readonly page?: string;
  /** Absent only for common practice, which has no text to check against. */
  readonly verified?: Verification;
}

/** A measured attribute of a kind. `name` ends in its unit (`lengthM`, `jawMaximumMm`). */
export interface DimensionDefinition {
  readonly name: string;
  readonly label: string;
  readonly unit: 'm' | 'mm';
  readonly required: boolean;
}

/** A factor, and the largest angle of the leg to the vertical that it holds for; one without an angle holds always. */
export interface HitchBand {
  readonly throughDeg?: string;
  readonly factor: string;
}

/** One way to hitch a sling, with its factors by rising angle. */
export interface HitchMode {
  readonly mode: string;
  readonly label: string;
  /** How many single slings one such hitch takes at least. */
  readonly slings: number;
  readonly bands: readonly HitchBand[];
  readonly source: Citation;
}

/** A kind of gear as `config/kinds/*.yaml` defines it. Adding a kind is one such file. */
export interface KindDefinition {
  readonly kind: string;
  readonly name: string;
  readonly plural: string;
  /** Two or three letters that proposed tags start with, such as RS. */
  readonly tagPrefix: string;
  /** Other words stores write for it, in any language; used to guess on import. */
  readonly alsoCalled: readonly string[];
  readonly duties: readonly Duty[];
  /** The marking that rates it, with the unit symbols it may be stamped in; absent for gear that carries no rating. A mark in any other unit is a fault. */
  readonly rating?: {
    readonly measure: Measure;
    readonly units: readonly string[];
    readonly required: boolean;
    readonly source: Citation;
  };
  readonly dimensions: readonly DimensionDefinition[];
  /** True for machines that carry by a load chart. */
  readonly loadChart?: boolean;
  readonly serviceLife?: {
    readonly years: number;
    readonly from: 'manufacturedOn' | 'firstUsedOn';
    readonly source: Citation;
  };
  /** Ways to hitch it, for slings: what one must be rated for depends on it. */
  readonly hitches?: readonly HitchMode[];
  readonly cautions: readonly { readonly text: string; readonly source: Citation }[];
}
