import type { Catalogue } from '../catalogue/catalogue.js';
import { readForm } from '../http/input.js';
import type { SchemeDefinition } from '../rules/due/scheme.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import type { MethodDefinition } from '../rules/lines/method.js';
import type { StoreView } from '../stores/stores.dto.js';
import type { StoresService } from '../stores/stores.service.js';
import { requireSchedule, tableOfText } from './panel-schedules.service.js';

/** A job's form as the job DTOs read it, and as the form shows it again. */
export type JobForm = Record<string, unknown>;

/** What a job's form chooses from. */
export interface JobChoices {
  readonly stores: readonly StoreView[];
  readonly schemes: readonly SchemeDefinition[];
  readonly methods: readonly MethodDefinition[];
  readonly kinds: readonly KindDefinition[];
}

/** Everything that there is to choose from now. */
export async function jobChoices(stores: StoresService, catalogue: Catalogue): Promise<JobChoices> {
  return {
    stores: await stores.list(),
    schemes: catalogue.schemes(),
    methods: catalogue.methods(),
    kinds: catalogue.kinds(),
  };
}

type Row = Record<string, unknown>;

/** The fields of the form in the shape of the DTO. Rows left blank are dropped. */
export function readJobForm(fields: object): JobForm {
  const form = readForm(fields);
  const counts = Object.entries(form).flatMap(([name, value]) =>
    name.startsWith('counts.') ? [[name.slice('counts.'.length), whole(value)]] : [],
  );
  const rest = Object.fromEntries(Object.entries(form).filter(([name]) => !name.startsWith('counts.')));
  return {
    ...rest,
    storeId: whole(rest['storeId']),
    otherStores: rest['otherStores'] === 'true',
    counts: Object.fromEntries(counts),
    panels: rows(rest['panels']).map((row) => ({ packingKg: '0', ...row, count: whole(row['count']) })),
    parameters: rows(rest['parameters']).filter(
      ({ value, reason }) => value !== undefined || reason !== undefined,
    ),
    truckTimes: truckTimes(rest['truckTimes']),
    adjustments: rows(rest['adjustments'])
      .map(changedLine)
      .filter((row) => Object.keys(row).length > 1),
    addedLines: rows(rest['addedLines'])
      .filter(({ label, reason }) => label !== undefined || reason !== undefined)
      .map(changedLine),
  };
}

/** One truck a line, the day and the time with a space or a T between them. */
function truckTimes(lines: unknown): string[] {
  return (typeof lines === 'string' ? lines : '')
    .split('\n')
    .map((line) => line.trim().replace(/\s+/, 'T'))
    .filter(Boolean);
}

/**
 * The form with the schedule that was pasted, if one was, in place of the rows.
 * @throws Problem `unreadable_file`, `bad_input` by line.
 */
export function withPastedPanels({ panelsCsv, ...form }: JobForm): JobForm {
  return typeof panelsCsv === 'string' ? { ...form, panels: requireSchedule(tableOfText(panelsCsv)) } : form;
}

/** The rows of a list, without the holes that blank rows leave. */
export function rows(list: unknown): Row[] {
  return Array.isArray(list) ? list.filter((row): row is Row => typeof row === 'object' && row !== null) : [];
}

/** The rating's figure and unit together; the unit alone says nothing, as it is always chosen. */
function changedLine({ ratingValue, ratingUnit, quantity, hitchMode, hitchAngleDeg, ...row }: Row): Row {
  const angle = hitchAngleDeg === undefined ? {} : { angleDeg: hitchAngleDeg };
  return {
    ...row,
    ...(hitchMode === undefined ? {} : { hitch: { mode: hitchMode, ...angle } }),
    ...(quantity === undefined ? {} : { quantity: whole(quantity) }),
    ...(ratingValue === undefined ? {} : { rating: { value: ratingValue, unit: ratingUnit } }),
  };
}

function whole(value: unknown): unknown {
  return typeof value === 'string' && /^-?\d{1,9}$/.test(value) ? Number(value) : value;
}
