/** A sheet of labels as it is cut, in millimetres. The gaps between labels are in the pitch. */
export interface SheetLayout {
  readonly key: string;
  /** By its size, so that it is found for any sheet of that cut. */
  readonly name: string;
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  /** From the edge of the sheet to the edge of the first label. */
  readonly leftMm: number;
  readonly topMm: number;
  /** From the edge of a label to the same edge of the next. */
  readonly pitchXMm: number;
  readonly pitchYMm: number;
  /** What is left blank along each edge of a label, for printers that do not hit the sheet exactly. */
  readonly marginMm: number;
}

const A4 = { pageWidthMm: 210, pageHeightMm: 297 }; // ISO 216

/** The sheets to choose from. Sizes of label sheets are common practice, no source; margins follow from them and the paper. */
export const SHEET_LAYOUTS: readonly [SheetLayout, ...SheetLayout[]] = [
  {
    ...A4,
    key: 'a4-3x8-70x37',
    name: 'A4, 3 × 8 of 70 × 37 mm',
    ...{ columns: 3, rows: 8, labelWidthMm: 70, labelHeightMm: 37 },
    ...{ leftMm: 0, topMm: 0.5, pitchXMm: 70, pitchYMm: 37, marginMm: 4 },
  },
  {
    ...A4,
    key: 'a4-2x7-99x38',
    name: 'A4, 2 × 7 of 99.1 × 38.1 mm',
    ...{ columns: 2, rows: 7, labelWidthMm: 99.1, labelHeightMm: 38.1 },
    ...{ leftMm: 4.65, topMm: 15.15, pitchXMm: 101.6, pitchYMm: 38.1, marginMm: 3 },
  },
  {
    ...A4,
    key: 'a4-4x10-52x29',
    name: 'A4, 4 × 10 of 52.5 × 29.7 mm',
    ...{ columns: 4, rows: 10, labelWidthMm: 52.5, labelHeightMm: 29.7 },
    ...{ leftMm: 0, topMm: 0, pitchXMm: 52.5, pitchYMm: 29.7, marginMm: 3 },
  },
  {
    pageWidthMm: 60,
    pageHeightMm: 40,
    key: 'single-60x40',
    name: 'Single label 60 × 40 mm',
    ...{ columns: 1, rows: 1, labelWidthMm: 60, labelHeightMm: 40 },
    ...{ leftMm: 0, topMm: 0, pitchXMm: 60, pitchYMm: 40, marginMm: 2 },
  },
  {
    ...A4,
    key: 'a4-plain',
    name: 'Plain A4, one large label a page',
    ...{ columns: 1, rows: 1, labelWidthMm: 180, labelHeightMm: 267 },
    ...{ leftMm: 15, topMm: 15, pitchXMm: 180, pitchYMm: 267, marginMm: 8 },
  },
];

/** How many labels a sheet holds. */
export function labelsPerSheet({ columns, rows }: Pick<SheetLayout, 'columns' | 'rows'>): number {
  return columns * rows;
}

/** Where a label lies on its sheet: its left upper corner. */
export interface PlacedLabel<Item> {
  readonly item: Item;
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The labels sheet by sheet, row by row from the left. `firstPosition`, from 1, is the first label of the first sheet
 * that is still there; the sheets after it are whole.
 */
export function placeLabels<Item>(
  items: readonly Item[],
  layout: SheetLayout,
  firstPosition: number,
): readonly (readonly PlacedLabel<Item>[])[] {
  const sheets: PlacedLabel<Item>[][] = [];
  for (const [index, item] of items.entries()) {
    const place = index + firstPosition - 1;
    const [sheet, position] = [Math.floor(place / labelsPerSheet(layout)), place % labelsPerSheet(layout)];
    (sheets[sheet] ??= []).push({
      item,
      xMm: layout.leftMm + (position % layout.columns) * layout.pitchXMm,
      yMm: layout.topMm + Math.floor(position / layout.columns) * layout.pitchYMm,
    });
  }
  return sheets;
}
