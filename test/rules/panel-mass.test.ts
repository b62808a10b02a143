import { describe, expect, it } from 'vitest';
import { checkSchedule } from '../../src/rules/panels/check-schedule.js';
import type { PanelLine } from '../../src/rules/panels/panel-line.js';
import { panelMass, rulingPanels, type EstimateMargin } from '../../src/rules/panels/panel-mass.js';

const TEN_PER_CENT: EstimateMargin = { value: '0.10', source: { key: 'common-practice' } };
const NO_MARGIN: EstimateMargin = { value: '0.0', source: { key: 'common-practice' } };

type Mass = { massKg: string } | { arealMassKgPerM2: string };
type Size = Partial<Pick<PanelLine, 'name' | 'heightMm' | 'widthMm' | 'thicknessMm' | 'packingKg' | 'count'>>;

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
    // One square metre of 22 mm chipboard P5: 750 kg/m3 × 0.022 m = 16.5 kg/m2
    // (TRADA, appendix A2.1, where the product is printed as 16.6)
    { arealMassKgPerM2: '16.5', heightMm: '1000', widthMm: '1000', massKg: '16.5' },
    // Glass, 17.1 kg/m2 for each 1/4 in (a trade table of material weights): 2.5 m × 1.25 m × 17.1 = 53.4375 kg
    { arealMassKgPerM2: '17.1', heightMm: '2500', widthMm: '1250', massKg: '53.4375' },
  ])('is areal mass times height times width: $massKg kg', ({ massKg, arealMassKgPerM2, ...size }) => {
    expect(panelMass(panel({ arealMassKgPerM2 }, size), NO_MARGIN).massKg.toString()).toBe(massKg);
  });

  it('is raised by the margin when it is estimated, and packing is added after', () => {
    const { massKg, packedKg, workings } = panelMass(panel({ arealMassKgPerM2: '50' }), TEN_PER_CENT);
    // 9 m2 × 50 kg/m2 = 450 kg; × 1.10 = 495 kg; + 20 kg packing = 515 kg
    expect(massKg.toString()).toBe('495');
    expect(packedKg.toString()).toBe('515');
    expect(workings.map(({ result }) => `${result.value} ${result.unit}`)).toEqual(['495 kg', '515 kg']);
    expect(workings[0]?.inputs).toContainEqual({ name: 'margin', value: '0.10', unit: '' });
    expect(workings[0]?.caution).toContain('estimate');
  });

  it('has no margin when it is weighed', () => {
    const { massKg, packedKg, workings } = panelMass(panel({ massKg: '478.5' }), TEN_PER_CENT);
    expect(massKg.toString()).toBe('478.5');
    expect(packedKg.toString()).toBe('498.5');
    expect(workings[0]?.formula).toBe('as weighed, no margin');
    expect(workings[0]?.caution).toBeUndefined();
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
    expect(() => rulingPanels([], TEN_PER_CENT)).toThrow(RangeError);
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
  ] as const)('knows what $field can be at all', ({ field, least, under, most, over }) => {
    const withFigure = (value: string): PanelLine =>
      field === 'massKg' || field === 'arealMassKgPerM2'
        ? panel(field === 'massKg' ? { massKg: value } : { arealMassKgPerM2: value })
        : panel({ massKg: '478' }, { [field]: value });
    expect(checkSchedule([withFigure(least), withFigure(most)])).toEqual([]);
    expect(checkSchedule([withFigure(under)])).toEqual([{ code: 'too_small', field, least, most, line: 0 }]);
    expect(checkSchedule([withFigure(over)])).toEqual([{ code: 'too_large', field, least, most, line: 0 }]);
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
