import type { ComponentChildren } from 'preact';
import { randomUUID } from 'node:crypto';
import type { Problem } from '../../problem.js';

/** The marks of one labelled input. `value` is shown again after a refusal. */
interface FieldProps {
  readonly label: string;
  readonly name: string;
  readonly value?: string | undefined;
  readonly hint?: string;
  readonly problem?: Problem | undefined;
  readonly required?: boolean;
  readonly type?: 'text' | 'password' | 'date' | 'number' | 'email';
  readonly autocomplete?: string;
  readonly size?: 'short' | 'long';
}

/** A labelled text input with its hint and its error beside it. */
export function Field({
  label,
  name,
  value,
  hint,
  problem,
  required,
  type = 'text',
  autocomplete,
  size,
}: FieldProps) {
  const error = errorOf(problem, name);
  const describedBy = [hint ? `${name}-hint` : '', error ? `${name}-error` : ''].filter(Boolean).join(' ');
  return (
    <div class={`field ${size ?? ''}`}>
      <label for={name}>{label}</label>
      {hint ? (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      ) : null}
      <input
        id={name}
        name={name}
        type={type}
        value={value ?? ''}
        required={required}
        autocomplete={autocomplete ?? 'off'}
        aria-describedby={describedBy || undefined}
        aria-invalid={error ? 'true' : undefined}
      />
      <FieldError name={name} error={error} />
    </div>
  );
}

/** A labelled text of several lines. */
export function Area({
  label,
  name,
  value,
  hint,
  problem,
  rows,
}: Omit<FieldProps, 'type' | 'autocomplete' | 'size' | 'required'> & { readonly rows: number }) {
  const error = errorOf(problem, name);
  const describedBy = [hint ? `${name}-hint` : '', error ? `${name}-error` : ''].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={name}>{label}</label>
      {hint ? (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      ) : null}
      <textarea
        id={name}
        name={name}
        rows={rows}
        aria-describedby={describedBy || undefined}
        aria-invalid={error ? 'true' : undefined}
      >
        {value ?? ''}
      </textarea>
      <FieldError name={name} error={error} />
    </div>
  );
}

/** What is wrong with a group of ticks or choices, inside its frame. */
export function FieldFault({ name, problem }: { name: string; problem: Problem | undefined }) {
  return <FieldError name={name} error={errorOf(problem, name)} />;
}

/** A labelled choice from a list. */
export function Choice({
  label,
  name,
  value,
  options,
  hint,
  problem,
  blank,
}: Omit<FieldProps, 'type' | 'autocomplete'> & {
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** The words for choosing nothing; absent when something must be chosen. */
  readonly blank?: string;
}) {
  const error = errorOf(problem, name);
  return (
    <div class="field">
      <label for={name}>{label}</label>
      {hint ? <p class="hint">{hint}</p> : null}
      <select id={name} name={name} aria-invalid={error ? 'true' : undefined}>
        {blank === undefined ? null : <option value="">{blank}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === value}>
            {option.label}
          </option>
        ))}
      </select>
      <FieldError name={name} error={error} />
    </div>
  );
}

/** A labelled tick. Its value arrives as `true` when ticked. */
export function Tick({
  label,
  name,
  ticked,
  value = 'true',
}: {
  label: string;
  name: string;
  ticked?: boolean;
  value?: string;
}) {
  return (
    <label class="tick">
      <input type="checkbox" name={name} value={value} checked={ticked} /> <span>{label}</span>
    </label>
  );
}

/** One of several choices of a name, of which one is picked. */
export function Pick({
  label,
  name,
  value,
  picked,
}: {
  label: string;
  name: string;
  value: string;
  picked: boolean;
}) {
  return (
    <label class="tick">
      <input type="radio" name={name} value={value} checked={picked} /> <span>{label}</span>
    </label>
  );
}

/** A form that takes effect once, however often its button is pressed. */
export function Form({
  action,
  children,
  multipart,
  label,
}: {
  action: string;
  children: ComponentChildren;
  multipart?: boolean;
  label?: string;
}) {
  return (
    <form
      method="post"
      action={action}
      enctype={multipart ? 'multipart/form-data' : undefined}
      aria-label={label}
    >
      <input type="hidden" name="_once" value={randomUUID()} />
      {children}
    </form>
  );
}

function FieldError({ name, error }: { name: string; error: string | undefined }) {
  if (!error) return null;
  return (
    <p class="field-error" id={`${name}-error`}>
      {error}
    </p>
  );
}

function errorOf(problem: Problem | undefined, name: string): string | undefined {
  return problem?.more.errors?.find(({ field }) => field === name)?.message;
}
