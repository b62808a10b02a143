import { INSPECTION_TYPES } from '../rules/gear/gear.js';
import { Area, Choice, Field, Tick } from '../web/components/form.js';
import { INSPECTION_NAMES } from '../web/sentences/words.js';
import { itemFormPage, text, type ItemFormProps } from './forms.view.js';

/** Recording an inspection, or a correction of one. */
export function inspectionPage(props: ItemFormProps & { hasOpenDefects: boolean }): string {
  const { me, item, form, problem, hasOpenDefects } = props;
  const supersedesId = text(form['supersedesId']);
  const examines = me.roles.includes('competentPerson');
  const types = INSPECTION_TYPES.filter((type) =>
    examines ? type !== 'preUseCheck' : type === 'interimInspection',
  );
  const mayRelease = examines && supersedesId === '' && (item.condition !== 'inService' || hasOpenDefects);
  return itemFormPage(
    props,
    {
      path: 'inspection',
      title: supersedesId === '' ? 'Record an inspection' : `Correct record ${supersedesId}`,
      button: 'Record it',
    },
    <>
      {supersedesId === '' ? null : <input type="hidden" name="supersedesId" value={supersedesId} />}
      <p>A record is never changed afterwards. A mistake is put right by a record that corrects it.</p>
      <Choice
        label="What was done"
        name="type"
        value={text(form['type']) || (examines ? 'thoroughExamination' : 'interimInspection')}
        options={types.map((value) => ({ value, label: INSPECTION_NAMES[value] }))}
        problem={problem}
      />
      <Field
        label="Done on"
        name="doneOn"
        type="date"
        value={text(form['doneOn'])}
        required
        problem={problem}
      />
      <Choice
        label="Outcome"
        name="outcome"
        value={text(form['outcome'])}
        blank="choose what was found"
        options={[
          { value: 'fit', label: 'fit' },
          { value: 'unfit', label: 'unfit: it goes into quarantine' },
        ]}
        problem={problem}
      />
      {mayRelease ? (
        <Tick
          label={`Passed: close its open defects${item.condition === 'inService' ? '' : ' and put it back into service'}`}
          name="release"
          ticked={form['release'] === true}
        />
      ) : null}
      <Field
        label="Next one no later than"
        name="nextDueOn"
        type="date"
        hint="Only when the examiner named a day. It can only bring the due day forward."
        value={text(form['nextDueOn'])}
        problem={problem}
      />
      <Field
        label="Done by"
        name="doneBy"
        value={text(form['doneBy'])}
        hint={examines ? 'As on the report; blank when it was you.' : 'The inspector, as on the report.'}
        problem={problem}
      />
      <Field
        label="Number of the report"
        name="reportNumber"
        value={text(form['reportNumber'])}
        hint={examines ? WITHOUT_NUMBER : ''}
        problem={problem}
      />
      <Area label="Remarks" name="remarks" rows={3} value={text(form['remarks'])} problem={problem} />
    </>,
  );
}

const WITHOUT_NUMBER =
  'Without it the report of a thorough examination is not on file, even if an earlier one was. Then correct the ' +
  'record with the number, or add the certificate on the page of the item.';
