import { readForm } from '../http/input.js';
import type { ReportParticulars } from '../rules/examination/report.js';

/** A form of a report as its fields hold it: texts by name, and the rows of the defects. */
export type ExaminationForm = Readonly<Record<string, unknown>>;

const YES_NO = [
  'manufactureUnknown',
  'noEarlierExamination',
  'dependsOnConfiguration',
  'firstAfterInstallation',
  'installedCorrectly',
  'safeToOperate',
  'noDefect',
  'noTest',
  'selfEmployed',
  'release',
  'declared',
];

/** What a form asks for, as the DTO of the API reads it. Rows left blank are dropped. */
export function readExaminationForm(fields: unknown): Record<string, unknown> {
  const form = readForm(fields);
  for (const name of YES_NO) {
    if (form[name] === 'true' || form[name] === 'false') form[name] = form[name] === 'true';
  }
  if (form['supersedesId'] !== undefined) form['supersedesId'] = Number(form['supersedesId']);
  if (Array.isArray(form['defects'])) form['defects'] = defectRows(form);
  return form;
}

/** The rows of the defects that say something. */
export function defectRows(form: ExaminationForm): Readonly<Record<string, unknown>>[] {
  const rows: unknown = form['defects'];
  return Array.isArray(rows) ? rows.filter(isRow) : [];
}

/** The fields as text again, flat, for a form that carries them unseen to the signature. */
export function hiddenFields(form: ExaminationForm): (readonly [name: string, value: string])[] {
  const texts = Object.entries(form).flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value] as const] : [],
  );
  const rows = defectRows(form).flatMap((row, index) =>
    Object.entries(row).flatMap(([name, value]) =>
      typeof value === 'string' ? [[`defects[${index}].${name}`, value] as const] : [],
    ),
  );
  return [...texts, ...rows];
}

/** An earlier report as a form, to be corrected: all its particulars again. */
export function formOfReport(report: ReportParticulars, supersedesId: number): ExaminationForm {
  const { occasion, examiner, signer, defects } = report;
  return {
    supersedesId: String(supersedesId),
    employerName: report.employerName,
    employerAddress: report.employerAddress,
    premisesAddress: report.premisesAddress,
    identification: report.identification,
    ...statedOrNot('manufacturedOn', report.manufacturedOn, 'manufactureUnknown'),
    ...statedOrNot('lastExaminedOn', report.lastExaminedOn, 'noEarlierExamination'),
    registerDoubt: report.registerDoubt?.why ?? '',
    safeWorkingLoad: report.safeWorkingLoad,
    dependsOnConfiguration: String(report.configuration !== null),
    configuration: report.configuration ?? '',
    firstAfterInstallation: String(occasion.firstAfterInstallation),
    ...(occasion.firstAfterInstallation
      ? { installedCorrectly: String(occasion.installedCorrectly) }
      : { occasion: occasion.occasion }),
    safeToOperate: String(report.safeToOperate),
    defects: defects.map((defect) => ({ ...defect })),
    ...(defects.length === 0 ? { noDefect: 'true' } : {}),
    nextExaminationBy: report.nextExaminationBy,
    ...statedOrNot('tests', report.tests, 'noTest'),
    examinedOn: report.examinedOn,
    ...formOfExaminer(report),
    signerAddress: signer.address === examiner.address ? '' : signer.address,
  };
}

/** Address, qualifications and employer of an examiner as fields. */
export function formOfExaminer({ examiner }: ReportParticulars): ExaminationForm {
  const { address, qualifications, employer } = examiner;
  return {
    examinerAddress: address,
    examinerQualifications: qualifications,
    selfEmployed: String(employer === null),
    examinerEmployerName: employer?.name ?? '',
    examinerEmployerAddress: employer?.address ?? '',
  };
}

function statedOrNot(name: string, value: string | null, absent: string): ExaminationForm {
  return value === null ? { [absent]: 'true' } : { [name]: value };
}

function isRow(row: unknown): row is Readonly<Record<string, unknown>> {
  return typeof row === 'object' && row !== null && Object.keys(row).length > 0;
}
