import type { CheckPoint } from '../checks/checklist.js';
import type { Citation } from '../citation.js';
import type { Measure } from '../quantities/marking.js';
import type { Duty } from './gear.js';

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
  /** What is looked at, and measured where needed, before each use; never empty. */
  readonly checklist: readonly CheckPoint[];
  readonly cautions: readonly { readonly text: string; readonly source: Citation }[];
}
