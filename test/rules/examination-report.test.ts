import { describe, expect, it } from 'vitest';
import { checkReport } from '../../src/rules/examination/check-report.js';
import { completeReport } from '../../src/rules/examination/complete-report.js';
import type { DraftDefect, ReportDraft, ReportFacts } from '../../src/rules/examination/draft.js';
import { OCCASIONS, PARAGRAPHS } from '../../src/rules/examination/report.js';
import { RECORD_DUTIES } from '../../src/rules/examination/places.js';
import { day, TODAY, without } from './example-gear.js';
import { DANGER, draft, facts, POSSIBLE_DANGER } from './example-report.js';
import { golden } from './golden.js';

interface Row {
  readonly paragraph: (typeof PARAGRAPHS)[number];
  readonly item: string;
  readonly fields: readonly string[];
  readonly when?: keyof typeof SITUATIONS;
  /** The answer that says there is none, for what is asked only where there is some. */
  readonly orSaid?: 'manufactureUnknown' | 'noEarlierExamination' | 'noDefect' | 'noTest';
  readonly carriedAs?: string;
  readonly verified: 'read' | 'readInReproduction' | 'memory';
}

const INSTALLED: ReportDraft = {
  firstAfterInstallation: true,
  installedCorrectly: true,
  occasion: undefined,
};

const SITUATIONS = {
  configured: draft({ dependsOnConfiguration: true, configuration: 'three legs' }),
  installed: draft(INSTALLED),
  danger: draft(DANGER),
  possibleDanger: draft(POSSIBLE_DANGER),
  noRule: draft({ nextExaminationBy: day('2026-10-10') }),
};

const rows = golden<Row[]>('loler-schedule-1');

function situation({ when }: Row): { whole: ReportDraft; known: ReportFacts } {
  const known = when === 'noRule' ? without(facts(), 'latestNext') : facts();
  return { whole: when === undefined ? draft() : SITUATIONS[when], known };
}

/** A draft without a field, or without a field of its first defect. */
function lacking(whole: ReportDraft, field: string): ReportDraft {
  const inDefect = /^defects\[0\]\.(\w+)$/.exec(field)?.[1];
  if (inDefect === undefined) return { ...whole, [field]: undefined };
  const [first] = whole.defects ?? [];
  return { ...whole, defects: [{ ...first, [inDefect]: undefined }] };
}

function gapsOf(changes: ReportDraft, known = facts()): string[] {
  return checkReport(draft(changes), known).map(
    ({ paragraph, field, code }) => `${paragraph} ${field} ${code}`,
  );
}

// Every row is an item of SI 1998/2307 Schedule 1; see the file for how each was verified.
describe('completeness by LOLER 1998 (SI 1998/2307) Schedule 1, item by item', () => {
  it('has every paragraph of the Schedule in the list', () => {
    expect([...new Set(rows.map(({ paragraph }) => paragraph))].sort()).toEqual([...PARAGRAPHS].sort());
  });

  it.each(rows.filter(({ fields }) => fields.length > 0))(
    'paragraph $paragraph: $item ($verified) cannot be left out',
    (row) => {
      const { whole, known } = situation(row);
      expect(checkReport(whole, known)).toEqual([]);
      for (const field of row.fields) {
        const expected = { paragraph: row.paragraph, field, code: 'missing' };
        expect(checkReport(lacking(whole, field), known)).toContainEqual(expected);
      }
    },
  );

  it.each(rows.filter(({ orSaid }) => orSaid !== undefined))(
    'paragraph $paragraph: $item can be said not to be there',
    (row) => {
      const { whole, known } = situation(row);
      const none = row.fields.reduce(lacking, whole);
      const said = { ...none, [row.orSaid ?? '']: true, safeToOperate: true };
      expect(checkReport(said, known)).toEqual([]);
      expect(checkReport({ ...whole, [row.orSaid ?? '']: true }, known).map(({ code }) => code)).toContain(
        'contradiction',
      );
    },
  );

  it.each(rows.filter(({ carriedAs }) => carriedAs !== undefined))(
    'paragraph $paragraph: $item is given, not asked for',
    ({ carriedAs = '' }) => {
      const report: unknown = completeReport(draft(), facts()).report;
      const value = carriedAs
        .split('.')
        .reduce<unknown>((part, name) => Reflect.get(Object(part), name), report);
      expect(value).toBe(carriedAs === 'reportedOn' ? TODAY : 'Person One');
    },
  );

  it('names everything that lacks of an empty draft at once, in the order of the Schedule', () => {
    const paragraphs = checkReport({}, without(facts(), 'latestNext')).map(({ paragraph }) => paragraph);
    expect([...new Set(paragraphs)]).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6(a)',
      '8(a)',
      '8(d)',
      '8(e)',
      '8(f)',
      '9',
      '10',
    ]);
  });

  it('takes blanks for nothing', () => {
    expect(gapsOf({ employerName: '  ', tests: ' ' })).toEqual([
      '1 employerName missing',
      '8(e) tests missing',
    ]);
  });
});

describe('a complete report', () => {
  it('holds what was said, and says null or none where there is none', () => {
    const { report } = completeReport(
      draft({
        manufacturedOn: undefined,
        manufactureUnknown: true,
        lastExaminedOn: undefined,
        noEarlierExamination: true,
        tests: undefined,
        noTest: true,
        selfEmployed: true,
        examinerEmployerName: undefined,
        examinerEmployerAddress: undefined,
      }),
      facts(),
    );
    expect(report).toMatchObject({
      manufacturedOn: null,
      lastExaminedOn: null,
      tests: null,
      configuration: null,
      defects: [],
      nextExaminationBy: '2026-12-10',
      examiner: { name: 'Person One', employer: null },
      occasion: { firstAfterInstallation: false, occasion: 'sixMonths' },
    });
  });

  it('holds the employer of the examiner, the defects and what was found of the installation', () => {
    const { report, gaps } = completeReport(draft({ ...INSTALLED, ...POSSIBLE_DANGER }), facts());
    expect(gaps).toEqual([]);
    expect(report).toMatchObject({
      occasion: { firstAfterInstallation: true, installedCorrectly: true },
      defects: [
        {
          part: 'sleeve',
          description: 'worn thin',
          danger: 'couldBecome',
          by: '2026-09-01',
          remedy: 'renew the sleeve',
        },
      ],
      examiner: { employer: { name: 'Ropewalk Examinations', address: '9 Ropewalk' } },
    });
  });

  it('says nothing of a day for a defect that is a danger already', () => {
    const { report } = completeReport(draft(DANGER), facts());
    expect(report?.defects).toStrictEqual(DANGER.defects);
  });

  it('is not made of a draft with a gap', () => {
    const { report, gaps } = completeReport(draft({ examinerAddress: undefined }), facts());
    expect(report).toBeUndefined();
    expect(gaps).toEqual([{ paragraph: '9', field: 'examinerAddress', code: 'missing' }]);
  });

  it('knows the four occasions of paragraph 7(a), and the one before first use of regulation 9(1)', () => {
    expect(OCCASIONS).toEqual(['sixMonths', 'twelveMonths', 'scheme', 'exceptional', 'beforeFirstUse']);
  });
});

describe('answers that go against each other', () => {
  it('say that there is none of what they give', () => {
    expect(gapsOf({ manufactureUnknown: true })).toEqual(['3 manufactureUnknown contradiction']);
    expect(gapsOf({ noEarlierExamination: true })).toEqual(['4 noEarlierExamination contradiction']);
    expect(gapsOf({ noTest: true })).toEqual(['8(e) noTest contradiction']);
    expect(gapsOf({ ...POSSIBLE_DANGER, noDefect: true })).toEqual(['8(a) noDefect contradiction']);
  });

  it('call safe what has one danger among its defects', () => {
    const defects = [...(POSSIBLE_DANGER.defects ?? []), ...(DANGER.defects ?? [])];
    expect(gapsOf({ noDefect: undefined, defects })).toEqual(['7(b) safeToOperate danger_called_safe']);
  });

  it('put days in an order that cannot be', () => {
    expect(
      gapsOf({ examinedOn: day('2024-06-09'), lastExaminedOn: undefined, noEarlierExamination: true }),
    ).toEqual(['8(f) examinedOn before_manufacture']);
    expect(gapsOf({ examinedOn: day('2025-12-09') })).toEqual(['8(f) examinedOn before_last_examination']);
    expect(gapsOf({ nextExaminationBy: TODAY })).toEqual(['8(d) nextExaminationBy not_after_examination']);
    expect(gapsOf({ ...POSSIBLE_DANGER, defects: [{ ...POSSIBLE_DANGER.defects?.[0], by: TODAY }] })).toEqual(
      ['8(c) defects[0].by not_after_examination'],
    );
  });

  it('identify another item', () => {
    expect(gapsOf({ identification: 'Sling SL-015' })).toEqual(['3 identification names_another_item']);
    expect(gapsOf({ identification: 'sling with the number HW 22' })).toEqual([]);
    expect(gapsOf({ identification: undefined })).toEqual(['3 identification missing']);
  });

  it('name a configuration that nothing depends on', () => {
    expect(gapsOf({ configuration: 'two legs' })).toEqual(['5 configuration contradiction']);
  });

  it('answer both paragraph 6 and paragraph 7', () => {
    expect(gapsOf({ ...INSTALLED, occasion: 'sixMonths' })).toEqual(['7(a) occasion contradiction']);
    expect(gapsOf({ installedCorrectly: true })).toEqual(['6(b) installedCorrectly contradiction']);
  });

  it('call safe what was installed wrongly', () => {
    expect(gapsOf({ ...INSTALLED, installedCorrectly: false })).toEqual(['6(b) safeToOperate contradiction']);
    expect(gapsOf({ ...INSTALLED, installedCorrectly: false, safeToOperate: false })).toEqual([]);
  });

  it('call safe what is a danger, or unsafe what has no defect', () => {
    expect(gapsOf({ ...DANGER, safeToOperate: true })).toEqual(['7(b) safeToOperate danger_called_safe']);
    expect(gapsOf({ ...DANGER, ...INSTALLED, safeToOperate: true })).toEqual([
      '6(b) safeToOperate danger_called_safe',
    ]);
    expect(gapsOf({ safeToOperate: false })).toEqual(['8(a) defects unsafe_without_reason']);
    expect(gapsOf(POSSIBLE_DANGER)).toEqual([]);
  });

  it('give an employer to the self-employed', () => {
    expect(gapsOf({ selfEmployed: true })).toEqual([
      '9 examinerEmployerName contradiction',
      '9 examinerEmployerAddress contradiction',
    ]);
  });
});

describe('defects by paragraph 8(a) to (c)', () => {
  const [possible = {}] = POSSIBLE_DANGER.defects ?? [];
  const [now = {}] = DANGER.defects ?? [];
  const withDefect = (defect: DraftDefect, changes: ReportDraft = {}) =>
    gapsOf({ noDefect: undefined, ...changes, defects: [defect] });

  it('have a last day of use only when no danger yet, and after the day of the examination', () => {
    expect(withDefect({ ...now, by: day('2026-09-01') }, { safeToOperate: false })).toEqual([
      '8(c) defects[0].by contradiction',
    ]);
    expect(withDefect({ ...possible, by: TODAY })).toEqual(['8(c) defects[0].by not_after_examination']);
    expect(withDefect({ ...possible, by: day('2026-06-11') })).toEqual([]);
  });

  it('are named by their row', () => {
    const two = [possible, without(possible, 'remedy')];
    expect(gapsOf({ noDefect: undefined, defects: two })).toEqual(['8(c) defects[1].remedy missing']);
  });
});

describe('days of a report', () => {
  it('are not in the future, nor before manufacture or the last examination', () => {
    expect(gapsOf({ examinedOn: day('2026-06-11') })).toEqual(['8(f) examinedOn in_future']);
    expect(gapsOf({ examinedOn: TODAY, lastExaminedOn: TODAY, manufacturedOn: TODAY })).toEqual([]);
    expect(gapsOf({ lastExaminedOn: day('2026-06-11') })).toEqual([
      '8(f) examinedOn before_last_examination',
    ]);
    expect(gapsOf({ manufacturedOn: day('2026-06-11') })).toEqual(['8(f) examinedOn before_manufacture']);
  });

  it('let the next one be earlier than the rules give, never later', () => {
    const next = (on: string) => checkReport(draft({ nextExaminationBy: day(on) }), facts());
    expect(next('2026-12-10')).toEqual([]);
    expect(next('2026-12-09')).toEqual([]);
    expect(next('2026-12-11')).toEqual([
      { paragraph: '8(d)', field: 'nextExaminationBy', code: 'later_than_allowed', latest: '2026-12-10' },
    ]);
    expect(next('2026-06-11')).toEqual([]);
    expect(next('2026-06-10').map(({ code }) => code)).toEqual(['not_after_examination']);
  });
});

describe('what other places ask of a record', () => {
  it('is a part of the Schedule everywhere, and the whole of it in Great Britain', () => {
    const asked = (place: string) => (RECORD_DUTIES[place] ?? []).flatMap(({ paragraphs }) => paragraphs);
    expect(asked('gb')).toEqual(PARAGRAPHS);
    expect(Object.keys(RECORD_DUTIES).sort()).toEqual(['au', 'eu', 'gb', 'us']);
    const verified = new Map(rows.map((row) => [row.paragraph, row.verified]));
    for (const duty of RECORD_DUTIES['gb'] ?? []) {
      for (const paragraph of duty.paragraphs) expect(verified.get(paragraph)).toBe(duty.verified);
    }
  });
});
