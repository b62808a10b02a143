import { LIFT_FIGURE_KEYS, originOf, type FigureKey } from '../rules/calculations/lift-figure.js';
import { PARAMETER_KEYS, type CalculationKey } from '../rules/calculations/parameter.js';
import { DUTIES } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import {
  COUNTED_BY,
  SIZE_RULES,
  type FitRequirement,
  type MethodDefinition,
  type MethodLine,
  type RatingBasis,
} from '../rules/lines/method.js';
import type { Measure } from '../rules/quantities/marking.js';
import { readArithmetic } from './read-arithmetic.js';
import { readCitation, readCitedText, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

/** What a method may refer to: the sources and the kinds of the catalogue. */
export interface KnownToMethods {
  readonly sources: Sources;
  readonly kinds: readonly KindDefinition[];
}

/** The unit that a basis must be in to rate each measure: a mass is never asked of a lashing capacity, nor a force of a working load limit. */
const UNIT_FOR: Readonly<Record<Measure, string>> = {
  workingLoadLimit: 'kg',
  ratedCapacity: 'kg',
  lashingCapacity: 'N',
  ratedPersons: 'persons',
};

const MANY = { from: 0, to: 100 };
const KEY_SHAPE = { shape: /^[a-z][A-Za-z]*$/, advice: "write a key such as 'strapsRoundWidth'" };
const MARGIN_SHAPE = {
  shape: /^0\.\d+$/,
  advice: "write a share below 1 in quotes, as in '0.10' for ten per cent",
};

/** Reads `config/methods/<method>.yaml`. `method` is the name of the file, and the file must say the same. */
export function readMethod(reader: Reader, method: string, known: KnownToMethods): MethodDefinition {
  reader.expectKeys([
    'method',
    'name',
    'summary',
    'estimateMargin',
    'perCrew',
    'calculations',
    'parameters',
    'lines',
    'confirmations',
    'cautions',
  ]);
  reader.at('method').readOneOf([method], 'method of this file name');
  const margin = reader.at('estimateMargin').expectKeys(['value', 'source']);
  const perCrew = reader.at('perCrew').expectKeys(['lifters', 'personsAloft', 'source']);
  const keys = new Set<string>();
  const arithmetic = readArithmetic(reader, known.sources);
  return {
    method,
    ...arithmetic,
    name: reader.at('name').readText(),
    summary: reader.at('summary').readText(),
    estimateMargin: {
      value: margin.at('value').readText(MARGIN_SHAPE),
      source: readCitation(margin.at('source'), known.sources),
    },
    perCrew: {
      lifters: perCrew.at('lifters').readWhole(MANY),
      personsAloft: perCrew.at('personsAloft').readWhole(MANY),
      source: readCitation(perCrew.at('source'), known.sources),
    },
    lines: reader.at('lines').readList((entry) => {
      const line = readLine(entry, known, arithmetic.calculations);
      if (keys.has(line.key))
        entry.at('key').refuse(`'${line.key}' is used twice`, 'give each line its own key');
      keys.add(line.key);
      return line;
    }),
    confirmations: reader
      .at('confirmations')
      .readList((text) => readCitedText(text, known.sources), { mayBeEmpty: true }),
    cautions: reader.at('cautions').readList((caution) => readCitedText(caution, known.sources)),
  };
}

function readLine(
  reader: Reader,
  { sources, kinds }: KnownToMethods,
  calculations: readonly CalculationKey[],
): MethodLine {
  reader.expectKeys(
    ['key', 'label', 'kind', 'duty', 'per', 'quantityPer', 'spares', 'ratingBasis', 'fits', 'source'],
    ['caution', 'hosting'],
  );
  const kindName = reader.at('kind').readOneOf(
    kinds.map(({ kind }) => kind),
    'kind',
  );
  const kind = kinds.find((known) => known.kind === kindName);
  const hosting = reader.has('hosting') && reader.at('hosting').readBoolean();
  if (hosting && !calculations.includes('hosting'))
    reader.at('hosting').refuse('the method does not work the host out', "add 'hosting' to its calculations");
  return {
    key: reader.at('key').readText(KEY_SHAPE),
    label: reader.at('label').readText(),
    kind: kindName,
    duty: reader.at('duty').readOneOf(kind?.duties ?? DUTIES, `duty of ${kindName}`),
    per: reader.at('per').readOneOf(COUNTED_BY, 'count'),
    quantityPer: reader.at('quantityPer').readWhole({ from: 1, to: 100 }),
    spares: reader.at('spares').readWhole(MANY),
    ratingBasis: reader
      .at('ratingBasis')
      .readOneOf(basesFor(kind, calculations), `rating basis for ${kindName}`),
    fits: reader
      .at('fits')
      .readList((fit) => readFit(fit, { kind, sources, calculations }), { mayBeEmpty: true }),
    ...(hosting && { hosting }),
    ...(reader.has('caution') && { caution: reader.at('caution').readText() }),
    source: readCitation(reader.at('source'), sources),
  };
}

/** What can rate a kind: figures in the unit of its measure, of the panels or of a calculation that the method asks for. */
function basesFor(
  kind: KindDefinition | undefined,
  calculations: readonly CalculationKey[],
): readonly RatingBasis[] {
  if (!kind?.rating) return ['none'];
  const unit = UNIT_FOR[kind.rating.measure];
  if (unit === 'persons') return ['personsPerCrew'];
  return LIFT_FIGURE_KEYS.filter((key) => isGiven(key, unit, calculations));
}

function isGiven(key: FigureKey, unit: string, calculations: readonly CalculationKey[]): boolean {
  const { unit: own, from } = originOf(key);
  return own === unit && (from === undefined || calculations.includes(from));
}

/** What the sizes of a line may be held against. */
interface KnownToFits {
  readonly kind: KindDefinition | undefined;
  readonly sources: Sources;
  readonly calculations: readonly CalculationKey[];
}

function readFit(reader: Reader, { kind, sources, calculations }: KnownToFits): FitRequirement {
  const names = kind?.dimensions.map(({ name }) => name) ?? [];
  const rule = SIZE_RULES.find((word) => reader.has(word)) ?? 'atLeast';
  reader.expectKeys(['dimension', rule, 'source']);
  const dimension = reader.at('dimension').readOneOf(names, `dimension of ${kind?.kind ?? 'the kind'}`);
  const shared = { dimension, rule, source: readCitation(reader.at('source'), sources) };
  if (reader.at(rule).beginsWithDigit()) return { ...shared, value: reader.at(rule).readDecimal() };
  const unit = dimension.endsWith('Mm') ? 'mm' : 'm';
  const figures = [...LIFT_FIGURE_KEYS, ...PARAMETER_KEYS].filter((key) => isGiven(key, unit, calculations));
  return { ...shared, figure: reader.at(rule).readOneOf(figures, `figure in ${unit}`) };
}
