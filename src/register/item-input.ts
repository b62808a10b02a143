import type { WrittenScheme } from '../rules/gear/gear.js';
import type { LoadChart } from '../rules/hosting/load-chart.js';
import type { Marking } from '../rules/quantities/marking.js';

/** An item as someone enters or imports it: everything the register keeps that no use case decides. */
export interface ItemInput {
  readonly tag: string;
  readonly kind: string;
  readonly storeId: number;
  readonly maker: string;
  /** Left out only together with `serialUnknown`. */
  readonly serial?: string;
  /** Says that the plate cannot be read. Such an item is registered, and refused for every duty. */
  readonly serialUnknown?: boolean;
  /** The maker's batch or lot, as on the plate or the certificate. */
  readonly batch?: string;
  /** Read as true when left out. */
  readonly labelLegible?: boolean;
  /** Read as false when left out. */
  readonly certificateOnFile?: boolean;
  readonly markings?: readonly Marking[];
  /** Exact decimal text by name, in the unit the name ends in. */
  readonly dimensions?: Readonly<Record<string, string>>;
  /** Whose it is, for gear that is hired in, and the days of the hire, both included. */
  readonly owner?: string;
  readonly hiredFrom?: string;
  readonly hiredTo?: string;
  /** For kinds that carry by one. */
  readonly loadChart?: LoadChart;
  readonly manufacturedOn?: string;
  readonly firstUsedOn?: string;
  readonly declarationOn?: string;
  readonly writtenSchemes?: readonly WrittenScheme[];
  readonly notes?: string;
}
