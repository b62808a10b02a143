import { QueryFailedError } from 'typeorm';

/** What a failed statement says, alike for both engines. */
interface EngineError {
  readonly code?: string;
  readonly message: string;
}

/** True for a deadlock or a serialisation failure of PostgreSQL, which go away when tried again. */
export function isWorthRetrying(error: unknown): boolean {
  const code = engineError(error)?.code;
  return code === '40001' || code === '40P01';
}

/**
 * True when a UNIQUE constraint refused the row. With `columns` (such as `item.tag_key`), only for that
 * constraint: SQLite names the columns, PostgreSQL the constraint, so a constraint is named `uq_<table>_<column>…`.
 */
export function isUniqueViolation(
  error: unknown,
  constraint?: { table: string; columns: readonly string[] },
): boolean {
  const failure = engineError(error);
  if (!failure) return false;
  const onSqlite = /UNIQUE constraint failed: (.+)$/.exec(failure.message)?.[1];
  if (failure.code !== '23505' && onSqlite === undefined) return false;
  if (!constraint) return true;
  if (onSqlite !== undefined) {
    return onSqlite === constraint.columns.map((column) => `${constraint.table}.${column}`).join(', ');
  }
  return failure.message.includes(`uq_${constraint.table}_${constraint.columns.join('_')}`);
}

/** True when one of our triggers refused the statement with this word. */
export function isRaisedByTrigger(error: unknown, word: string): boolean {
  return engineError(error)?.message.includes(word) ?? false;
}

function engineError(error: unknown): EngineError | undefined {
  if (!(error instanceof QueryFailedError)) return undefined;
  const driverError: unknown = error.driverError;
  if (!(driverError instanceof Error)) return undefined;
  const code: unknown = Reflect.get(driverError, 'code');
  return { message: driverError.message, ...(typeof code === 'string' ? { code } : {}) };
}
