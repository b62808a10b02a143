import type { Problem } from '../problem.js';
import type { ItemView } from '../register/register.dto.js';
import { DANGERS, OCCASIONS } from '../rules/examination/report.js';
import { Area, Choice, Field, Tick } from '../web/components/form.js';
import { defectRows, type ExaminationForm } from './examination-form.js';
import { DANGER_CHOICES, OCCASION_CHOICES, YES_OR_NO } from './examination-words.js';
import { text } from './forms.view.js';

interface Fields {
  readonly form: ExaminationForm;
  readonly problem: Problem | undefined;
}

/** How many blank rows for defects follow those filled in. */
const BLANK_ROWS = 2;

/** A text or a day by its name. */
function Line({
  form,
  problem,
  name,
  label,
  hint,
  type = 'text',
}: Fields & { name: string; label: string; hint?: string; type?: 'text' | 'date' }) {
  return (
    <Field
      label={label}
      name={name}
      type={type}
      value={text(form[name])}
      problem={problem}
      {...(hint === undefined ? {} : { hint })}
    />
  );
}

/** A text that may have several lines, as addresses do. */
function Lines({
  form,
  problem,
  name,
  label,
  hint = '',
  rows = 2,
}: Fields & { name: string; label: string; hint?: string; rows?: number }) {
  return (
    <Area label={label} name={name} value={text(form[name])} hint={hint} rows={rows} problem={problem} />
  );
}

function YesNo({ form, problem, name, label }: Fields & { name: string; label: string }) {
  const value = text(form[name]);
  return (
    <Choice label={label} name={name} value={value} options={YES_OR_NO} blank="say which" problem={problem} />
  );
}

function Said({ form, name, label }: { form: ExaminationForm; name: string; label: string }) {
  return <Tick label={label} name={name} ticked={form[name] === 'true'} />;
}

/** Paragraphs 1 to 5: for whom, where, what, and what it may carry. */
export function ItemFields(fields: Fields) {
  const { form } = fields;
  return (
    <>
      <h2>1, 2 · For whom and where</h2>
      <div class="fields">
        <Line {...fields} name="employerName" label="Employer it was examined for" />
        <Lines {...fields} name="employerAddress" label="Address of that employer" />
        <Lines {...fields} name="premisesAddress" label="Address where it was examined" />
      </div>
      <h2>3, 4 · The item</h2>
      <Lines
        {...fields}
        name="identification"
        label="What identifies it"
        hint="With its tag or its serial number. Where the plate says otherwise, have the register put right first."
      />
      <div class="fields">
        <div>
          <Line {...fields} name="manufacturedOn" label="Day of manufacture" type="date" />
          <Said form={form} name="manufactureUnknown" label="not known" />
        </div>
        <div>
          <Line {...fields} name="lastExaminedOn" label="Last thorough examination" type="date" />
          <Said form={form} name="noEarlierExamination" label="none is known" />
        </div>
      </div>
      <RegisterDoubt {...fields} />
      <h2>5 · Safe working load</h2>
      <Lines {...fields} name="safeWorkingLoad" label="Safe working load, as marked" />
      <div class="fields">
        <YesNo {...fields} name="dependsOnConfiguration" label="Does it depend on the configuration?" />
        <Lines {...fields} name="configuration" label="If so: the one examined last" />
      </div>
    </>
  );
}

/** Asked for only where what was said of the last examination did not stand, or where it was given before. */
function RegisterDoubt(fields: Fields) {
  const { form, problem } = fields;
  const isWrong = problem?.more.errors?.some(({ field }) => field === 'lastExaminedOn') ?? false;
  if (!isWrong && text(form['registerDoubt']) === '') return null;
  return (
    <Lines
      {...fields}
      name="registerDoubt"
      label="If you do not go by the record of the register: why"
      hint="The report then says what the register has, and this."
    />
  );
}

/** Paragraphs 6 and 7, and 8(d) to (f): why it was examined, whether it is safe, tests and days. */
export function FindingFields(fields: Fields) {
  return (
    <>
      <h2>6, 7 · Why it was examined, and whether it is safe</h2>
      <p class="hint">
        6 is for the first examination after installation, or after assembly at a new site or in a new place.
        7 is for every other.
      </p>
      <div class="fields">
        <YesNo {...fields} name="firstAfterInstallation" label="First after installation here?" />
        <YesNo {...fields} name="installedCorrectly" label="If so: installed correctly?" />
        <Choice
          label="If not: what called for it"
          name="occasion"
          value={text(fields.form['occasion'])}
          blank="say which"
          options={OCCASIONS.map((value) => ({ value, label: OCCASION_CHOICES[value] }))}
          problem={fields.problem}
        />
        <YesNo {...fields} name="safeToOperate" label="Safe to operate?" />
      </div>
      <h2>8(d) to (f) · Days and tests</h2>
      <p class="hint">
        Leave the next one blank for the latest day that the rules allow. It may only be earlier.
      </p>
      <div class="fields">
        <Line {...fields} name="examinedOn" label="Day of this examination" type="date" />
        <Line {...fields} name="nextExaminationBy" label="Next one no later than" type="date" />
      </div>
      <Lines
        {...fields}
        name="tests"
        rows={3}
        label="Tests that were part of it"
        hint="Which, with what load, with what result."
      />
      <Said form={fields.form} name="noTest" label="no test was part of it" />
    </>
  );
}

/** Paragraph 8(a) to (c): the defects, a row each. */
export function DefectFields({ form, problem }: Fields) {
  const rows = defectRows(form);
  const shown = [...rows, ...Array.from({ length: BLANK_ROWS }, () => ({}))];
  return (
    <>
      <h2>8(a) to (c) · Parts with a defect</h2>
      <p class="hint">
        Every defect that is a danger to persons, or could become one. What could become a danger needs the
        last day of use. Leave rows blank that you do not need; more appear when these are full.
      </p>
      <Said form={form} name="noDefect" label="no such defect was found" />
      {shown.map((row, index) => (
        <DefectRow key={index} row={row} index={index} problem={problem} />
      ))}
    </>
  );
}

function DefectRow({
  row,
  index,
  problem,
}: {
  row: Readonly<Record<string, unknown>>;
  index: number;
  problem: Problem | undefined;
}) {
  const field = (name: string) => ({
    name: `defects[${index}].${name}`,
    value: text(row[name]),
    problem,
  });
  return (
    <fieldset>
      <legend>Defect {index + 1}</legend>
      <div class="fields">
        <Field label="Part" {...field('part')} />
        <Area label="What is wrong with it" rows={2} {...field('description')} />
        <Choice
          label="How bad"
          blank="say which"
          options={DANGERS.map((value) => ({ value, label: DANGER_CHOICES[value] }))}
          {...field('danger')}
        />
        <Field label="If it could: last day of use" type="date" {...field('by')} />
        <Area label="Repair, renewal or alteration" rows={2} {...field('remedy')} />
      </div>
    </fieldset>
  );
}

/** Paragraphs 9 and 10: who examined it, and who signs. */
export function ExaminerFields({ examinerName, ...fields }: Fields & { examinerName: string }) {
  return (
    <>
      <h2>9, 10 · Who examined it and signs</h2>
      <p>
        <strong>{examinerName}</strong>, by this account. Your sign-in is your signature: a report can be
        signed for nobody else.
      </p>
      <div class="fields">
        <Lines {...fields} name="examinerAddress" label="Your address" />
        <Lines {...fields} name="examinerQualifications" label="Your qualifications" />
        <YesNo {...fields} name="selfEmployed" label="Are you self-employed?" />
        <Line {...fields} name="examinerEmployerName" label="If not: your employer" />
        <Lines {...fields} name="examinerEmployerAddress" label="Address of your employer" />
        <Lines {...fields} name="signerAddress" label="Address to sign with, if another" />
      </div>
    </>
  );
}

/** What a pass may do beside: put the item back into service. */
export function ReleaseField({ form, item }: { form: ExaminationForm; item: ItemView }) {
  const back = item.condition === 'inService' ? '' : ' and put it back into service';
  return (
    <p>
      <Said form={form} name="release" label={`Passed: close the defects open before${back}`} />
    </p>
  );
}
