import { describe, expect, it } from 'vitest';
import { checkSchedule } from '../../src/rules/panels/check-schedule.js';
import { liftedPanels } from '../../src/rules/panels/lifted-panel.js';
import type { PanelLine } from '../../src/rules/panels/panel-line.js';
import { panelMass, rulingPanels, type EstimateMargin } from '../../src/rules/panels/panel-mass.js';
import { Exact } from '../../src/rules/quantities/exact.js';
import { golden } from './golden.js';

const TEN_PER_CENT: EstimateMargin = { value: '0.10', source: { key: 'common-practice' } };
const NO_MARGIN: EstimateMargin = { value: '0.0', source: { key: 'common-practice' } };
const ESTIMATE = 'An estimate. Weigh a panel, or take the mass from the maker, before the lift.';
const IN_THE_MIDDLE = 'Its centre of gravity is not stated, and is taken in the middle of its height.';

type Mass = { massKg: string } | { arealMassKgPerM2: string };
type Size = Partial<Omit<PanelLine, 'massKg' | 'arealMassKgPerM2'>>;

function panel(mass: Mass, size: Size = {}): PanelLine {
  const usual = {
    name: 'A1',
    heightMm: '7500',
    widthMm: '1200',
    thicknessMm: '112',
    count: 4,
    packingKg: '20',
  };
  return { ...usual, ...size, ...mass };
}

describe('the mass of a panel', () => {
  it.each([
    // Areal mass × face, no margin; the products are worked by hand.
    // 1.2 m × 7.5 m = 9 m2, × 50 kg/m2 = 450 kg
    { arealMassKgPerM2: '50', heightMm: '7500', widthMm: '1200', massKg: '450' },
    // 1.2 m × 9.0 m = 10.8 m2, × 45 kg/m2 = 486 kg
    { arealMassKgPerM2: '45', heightMm: '9000', widthMm: '1200', massKg: '486' },
  ])('is areal mass times height times width: $massKg kg', ({ massKg, arealMassKgPerM2, ...size }) => {
    expect(panelMass(panel({ arealMassKgPerM2 }, size), NO_MARGIN).massKg.toString()).toBe(massKg);
  });

  it('is raised by the margin when it is estimated, and packing is added after', () => {
    const { massKg, packedKg, workings } = panelMass(panel({ arealMassKgPerM2: '50' }), TEN_PER_CENT);
    // 9 m2 × 50 kg/m2 = 450 kg; × 1.10 = 495 kg; + 20 kg packing = 515 kg
    expect(massKg.toString()).toBe('495');
    expect(packedKg.toString()).toBe('515');
    expect(workings).toEqual([
      {
        title: 'Panel A1: mass',
        formula: 'areal mass × height × width × (1 + margin)',
        inputs: [
          { name: 'areal mass', value: '50', unit: 'kg/m2' },
          { name: 'height', value: '7.5', unit: 'm' },
          { name: 'width', value: '1.2', unit: 'm' },
          { name: 'margin', value: '0.10', unit: '' },
        ],
        result: { name: 'mass', value: '495', unit: 'kg' },
        source: 'common-practice',
        caution: `${ESTIMATE} ${IN_THE_MIDDLE}`,
      },
      {
        title: 'Panel A1: packed mass',
        formula: 'mass + packing',
        inputs: [
          { name: 'mass', value: '495', unit: 'kg' },
          { name: 'packing', value: '20', unit: 'kg' },
        ],
        result: { name: 'packed mass', value: '515', unit: 'kg' },
        source: 'common-practice',
      },
    ]);
  });

  it('takes the fittings into the estimate, and the margin over both', () => {
    const fitted = panel({ arealMassKgPerM2: '50' }, { fittingsKg: '18.5', centreOffsetMm: '0' });
    const { massKg, packedKg, workings } = panelMass(fitted, TEN_PER_CENT);
    // 9 m2 × 50 kg/m2 = 450 kg; + 18.5 kg = 468.5 kg; × 1.10 = 515.35 kg; + 20 kg packing = 535.35 kg
    expect([massKg.toString(), packedKg.toString()]).toEqual(['515.35', '535.35']);
    expect(workings[0]).toEqual({
      title: 'Panel A1: mass',
      formula: '(areal mass × height × width + fittings) × (1 + margin)',
      inputs: [
        { name: 'areal mass', value: '50', unit: 'kg/m2' },
        { name: 'height', value: '7.5', unit: 'm' },
        { name: 'width', value: '1.2', unit: 'm' },
        { name: 'fittings', value: '18.5', unit: 'kg' },
        { name: 'margin', value: '0.10', unit: '' },
      ],
      result: { name: 'mass', value: '515.35', unit: 'kg' },
      source: 'common-practice',
      caution: ESTIMATE,
    });
  });

  it('is the same with fittings of nought as without', () => {
    const none = panelMass(panel({ arealMassKgPerM2: '50' }, { fittingsKg: '0' }), TEN_PER_CENT);
    expect(none.massKg.toString()).toBe('495');
  });

  it('has no margin when it is weighed', () => {
    const { massKg, packedKg, workings } = panelMass(panel({ massKg: '478.5' }), TEN_PER_CENT);
    expect(massKg.toString()).toBe('478.5');
    expect(packedKg.toString()).toBe('498.5');
    expect(workings[0]).toEqual({
      title: 'Panel A1: mass',
      formula: 'as weighed, no margin',
      inputs: [{ name: 'weighed mass', value: '478.5', unit: 'kg' }],
      result: { name: 'mass', value: '478.5', unit: 'kg' },
      source: 'common-practice',
      caution: IN_THE_MIDDLE,
    });
  });

  it('carries no caution when it is weighed and its centre of gravity is stated', () => {
    const stated = panelMass(panel({ massKg: '478.5' }, { centreOffsetMm: '0' }), TEN_PER_CENT);
    expect(stated.workings.map((working) => 'caution' in working)).toEqual([false, false]);
  });

  it('names the panel in its workings', () => {
    const { workings } = panelMass(panel({ massKg: '478' }, { name: 'B2 door' }), TEN_PER_CENT);
    expect(workings.map(({ title }) => title)).toEqual(['Panel B2 door: mass', 'Panel B2 door: packed mass']);
  });

  it('is not guessed where none is given', () => {
    const { massKg: _none, ...nothing } = { ...panel({ massKg: '1' }) };
    expect(() => panelMass(nothing, TEN_PER_CENT)).toThrow(RangeError);
  });
});

interface MaterialRow {
  readonly material: string;
  readonly arealMassKgPerM2?: string;
  readonly densityKgPerM3?: string;
  readonly thicknessMm?: string;
  readonly heightMm: string;
  readonly widthMm: string;
  readonly massKg: string;
  readonly source: string;
}

describe('the mass of a face of known material', () => {
  const rows = golden<MaterialRow[]>('panel-mass');

  it.each(rows)('$material, $heightMm by $widthMm mm: $massKg kg ($source)', (row) => {
    const { heightMm, widthMm, densityKgPerM3 = '0', thicknessMm = '0' } = row;
    const layer = Exact.of(densityKgPerM3).times(Exact.of(thicknessMm)).times(Exact.of('0.001'));
    const arealMassKgPerM2 = row.arealMassKgPerM2 ?? layer.toString();
    const face = panel({ arealMassKgPerM2 }, { heightMm, widthMm, packingKg: '0' });
    expect(panelMass(face, NO_MARGIN).packedKg.toString()).toBe(row.massKg);
  });
});

describe('the panels of a lift', () => {
  it('are exact, in metres, and weighed with their margin and packing', () => {
    const schedule = [
      panel({ arealMassKgPerM2: '50' }, { fittingsKg: '10', centreOffsetMm: '62.5', count: 3 }),
      panel({ massKg: '478.5' }, { name: 'B2', heightMm: '6320', widthMm: '977.9', thicknessMm: '104.5' }),
    ];
    const lifted = liftedPanels(schedule, TEN_PER_CENT).map((each) =>
      Object.fromEntries(Object.entries(each).map(([key, value]) => [key, String(value)])),
    );
    expect(lifted).toEqual([
      {
        name: 'A1',
        heightM: '7.5',
        widthM: '1.2',
        thicknessM: '0.112',
        // (450 + 10) kg × 1.10 = 506 kg
        massKg: '506',
        packedKg: '526',
        centreOffsetM: '0.0625',
        count: '3',
      },
      {
        name: 'B2',
        heightM: '6.32',
        widthM: '0.9779',
        thicknessM: '0.1045',
        massKg: '478.5',
        packedKg: '498.5',
        centreOffsetM: '0',
        count: '4',
      },
    ]);
  });
});

describe('the ruling panels', () => {
  it('are found separately for bare mass, packed mass and thickness', () => {
    const bare = panel({ massKg: '500' }, { name: 'heavy', packingKg: '0' });
    const packed = panel({ massKg: '490' }, { name: 'crated', packingKg: '30' });
    const thick = panel({ massKg: '300' }, { name: 'thick', thicknessMm: '150.5' });
    const ruling = rulingPanels([thick, bare, packed], TEN_PER_CENT);
    expect([ruling.heaviest.panel.name, ruling.heaviest.massKg.toString()]).toEqual(['heavy', '500']);
    expect([ruling.heaviestPacked.panel.name, ruling.heaviestPacked.packedKg.toString()]).toEqual([
      'crated',
      '520',
    ]);
    expect([ruling.thickest.panel.name, ruling.thickest.thicknessMm.toString()]).toEqual(['thick', '150.5']);
    expect(ruling.workings).toHaveLength(4);
  });

  it('count the margin: an estimate of 460 kg outweighs a weighed 500 kg', () => {
    // 9.2 m2 × 50 kg/m2 = 460 kg, × 1.10 = 506 kg
    const estimate = panel(
      { arealMassKgPerM2: '50' },
      { name: 'estimated', heightMm: '9200', widthMm: '1000' },
    );
    const ruling = rulingPanels([panel({ massKg: '500' }), estimate], TEN_PER_CENT);
    expect([ruling.heaviest.panel.name, ruling.heaviest.massKg.toString()]).toEqual(['estimated', '506']);
    expect(ruling.workings).toHaveLength(2);
  });

  it('are the first of equals', () => {
    const twins = [
      panel({ massKg: '500' }, { name: 'first' }),
      panel({ massKg: '500.0' }, { name: 'second' }),
    ];
    const ruling = rulingPanels(twins, TEN_PER_CENT);
    expect(ruling.heaviest.panel.name).toBe('first');
    expect(ruling.thickest.panel.name).toBe('first');
  });

  it('do not exist on an empty schedule', () => {
    expect(() => rulingPanels([], TEN_PER_CENT)).toThrow(
      new RangeError('a schedule without panels has no ruling one'),
    );
  });
});

describe('checking a schedule', () => {
  it('finds nothing wrong with a plain one', () => {
    expect(
      checkSchedule([panel({ massKg: '478' }), panel({ arealMassKgPerM2: '52' }, { packingKg: '0' })]),
    ).toEqual([]);
  });

  it('refuses a schedule without panels', () => {
    expect(checkSchedule([])).toEqual([{ code: 'no_panels' }]);
  });

  it('wants a mass, once', () => {
    const { massKg: _none, ...nothing } = { ...panel({ massKg: '1' }) };
    const twice = { ...panel({ massKg: '478' }), arealMassKgPerM2: '52' };
    expect(checkSchedule([nothing, twice])).toEqual([
      { code: 'mass_missing', field: 'massKg', line: 0 },
      { code: 'mass_given_twice', field: 'massKg', line: 1 },
    ]);
  });

  it.each([
    // The last figure allowed and the first one refused, at either end; the limits are common practice, no source.
    { field: 'heightMm', least: '500', under: '499.9', most: '20000', over: '20000.1' },
    { field: 'widthMm', least: '100', under: '99.9', most: '6000', over: '6000.1' },
    { field: 'thicknessMm', least: '10', under: '9.9', most: '500', over: '500.1' },
    { field: 'packingKg', least: '0', under: '-0.1', most: '1000', over: '1000.1' },
    { field: 'massKg', least: '1', under: '0.9', most: '5000', over: '5000.1' },
    { field: 'arealMassKgPerM2', least: '1', under: '0.9', most: '300', over: '300.1' },
    { field: 'fittingsKg', least: '0', under: '-0.1', most: '1000', over: '1000.1' },
  ] as const)('knows what $field can be at all', ({ field, least, under, most, over }) => {
    const withFigure = (value: string): PanelLine =>
      field === 'massKg' || field === 'arealMassKgPerM2'
        ? panel(field === 'massKg' ? { massKg: value } : { arealMassKgPerM2: value })
        : panel(field === 'fittingsKg' ? { arealMassKgPerM2: '52' } : { massKg: '478' }, { [field]: value });
    expect(checkSchedule([withFigure(least), withFigure(most)])).toEqual([]);
    expect(checkSchedule([withFigure(under)])).toEqual([{ code: 'too_small', field, least, most, line: 0 }]);
    expect(checkSchedule([withFigure(over)])).toEqual([{ code: 'too_large', field, least, most, line: 0 }]);
  });

  it('wants no fittings beside a weighed mass, which has them in it', () => {
    const weighed = panel({ massKg: '478' }, { fittingsKg: '0' });
    const { massKg: _none, ...nothing } = weighed;
    const twice = { ...weighed, arealMassKgPerM2: '52' };
    expect(checkSchedule([weighed, nothing, twice])).toEqual([
      { code: 'fittings_in_weighed_mass', field: 'fittingsKg', line: 0 },
      { code: 'mass_missing', field: 'massKg', line: 1 },
      { code: 'mass_given_twice', field: 'massKg', line: 2 },
    ]);
  });

  it.each([
    // Half of 7500 mm is 3750 mm: on the very edge is outside.
    { centreOffsetMm: '0', heightMm: '7500', problem: undefined },
    { centreOffsetMm: '3749.9', heightMm: '7500', problem: undefined },
    { centreOffsetMm: '3750', heightMm: '7500', problem: { code: 'centre_outside_panel' } },
    { centreOffsetMm: '3750.1', heightMm: '7500', problem: { code: 'centre_outside_panel' } },
    { centreOffsetMm: '-0.1', heightMm: '7500', problem: { code: 'too_small', least: '0', most: '10000' } },
    { centreOffsetMm: '10000', heightMm: '20000', problem: { code: 'centre_outside_panel' } },
    {
      centreOffsetMm: '10000.1',
      heightMm: '20000',
      problem: { code: 'too_large', least: '0', most: '10000' },
    },
    { centreOffsetMm: '', heightMm: '7500', problem: { code: 'not_a_number' } },
  ])('takes a centre $centreOffsetMm mm off the middle of $heightMm mm: $problem', (row) => {
    const { centreOffsetMm, heightMm, problem } = row;
    const found = checkSchedule([panel({ massKg: '478' }, { centreOffsetMm, heightMm })]);
    expect(found).toEqual(problem ? [{ ...problem, field: 'centreOffsetMm', line: 0 }] : []);
  });

  it('holds no centre of gravity against a height that cannot be read', () => {
    const found = checkSchedule([panel({ massKg: '478' }, { centreOffsetMm: '9000', heightMm: 'tall' })]);
    expect(found).toEqual([{ code: 'not_a_number', field: 'heightMm', line: 0 }]);
  });

  it.each(['', ' ', '7,5', '1e3', 'NaN', '12 mm', '.5'])("does not read '%s' as a number", (heightMm) => {
    const found = checkSchedule([panel({ massKg: '478' }, { heightMm })]);
    expect(found).toEqual([{ code: 'not_a_number', field: 'heightMm', line: 0 }]);
  });

  it.each([
    [1, true],
    [10_000, true],
    [0, false],
    [-1, false],
    [1.5, false],
    [10_001, false],
    [Number.NaN, false],
  ])('takes a count of %d: %s', (count, fine) => {
    const problem = { code: 'count_out_of_range', field: 'count', least: '1', most: '10000', line: 0 };
    expect(checkSchedule([panel({ massKg: '478' }, { count })])).toEqual(fine ? [] : [problem]);
  });

  it('reports every problem of every line', () => {
    const bad = panel({ massKg: '0' }, { name: '  ', heightMm: '0', count: 0 });
    const codes = checkSchedule([panel({ massKg: '478' }), bad]).map(({ code, line }) => `${line} ${code}`);
    expect(codes).toEqual(['1 blank_name', '1 too_small', '1 too_small', '1 count_out_of_range']);
  });
});
