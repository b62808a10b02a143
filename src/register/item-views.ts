import type { CustodyView, ItemRowView, ItemView } from './register.dto.js';
import type { ItemEntity } from './item.entity.js';
import { plainChart } from './plain-chart.js';
import type { Standing } from './standings.service.js';

/** An item as a list shows it. */
export function asRow(item: ItemEntity, { gear, report, currency, promises }: Standing): ItemRowView {
  return {
    id: item.id,
    tag: item.tag,
    kind: item.kind,
    maker: item.maker,
    serial: item.serial,
    storeId: item.storeId,
    storeName: gear.storeName,
    condition: item.condition,
    markings: item.markings,
    currency,
    ...(report.dueOn === undefined ? {} : { dueOn: report.dueOn }),
    custody: custodyOf(item, promises),
  };
}

/** An item with everything the register keeps of it. */
export function asView(item: ItemEntity, standing: Standing): ItemView {
  return {
    ...asRow(item, standing),
    conditionReason: item.conditionReason,
    conditionSince: item.conditionSince,
    labelLegible: item.labelLegible,
    certificateOnFile: item.certificateOnFile,
    dimensions: item.dimensions,
    batch: item.batch,
    owner: item.owner,
    hiredFrom: item.hiredFrom,
    hiredTo: item.hiredTo,
    loadChart: item.loadChart && plainChart(item.loadChart),
    manufacturedOn: item.manufacturedOn,
    firstUsedOn: item.firstUsedOn,
    declarationOn: item.declarationOn,
    writtenSchemes: item.writtenSchemes.flatMap(({ type, ...rest }) =>
      type === 'preUseCheck' ? [] : [{ type, ...rest }],
    ),
    notes: item.notes,
    version: item.version,
  };
}

function custodyOf({ missing }: ItemEntity, promises: Standing['promises']): CustodyView {
  if (missing) return { state: 'missing' };
  const promise = promises.find(({ out }) => out) ?? promises[0];
  if (!promise) return { state: 'inStore' };
  const { jobReference, from, to, late, out } = promise;
  return { state: out ? 'out' : 'reserved', jobReference, from, to, late };
}
