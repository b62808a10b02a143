import type { TableColumnOptions } from 'typeorm';

/** A number that the database counts up. */
export const key = (name = 'id'): TableColumnOptions => ({
  name,
  type: 'integer',
  isPrimary: true,
  isGenerated: true,
  generationStrategy: 'increment',
});
/** A primary key of text. */
export const textKey = (name: string, length: number): TableColumnOptions => ({
  ...varchar(name, length),
  isPrimary: true,
});
/** Text of a length that both engines are told. */
export const varchar = (name: string, length: number): TableColumnOptions => ({
  name,
  type: 'varchar',
  length: String(length),
});
/** A whole number. */
export const integer = (name: string): TableColumnOptions => ({ name, type: 'integer' });
/** Yes or no. */
export const boolean = (name: string): TableColumnOptions => ({ name, type: 'boolean' });
/** A calendar day. */
export const day = (name: string): TableColumnOptions => ({ name, type: 'date' });
/** Text of any length, often JSON. */
export const text = (name: string): TableColumnOptions => ({ name, type: 'text' });
/** A moment as ISO 8601 text in UTC, so that it sorts alike on both engines. */
export const instant = (name: string): TableColumnOptions => varchar(name, 24);
/** The column where it may be empty. */
export const optional = (column: TableColumnOptions): TableColumnOptions => ({ ...column, isNullable: true });

/** A foreign key to the number of another table. What is referred to cannot be deleted, unless it says so. */
export function reference(
  name: string,
  column: string,
  table: string,
  onDelete: 'RESTRICT' | 'CASCADE' = 'RESTRICT',
) {
  return { name, columnNames: [column], referencedTableName: table, referencedColumnNames: ['id'], onDelete };
}
