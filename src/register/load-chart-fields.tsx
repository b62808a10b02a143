import type { Problem } from '../problem.js';
import { Choice, Field } from '../web/components/form.js';
import type { ItemForm } from './item-form.js';
import { pointsText } from './load-chart-form.js';

interface LoadChartFieldsProps {
  readonly form: ItemForm;
  readonly problem: Problem | undefined;
}

/** What the maker's load chart says, and what covers a lifter as an attachment of the machine. */
export function LoadChartFields({ form, problem }: LoadChartFieldsProps) {
  const chart = form['loadChart'];
  const cover = field(chart, 'attachmentCover');
  return (
    <fieldset>
      <legend>Load chart</legend>
      <p>
        Copy it from the maker's plate or manual, in mm and kg. Without a chart the machine is refused for
        every job that hangs a lifter on it.
      </p>
      <div class="fields">
        <Choice
          label="Distances are"
          name="loadChart.distanceBasis"
          value={text(field(chart, 'distanceBasis'))}
          options={[
            { value: 'loadCentre', label: 'load centres from the fork face (fork truck)' },
            { value: 'reach', label: 'reaches from the front of the machine (telescopic handler)' },
          ]}
          problem={problem}
        />
      </div>
      <Points value={pointsText(field(chart, 'points'))} problem={problem} />
      <div class="fields">
        <Field
          label="Front axle to fork face, in mm"
          name="loadChart.axleToForkFaceMm"
          value={text(field(chart, 'axleToForkFaceMm'))}
          hint="Needed for load centres."
          problem={problem}
        />
        <Field
          label="Front axle to carriage face, in mm"
          name="loadChart.axleToCarriageMm"
          value={text(field(chart, 'axleToCarriageMm'))}
          hint="Less than to the fork face by the thickness of the forks."
          problem={problem}
        />
        <Choice
          label="The lifter is covered by"
          name="loadChart.attachmentCover.by"
          value={text(field(cover, 'by'))}
          blank="nothing on record"
          options={[
            { value: 'plate', label: 'the plate, which lists it' },
            { value: 'makersLetter', label: 'a letter of the maker' },
          ]}
          problem={problem}
        />
        <Field
          label="Plate or letter"
          name="loadChart.attachmentCover.reference"
          value={text(field(cover, 'reference'))}
          hint="What it is found by, such as a number and a date."
          problem={problem}
        />
      </div>
    </fieldset>
  );
}

/** The points, one to a line; each error names its line. */
function Points({ value, problem }: { value: string; problem: Problem | undefined }) {
  const name = 'loadChart.points';
  const errors = (problem?.more.errors ?? []).filter((error) => error.field.startsWith(name));
  const describedBy = [`${name}-hint`, ...(errors.length > 0 ? [`${name}-error`] : [])].join(' ');
  return (
    <div class="field long">
      <label for={name}>Points, one to a line</label>
      <p class="hint" id={`${name}-hint`}>
        Lift height in mm, load centre or reach in mm, capacity in kg: such as 3000, 500, 2500. By rising
        height, and by rising distance at each height.
      </p>
      <textarea
        id={name}
        name={name}
        rows={6}
        aria-describedby={describedBy}
        aria-invalid={errors.length > 0 ? 'true' : undefined}
      >
        {value}
      </textarea>
      {errors.length > 0 ? (
        <div id={`${name}-error`}>
          {errors.map((error, number) => (
            <p class="field-error" key={number}>
              {lineOf(error.field)}
              {error.message}
            </p>
          ))}
        </div>
      ) : null}
    </div>
  );
}

/** 'Line 3: ' of `loadChart.points[2].capacityKg`; nothing for what concerns no line. */
function lineOf(field: string): string {
  const place = /\[(\d+)\]/.exec(field)?.[1];
  return place === undefined ? '' : `Line ${Number(place) + 1}: `;
}

function field(fields: unknown, name: string): unknown {
  return typeof fields === 'object' && fields !== null ? Reflect.get(fields, name) : undefined;
}

function text(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
