import { Inject, Injectable } from '@nestjs/common';
import { Catalogue } from '../catalogue/catalogue.js';
import { bookedItems, isLive } from '../custody/booked-items.js';
import { badInput } from '../http/input.js';
import { markingText } from '../register/item-words.js';
import { platesByIds, platesByTags, platesOf, type PlateFacts } from '../register/plate-facts.js';
import { SETTINGS, type Settings } from '../settings.js';
import { scannedTag } from '../rules/text/scanned-tag.js';
import { Reads } from '../storage/reads.js';
import { SHORT_MEASURES } from '../web/sentences/words.js';
import { drawLabel, type DrawnLabel } from './draw-label.js';
import type { LabelWords } from './label-text.js';
import type { LabelQueryDto } from './labels.dto.js';
import {
  labelsPerSheet,
  placeLabels,
  SHEET_LAYOUTS,
  type PlacedLabel,
  type SheetLayout,
} from './sheet-layout.js';

/** As many labels as a person sticks on in a day; a larger register is printed kind by kind. */
export const MOST_LABELS = 500;

/** The items that were asked for. */
export interface Chosen {
  readonly items: readonly PlateFacts[];
  /** Tags that no item in use carries. */
  readonly unknown: readonly string[];
  readonly layout: SheetLayout;
  readonly start: number;
}

/** Sheets to print. */
export interface LabelSheets {
  readonly layout: SheetLayout;
  readonly sheets: readonly (readonly PlacedLabel<DrawnLabel>[])[];
}

/** Chooses items and draws their labels. */
@Injectable()
export class LabelsService {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    @Inject(SETTINGS) private readonly settings: Settings,
  ) {}

  /** The address that labels lead to: the one that is set, or the one that the request came to. */
  baseUrl(requestOrigin: string): string {
    return this.settings.publicUrl ?? requestOrigin;
  }

  /** @throws Problem `bad_input` of more items than are printed at once, or of a start beyond the sheet. */
  async choose(query: LabelQueryDto): Promise<Chosen> {
    const layout = SHEET_LAYOUTS.find(({ key }) => key === query.layout) ?? SHEET_LAYOUTS[0];
    const start = query.start ?? 1;
    if (start > labelsPerSheet(layout)) {
      const message = `this sheet has ${labelsPerSheet(layout)} labels: write a number from 1 to ${labelsPerSheet(layout)}`;
      throw badInput([{ field: 'start', message }]);
    }
    const { items, unknown } = await this.find(query);
    if (items.length > MOST_LABELS) {
      const message = `that is more than ${MOST_LABELS} items: narrow it down by kind and store`;
      throw badInput([{ field: 'kind', message }]);
    }
    return { items, unknown, layout, start };
  }

  /** @throws Problem `bad_input` of no items, unknown tags, or labels that could not be read. */
  async sheets(query: LabelQueryDto, baseUrl: string): Promise<LabelSheets> {
    const { items, unknown, layout, start } = await this.choose(query);
    if (unknown.length > 0) {
      throw badInput([
        { field: 'tags', message: `no item in use carries ${unknown.slice(0, 20).join(', ')}` },
      ]);
    }
    if (items.length === 0) throw badInput([{ field: 'tags', message: 'choose at least one item' }]);
    const labels = items.map((item) => drawLabel(labelUrl(baseUrl, item.tag), this.wordsOf(item), layout));
    return { layout, sheets: placeLabels(labels, layout, start) };
  }

  private async find(query: LabelQueryDto): Promise<Pick<Chosen, 'items' | 'unknown'>> {
    const { manager } = this.reads;
    const { tags, itemId, jobId, kind, storeId } = query;
    if (tags !== undefined) {
      const asked = tags.split(/[\n\r,;]+/).map(scannedTag);
      const named = asked.filter((tag) => tag !== '').slice(0, MOST_LABELS + 1);
      return platesByTags(manager, named);
    }
    if (itemId !== undefined) return { items: await platesByIds(manager, [itemId]), unknown: [] };
    if (jobId !== undefined) {
      const booked = (await bookedItems(manager, [jobId])).filter(isLive);
      const ids = booked.map((each) => each.itemId).slice(0, MOST_LABELS + 1);
      return { items: await platesByIds(manager, ids), unknown: [] };
    }
    if (kind === undefined && storeId === undefined) return { items: [], unknown: [] };
    const filter = { ...(kind === undefined ? {} : { kind }), ...(storeId === undefined ? {} : { storeId }) };
    return { items: await platesOf(manager, filter, MOST_LABELS + 1), unknown: [] };
  }

  private wordsOf({ tag, kind, serial, markings }: PlateFacts): LabelWords {
    const name = this.catalogue.kinds().find((each) => each.kind === kind)?.name ?? kind;
    const lashes = markings.some(({ measure }) => measure === 'lashingCapacity');
    return {
      tag,
      kind: name,
      ratings: markings.map((marking) => `${SHORT_MEASURES[marking.measure]} ${markingText(marking)}`),
      serial: serial === null ? 'Serial number not known' : `Serial ${serial}`,
      cautions: `${lashes ? 'Not for lifting. ' : ''}Examine before use; see the register.`,
    };
  }
}

/** The address in a label's code: what a phone opens, and what a scanner at the counter types. */
export function labelUrl(baseUrl: string, tag: string): string {
  return `${baseUrl}/t/${encodeURIComponent(tag)}`;
}
