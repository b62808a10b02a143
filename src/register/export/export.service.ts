import { Injectable } from '@nestjs/common';
import writeSheet from 'write-excel-file/node';
import { Catalogue } from '../../catalogue/catalogue.js';
import { Clock } from '../../clock.js';
import { Reads } from '../../storage/reads.js';
import { StoresService } from '../../stores/stores.service.js';
import { guardCell } from './cell-guard.js';
import { csvText } from './csv-text.js';
import { exportRows } from './export-rows.js';

/** The whole register as a file that the import reads back. Cells that a spreadsheet would calculate are made text. */
@Injectable()
export class ExportService {
  constructor(
    private readonly reads: Reads,
    private readonly catalogue: Catalogue,
    private readonly stores: StoresService,
    private readonly clock: Clock,
  ) {}

  /** CSV (RFC 4180) in UTF-8 with a byte-order mark. */
  async csv(): Promise<Buffer> {
    return Buffer.from(csvText(await this.rows()), 'utf8');
  }

  /** XLSX with one sheet, every cell text. */
  async xlsx(): Promise<Buffer> {
    const rows = await this.rows();
    const cells = rows.map((row) =>
      row.map((text) => (text === '' ? null : { value: sheetText(text), type: String })),
    );
    return writeSheet(cells, { sheet: 'Register' }).toBuffer();
  }

  private async rows(): Promise<string[][]> {
    const stores = (await this.stores.list()).map((store) => ({
      ...store,
      today: this.clock.today(store.timeZone),
    }));
    return exportRows(this.reads.manager, { catalogue: this.catalogue, stores });
  }
}

/** Guarded, and without the control signs that XML has no place for. */
function sheetText(text: string): string {
  return guardCell(text).replace(/[\0-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]/g, '');
}
