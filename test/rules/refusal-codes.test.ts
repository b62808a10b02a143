import { describe, expect, it } from 'vitest';
import { fitness, type FitnessContext } from '../../src/rules/fitness/fitness.js';
import { REFUSAL_CODES, type RefusalCode } from '../../src/rules/fitness/refusal.js';
import type { Gear } from '../../src/rules/gear/gear.js';
import type { GearLine } from '../../src/rules/lines/need.js';
import type { HostingNeed } from '../../src/rules/hosting/hosting-need.js';
import type { LoadChart } from '../../src/rules/hosting/load-chart.js';
import {
  ACCESSORY_TRIGGERS,
  context,
  day,
  gear,
  kind,
  line,
  requirement,
  scheme,
  without,
} from './example-gear.js';
import { hosting, truck } from './example-truck.js';

interface Case {
  readonly gear?: Partial<Gear>;
  readonly line?: Partial<GearLine>;
  readonly context?: Partial<FitnessContext>;
}

const away = { jobId: 7, jobReference: 'J-7', from: day('2026-05-01'), to: day('2026-05-02'), late: true };
const life = kind({ serviceLife: { years: 10, from: 'manufacturedOn', source: { key: 'as-nzs-1891-4' } } });
const hosts = (loadChart: LoadChart, need: Partial<HostingNeed> = {}): Case => ({
  gear: { loadChart },
  line: { hosting: hosting(need) },
});
const size = (dimension: string, rule: 'atLeast' | 'equals', value: string): Case => ({
  line: { dimensions: [{ dimension, rule, value, source: 'common-practice' }] },
});
const examined = (doneOn: string, outcome: 'fit' | 'unfit' = 'fit'): Case => ({
  gear: { inspections: [{ type: 'thoroughExamination', doneOn: day(doneOn), outcome }] },
});

/** What brings each code about, alone. The one left out is the allocation's to give. */
const CASES: Readonly<Record<Exclude<RefusalCode, 'excluded_by_storeman'>, Case>> = {
  scrapped: { gear: { condition: 'scrapped' } },
  quarantined: { gear: { condition: 'quarantined' } },
  under_repair: { gear: { condition: 'underRepair' } },
  missing: { gear: { missing: true } },
  defect_deadline: { gear: { defectDeadline: day('2026-06-16') } },
  wrong_kind: { line: { kind: 'shackle' } },
  wrong_duty: { line: { duty: 'carrying' } },
  need_unsettled: { line: { unsettled: [{ code: 'parameter_missing', subject: 'lifterMassKg' }] } },
  unrated: { gear: { markings: [] } },
  rating_not_comparable: { line: { rating: { measure: 'ratedPersons', value: '1', unit: 'persons' } } },
  under_rated: { line: { rating: { measure: 'workingLoadLimit', value: '2000.001', unit: 'kg' } } },
  unknown_size: size('barDiameterMm', 'atLeast', '1'),
  too_short: size('lengthM', 'atLeast', '4.001'),
  does_not_fit_machine: size('forkWidthMm', 'equals', '101'),
  does_not_fit_panel: size('jawMaximumMm', 'atLeast', '121'),
  no_load_chart: hosts(truck({ points: [] })),
  outside_load_chart: hosts(truck(), { heightMm: '4501' }),
  residual_capacity_too_low: hosts(truck(), { loadKg: '2150.1' }),
  attachment_not_covered: hosts(without(truck(), 'attachmentCover')),
  never_examined: { gear: { inspections: [] } },
  failed_examination: examined('2026-03-01', 'unfit'),
  out_of_date: examined('2025-12-09'),
  due_during_job: examined('2025-12-16'),
  examine_after_event: { gear: { events: [{ type: 'altered', on: day('2026-04-01') }] } },
  lifts_used_up: {
    gear: { lifts: [{ on: day('2026-05-04'), lifts: 10 }] },
    context: { scheme: scheme([requirement([...ACCESSORY_TRIGGERS, { when: 'everyLifts', lifts: 10 }])]) },
  },
  past_service_life: { gear: { manufacturedOn: day('2016-06-09') }, context: { kind: life } },
  service_life_ends_during_job: { gear: { manufacturedOn: day('2016-06-16') }, context: { kind: life } },
  service_life_unknown: { gear: { manufacturedOn: day('2026-06-11') }, context: { kind: life } },
  certificate_missing: { gear: { certificateOnFile: false } },
  label_illegible: { gear: { labelLegible: false } },
  serial_unknown: { gear: { serialKnown: false } },
  no_rule_for_kind: { context: { scheme: scheme([]) } },
  outside_hire: { gear: { hire: { to: day('2026-06-16') } } },
  promised_elsewhere: { gear: { commitments: [{ ...away, to: day('2026-06-15'), late: false }] } },
  not_back_yet: { gear: { commitments: [away] } },
  at_another_store: { context: { homeStoreOnly: 2 } },
};

describe('refusal codes', () => {
  it.each(Object.entries(CASES))(
    '%s is reached, and alone',
    (code, { gear: item, line: need, context: at }) => {
      const verdict = fitness(gear(item), line(need), context(at));
      expect(verdict.refusals.map((refusal) => refusal.code)).toEqual([code]);
      expect(verdict.fit).toBe(false);
      expect(verdict.refusals[0]?.source).not.toBe('');
    },
  );

  it('no code is left over', () => {
    expect([...Object.keys(CASES), 'excluded_by_storeman']).toEqual(REFUSAL_CODES);
  });
});
