import { describe, expect, it } from 'vitest';
import { checkReport } from '../../src/rules/examination/check-report.js';
import { completeReport } from '../../src/rules/examination/complete-report.js';
import type { ReportDraft } from '../../src/rules/examination/draft.js';
import { day } from './example-gear.js';
import { draft, facts } from './example-report.js';

// Schedule 1 paragraph 4 asks for the date of the last thorough examination; that the register is asked is our own rule.
describe('the last examination in a report', () => {
  const onRecord = { on: day('2025-12-10'), record: 7 };
  const known = facts({ lastOnRecord: onRecord });
  const NONE: ReportDraft = { lastExaminedOn: undefined, noEarlierExamination: true };
  const later = { paragraph: '4', field: 'lastExaminedOn', code: 'later_on_record', onRecord };

  const gapsOf = (changes: ReportDraft, of = facts()) =>
    checkReport(draft(changes), of).map(({ paragraph, field, code }) => `${paragraph} ${field} ${code}`);

  it('is that of the register, or a later one', () => {
    for (const on of ['2025-12-10', '2025-12-11'])
      expect(gapsOf({ lastExaminedOn: day(on) }, known)).toEqual([]);
  });

  it('is not called unknown, nor an earlier one, without a word of why', () => {
    for (const said of [NONE, { lastExaminedOn: day('2025-12-09') }]) {
      expect(checkReport(draft(said), known)).toEqual([later]);
      expect(checkReport(draft({ ...said, registerDoubt: ' ' }), known)).toEqual([later]);
      expect(gapsOf({ ...said, registerDoubt: 'of another item' }, known)).toEqual([]);
    }
    expect(gapsOf({ lastExaminedOn: undefined }, known)).toEqual(['4 lastExaminedOn missing']);
  });

  it('stands in the report beside what the register has, where that is doubted', () => {
    const doubted = draft({ ...NONE, registerDoubt: 'of another item' });
    const { report } = completeReport(doubted, known);
    expect(report).toMatchObject({
      lastExaminedOn: null,
      registerDoubt: { on: '2025-12-10', record: 7, why: 'of another item' },
    });
    expect(completeReport(draft(), known).report).not.toHaveProperty('registerDoubt');
  });

  it('is not doubted where the register has none, or the one named', () => {
    const doubted = { registerDoubt: 'of another item' };
    expect(gapsOf(doubted)).toEqual(['4 registerDoubt contradiction']);
    expect(gapsOf(doubted, known)).toEqual(['4 registerDoubt contradiction']);
  });
});
