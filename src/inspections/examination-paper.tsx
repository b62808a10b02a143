import type { ComponentChildren } from 'preact';
import type { Danger } from '../rules/examination/report.js';
import { day } from '../web/sentences/words.js';
import type { RegisterDoubtView, ReportedDefectView, ReportParticularsView } from './examinations.dto.js';
import { occasionSentence } from './examination-words.js';

/** The particulars of a report as a document: one line for each paragraph of the Schedule, none left out. */
export function ExaminationPaper({ report }: { report: ReportParticularsView }) {
  const { occasion } = report;
  const first = occasion.firstAfterInstallation;
  const safe = report.safeToOperate ? 'It is safe to operate.' : 'It is NOT safe to operate.';
  return (
    <dl class="report">
      <Paragraph number="1" asks="Employer it was examined for">
        <Address name={report.employerName} address={report.employerAddress} />
      </Paragraph>
      <Paragraph number="2" asks="Where it was examined">
        <span class="lines">{report.premisesAddress}</span>
      </Paragraph>
      <Paragraph number="3" asks="Identification">
        <span class="lines">{report.identification}</span>
        <br />
        {report.manufacturedOn === null
          ? 'Day of manufacture not known.'
          : `Made on ${day(report.manufacturedOn)}.`}
      </Paragraph>
      <Paragraph number="4" asks="Last thorough examination">
        {report.lastExaminedOn === null ? 'None is known.' : `${day(report.lastExaminedOn)}.`}
        {report.registerDoubt === undefined ? null : <Doubt {...report.registerDoubt} />}
      </Paragraph>
      <Paragraph number="5" asks="Safe working load">
        <span class="lines">{report.safeWorkingLoad}</span>
        {report.configuration === null ? null : (
          <>
            <br />
            In the configuration examined last: <span class="lines">{report.configuration}</span>
          </>
        )}
      </Paragraph>
      <Paragraph number="6(a)" asks="First after installation or assembly at a new site">
        {first ? 'Yes.' : 'No.'}
      </Paragraph>
      <Paragraph number="6(b)" asks="If so: installed correctly and safe to operate">
        {first
          ? `${occasion.installedCorrectly ? 'Installed correctly.' : 'NOT installed correctly.'} ${safe}`
          : 'Does not apply: see 7.'}
      </Paragraph>
      <Paragraph number="7(a)" asks="Otherwise: what called for it">
        {occasionSentence(occasion)}
      </Paragraph>
      <Paragraph number="7(b)" asks="If so: safe to operate">
        {first ? 'Does not apply: see 6(b).' : safe}
      </Paragraph>
      <Findings report={report} />
      <Signatures report={report} />
      <Paragraph number="11" asks="Day of the report">
        {day(report.reportedOn)}
      </Paragraph>
    </dl>
  );
}

function Doubt({ on, record, why }: RegisterDoubtView) {
  return (
    <>
      <br />
      The register has one on {day(on)} (record {record}). The examiner does not go by it:{' '}
      <span class="lines">{why}</span>
    </>
  );
}

function Signatures({ report: { examiner, signer } }: { report: ReportParticularsView }) {
  return (
    <>
      <Paragraph number="9" asks="Examiner">
        <Address name={examiner.name} address={examiner.address} />
        <br />
        Qualifications: <span class="lines">{examiner.qualifications}</span>
        <br />
        {examiner.employer === null ? (
          'Self-employed.'
        ) : (
          <>
            Employed by: <Address {...examiner.employer} />
          </>
        )}
      </Paragraph>
      <Paragraph number="10" asks="Signed by">
        <Address {...signer} />
      </Paragraph>
    </>
  );
}

function Findings({ report }: { report: ReportParticularsView }) {
  const { defects } = report;
  return (
    <>
      <Paragraph number="8(a)" asks="Parts with a defect that is or could become a danger to persons">
        {defects.length === 0 ? 'None was found.' : null}
        <DefectList defects={defects} words={({ part, description }) => `${part}: ${description}`} />
      </Paragraph>
      <Paragraph number="8(b)" asks="Repair, renewal or alteration of what is a danger">
        <DefectsOf danger="is" defects={defects} words={({ part, remedy }) => `${part}: ${remedy}`} />
      </Paragraph>
      <Paragraph number="8(c)" asks="When what is no danger yet could become one, and what puts it right">
        <DefectsOf
          danger="couldBecome"
          defects={defects}
          words={({ part, by, remedy }) => `${part}: after ${day(by ?? '')}, unless put right: ${remedy}`}
        />
      </Paragraph>
      <Paragraph number="8(d)" asks="Next thorough examination no later than">
        <strong>{day(report.nextExaminationBy)}</strong>
      </Paragraph>
      <Paragraph number="8(e)" asks="Tests that were part of it">
        <span class="lines">{report.tests ?? 'None.'}</span>
      </Paragraph>
      <Paragraph number="8(f)" asks="Day of this examination">
        {day(report.examinedOn)}
      </Paragraph>
    </>
  );
}

type Words = (defect: ReportedDefectView) => string;

function DefectsOf({
  danger,
  defects,
  words,
}: {
  danger: Danger;
  defects: readonly ReportedDefectView[];
  words: Words;
}) {
  const some = defects.filter((defect) => defect.danger === danger);
  return some.length === 0 ? (
    <>Does not apply: there is none.</>
  ) : (
    <DefectList defects={some} words={words} />
  );
}

function DefectList({ defects, words }: { defects: readonly ReportedDefectView[]; words: Words }) {
  if (defects.length === 0) return null;
  return (
    <ul>
      {defects.map((defect, index) => (
        <li key={index} class="lines">
          {words(defect)}
        </li>
      ))}
    </ul>
  );
}

function Paragraph({
  number,
  asks,
  children,
}: {
  number: string;
  asks: string;
  children: ComponentChildren;
}) {
  return (
    <div>
      <dt>
        <span class="report-number">{number}</span> <span>{asks}</span>
      </dt>
      <dd>{children}</dd>
    </div>
  );
}

function Address({ name, address }: { name: string; address: string }) {
  return (
    <>
      <strong>{name}</strong>, <span class="lines">{address}</span>
    </>
  );
}
