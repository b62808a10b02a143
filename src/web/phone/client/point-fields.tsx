import type { CheckFigure, CheckPoint, FigureUnit } from '../../../rules/checks/checklist.js';
import { UNITS_OF_FIGURE } from '../../../rules/checks/read-figure.js';
import type { PointDraft } from './draft.js';
import { PhotoField } from './photo-field.js';

/** What a field of a point is given. */
interface PointProps {
  readonly point: CheckPoint;
  readonly draft: PointDraft;
  readonly onChange: (change: Partial<PointDraft>) => void;
  /** Told when a photo begins to be made, and when it is there. */
  readonly onPhotoMaking: (isMaking: boolean) => void;
}

/** One point of a checklist: what to look at, Good and Bad, and what may be measured or said. */
export function PointFields({ number, ...props }: PointProps & { number: string }) {
  const { point, draft, onChange } = props;
  return (
    <fieldset class="point">
      <legend>
        <span class="faded">{number}</span> {point.look}
      </legend>
      <p class="fails-when">Bad when: {point.failsWhen}</p>
      <div class="verdicts">
        {(['good', 'bad'] as const).map((answer) => (
          <label key={answer} class={`verdict verdict-${answer}`}>
            <input
              type="radio"
              name={`point-${point.key}`}
              checked={draft.answer === answer}
              onChange={() => onChange({ answer })}
            />
            <span>{answer === 'good' ? 'Good' : 'Bad'}</span>
          </label>
        ))}
      </div>
      {draft.answer === 'bad' ? <BadFields {...props} /> : null}
      {point.figures.length > 0 ? <Figures {...props} /> : null}
    </fieldset>
  );
}

function BadFields({ point, draft, onChange, onPhotoMaking }: PointProps) {
  const id = `remarks-${point.key}`;
  return (
    <div class="bad">
      <label for={id}>What is wrong (optional)</label>
      <textarea
        id={id}
        rows={2}
        maxLength={500}
        value={draft.remarks}
        onInput={({ currentTarget }) => onChange({ remarks: currentTarget.value })}
      />
      <PhotoField
        id={`photo-${point.key}`}
        photos={draft.photos}
        onChange={(photos) => onChange({ photos })}
        onMaking={onPhotoMaking}
      />
    </div>
  );
}

/** Lengths of a point are taken with one rule: the unit that was chosen for one is offered for the next. */
function Figures({ point, draft, onChange }: PointProps) {
  const chosen = Object.values(draft.figures).map(({ unit }) => unit);
  return (
    <details>
      <summary>Measured it? Enter it (optional)</summary>
      {point.figures.map((figure) => (
        <FigureField
          key={figure.name}
          id={`figure-${point.key}-${figure.name}`}
          figure={figure}
          chosen={chosen}
          entered={draft.figures[figure.name]}
          onChange={(entered) => onChange({ figures: { ...draft.figures, [figure.name]: entered } })}
        />
      ))}
    </details>
  );
}

interface FigureProps {
  readonly id: string;
  readonly figure: CheckFigure;
  /** The units of the figures of the point so far. */
  readonly chosen: readonly FigureUnit[];
  readonly entered: PointDraft['figures'][string] | undefined;
  readonly onChange: (entered: PointDraft['figures'][string]) => void;
}

function FigureField({ id, figure, chosen, entered, onChange }: FigureProps) {
  const units: readonly FigureUnit[] = UNITS_OF_FIGURE[figure.measures];
  const likely = chosen.findLast((unit) => units.includes(unit)) ?? units[0] ?? '';
  const { value = '', unit = likely } = entered ?? {};
  return (
    <div class="figure">
      <label for={id}>
        {figure.label}
        {units.length === 1 && unit !== '' ? ` (${unit})` : ''}
      </label>
      <div class="row">
        <input
          id={id}
          inputMode={unit === 'in' ? 'text' : 'decimal'}
          autocomplete="off"
          value={value}
          onInput={({ currentTarget }) => onChange({ value: currentTarget.value, unit })}
        />
        {units.length > 1 ? (
          <select
            aria-label={`Unit of ${figure.label}`}
            value={unit}
            onChange={({ currentTarget }) =>
              onChange({ value, unit: units.find((each) => each === currentTarget.value) ?? unit })
            }
          >
            {units.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        ) : null}
      </div>
    </div>
  );
}
