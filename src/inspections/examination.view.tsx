import type { Actor } from '../people/actor.js';
import type { ItemView } from '../register/register.dto.js';
import type { ReportParticulars } from '../rules/examination/report.js';
import type { SourceKey } from '../rules/working.js';
import { Form, Tick } from '../web/components/form.js';
import { StateMark } from '../web/components/state-mark.js';
import { Workings } from '../web/components/workings.js';
import { page } from '../web/page.js';
import { day, instant } from '../web/sentences/words.js';
import type { PreparedReport } from './examination-drafts.service.js';
import { hiddenFields, type ExaminationForm } from './examination-form.js';
import { ExaminationPaper } from './examination-paper.js';
import type { ExaminationView, ReportLinkView } from './examinations.dto.js';

/** The whole report before it is signed, and the signature. */
export function signingPage({
  me,
  item,
  form,
  prepared,
  sources,
}: {
  me: Actor;
  item: ItemView;
  form: ExaminationForm;
  prepared: PreparedReport;
  sources: (key: SourceKey) => string;
}): string {
  const { report, next } = prepared;
  const path = `/register/${item.id}/examination`;
  const hidden = hiddenFields(form).map(([name, value]) => (
    <input key={name} type="hidden" name={name} value={value} />
  ));
  return page(
    { title: `Sign the report: ${item.tag}`, actor: me, path },
    <section class="sheet report-sign">
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${item.id}`}>{item.tag}</a>
      </p>
      <h1>Read it through, then sign: {item.tag}</h1>
      <p class="note note-due">Not signed yet. It gets its number when you sign.</p>
      <ExaminationPaper report={report} />
      {next.workings.length === 0 ? null : (
        <details>
          <summary>How the latest next day was worked out</summary>
          <Workings workings={next.workings} sources={sources} />
        </details>
      )}
      <Consequences report={report} releases={form['release'] === 'true'} />
      <Form action={path} label="Sign the report">
        {hidden}
        <p>
          <Tick
            name="declared"
            label={`I, ${me.name}, examined it on ${day(report.examinedOn)}, and the report says what I found.`}
          />
        </p>
        <p class="hint">
          You sign by being signed in with your own account. A signed report is never changed; a mistake is
          corrected by a new report.
        </p>
        <button type="submit">Sign the report</button>
      </Form>
      <Form action={`${path}/again`} label="Go back to the form">
        {hidden}
        <button type="submit" class="quiet">
          Go back and change it
        </button>
      </Form>
    </section>,
  );
}

function Consequences({ report, releases }: { report: ReportParticulars; releases: boolean }) {
  if (!report.safeToOperate) {
    return (
      <p class="note note-refused">
        Signing puts it in quarantine at once, and flags the jobs it is promised to.
      </p>
    );
  }
  return releases ? (
    <p class="note note-ok">Signing closes the defects open before and puts it back into service.</p>
  ) : null;
}

/** A signed report, to read and to print. */
export function examinationPage({
  me,
  item,
  examination,
  mayCorrect,
}: {
  me: Actor;
  item: ItemView;
  examination: ExaminationView;
  mayCorrect: boolean;
}): string {
  const { number, particulars, outcome, supersededBy, supersedes } = examination;
  return page(
    { title: `Report ${number}`, actor: me, path: `/examinations/${examination.id}` },
    <article class="sheet report-signed">
      <p class="crumbs">
        <a href="/register">Register</a> › <a href={`/register/${item.id}`}>{item.tag}</a>
      </p>
      <h1>Report of thorough examination {number}</h1>
      {supersededBy === null ? (
        <p>
          <StateMark
            state={outcome === 'fit' ? 'ok' : 'refused'}
            word={outcome === 'fit' ? 'safe to operate' : 'not safe to operate'}
          />
        </p>
      ) : (
        <p class="note note-refused">
          <StateMark state="refused" word="superseded" /> It counts no more: report{' '}
          <ReportLink link={supersededBy} /> has taken its place.
        </p>
      )}
      {supersedes === null ? null : (
        <p>
          Takes the place of report <ReportLink link={supersedes} />.
        </p>
      )}
      {supersedes === null && examination.supersedesInspectionId !== null ? (
        <p>Takes the place of record {examination.supersedesInspectionId}.</p>
      ) : null}
      <ExaminationPaper report={particulars} />
      <Seal examination={examination} />
      {mayCorrect && supersededBy === null ? (
        <p class="actions">
          <a
            class="button quiet"
            href={`/register/${item.id}/examination?supersedesId=${examination.inspectionId}`}
          >
            Correct it by a new report
          </a>
        </p>
      ) : null}
    </article>,
  );
}

function Seal({ examination }: { examination: ExaminationView }) {
  const { number, particulars, madeAt, fingerprint, unaltered } = examination;
  return (
    <section class="seal">
      <p>
        Report {number}, signed by <strong>{particulars.signer.name}</strong> with their own account,{' '}
        {instant(madeAt)}.
      </p>
      <p>
        Fingerprint (SHA-256) <code class="fingerprint">{fingerprint}</code>
      </p>
      <p>
        {unaltered ? (
          <StateMark state="ok" word="as the ledger has it" />
        ) : (
          <StateMark state="refused" word="not what the ledger has: do not rely on it" />
        )}
      </p>
      <p class="source">Laid out by the paragraphs of LOLER 1998 (SI 1998/2307) Schedule 1.</p>
    </section>
  );
}

function ReportLink({ link: { id, number } }: { link: ReportLinkView }) {
  return <a href={`/examinations/${id}`}>{number}</a>;
}
