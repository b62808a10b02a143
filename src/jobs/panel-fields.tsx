import { Scroll } from '../web/components/scroll.js';
import type { Problem } from '../problem.js';

const BLANK_ROWS = 4;

const COLUMNS = [
  { name: 'name', label: 'Panel' },
  { name: 'heightMm', label: 'Height, mm' },
  { name: 'widthMm', label: 'Width, mm' },
  { name: 'thicknessMm', label: 'Thickness, mm' },
  { name: 'massKg', label: 'Mass as weighed, kg' },
  { name: 'arealMassKgPerM2', label: 'or mass per area, kg/m²' },
  { name: 'fittingsKg', label: 'Fittings besides, kg' },
  { name: 'packingKg', label: 'Packing, kg' },
  { name: 'centreOffsetMm', label: 'Centre of gravity off the middle, mm' },
  { name: 'count', label: 'Count' },
] as const;

/** The panel schedule as rows to fill in, with a few blank ones after what is there. */
export function PanelFields({
  panels,
  problem,
}: {
  panels: readonly Readonly<Record<string, unknown>>[];
  problem: Problem | undefined;
}) {
  const blank: readonly Readonly<Record<string, unknown>>[] = Array.from({ length: BLANK_ROWS }, () => ({}));
  const rows = [...panels, ...blank];
  return (
    <Scroll label="Panel schedule">
      <table class="entry">
        <caption>One line for equal panels</caption>
        <thead>
          <tr>
            {COLUMNS.map(({ name, label }) => (
              <th scope="col" key={name}>
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {COLUMNS.map(({ name, label }) => (
                <td key={name}>
                  <Cell
                    name={`panels[${index}].${name}`}
                    label={`${label}, row ${index + 1}`}
                    value={row[name]}
                    problem={problem}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Cell({
  name,
  label,
  value,
  problem,
}: {
  name: string;
  label: string;
  value: unknown;
  problem: Problem | undefined;
}) {
  const error = problem?.more.errors?.find(({ field }) => field === name)?.message;
  const shown = typeof value === 'string' || typeof value === 'number' ? String(value) : '';
  const errorId = `${name}-error`;
  return (
    <>
      <input
        name={name}
        aria-label={label}
        value={shown}
        size={name.endsWith('.name') ? 14 : 7}
        autocomplete="off"
        aria-invalid={error ? 'true' : undefined}
        aria-describedby={error ? errorId : undefined}
      />
      {error ? (
        <p class="field-error" id={errorId}>
          {error}
        </p>
      ) : null}
    </>
  );
}
