import type { Field } from './fields.js';
import type { Fault, FaultCode, Notice, NoticeCode } from './finding.js';
import type { ReadingContext } from './reading-context.js';
import type { Cell, TableRow } from './table.js';

type More = Pick<Fault, 'subject' | 'rows'>;

/** Reads the cells of one row by their fields, and gathers what is found on the way. */
export class RowReader {
  readonly faults: Fault[] = [];
  readonly notices: Notice[] = [];

  constructor(
    readonly row: TableRow,
    readonly context: ReadingContext,
  ) {}

  /** The cell of a field; blank where the file has no such column. */
  cell(field: Field): Cell {
    return this.row.cells[this.column(field)] ?? { text: '', is: 'text' };
  }

  /** The heading over a field; absent where the file has no such column. */
  heading(field: Field): string | undefined {
    return this.context.headings[this.column(field)];
  }

  /** The text of a field, or undefined when it is blank, or a formula, which is a fault. */
  text(field: Field): string | undefined {
    const { text, is } = this.cell(field);
    if (is === 'formula') this.fault(field, 'formula');
    return text === '' || is === 'formula' ? undefined : text;
  }

  fault(field: Field, code: FaultCode, more: More = {}): undefined {
    this.faults.push({ ...this.place(field), row: this.row.number, code, ...more });
  }

  notice(field: Field, code: NoticeCode, more: More = {}): void {
    this.notices.push({ ...this.place(field), code, ...more });
  }

  private column(field: Field): number {
    return this.context.mapping.columns.indexOf(field);
  }

  private place(field: Field): Pick<Notice, 'row' | 'column' | 'cell'> {
    const column = this.heading(field);
    return { row: this.row.number, ...(column === undefined ? {} : { column }), cell: this.cell(field).text };
  }
}
