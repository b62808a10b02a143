import { DUTIES } from '../rules/gear/gear.js';
import type { KindDefinition } from '../rules/gear/kind.js';
import {
  COUNTED_BY,
  RATING_BASES,
  type FitRequirement,
  type MethodDefinition,
  type MethodLine,
  type RatingBasis,
} from '../rules/lines/method.js';
import type { Measure } from '../rules/quantities/marking.js';
import { readCitation, readCitedText, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

/** What a method may refer to: the sources and the kinds of the catalogue. */
export interface KnownToMethods {
  readonly sources: Sources;
  readonly kinds: readonly KindDefinition[];
}

/** What each basis can rate: a mass is never asked of a lashing capacity, nor a force of a working load limit. */
const BASES_FOR: Readonly<Record<Measure, readonly RatingBasis[]>> = {
  workingLoadLimit: ['heaviestPanel', 'heaviestPackedPanel'],
  ratedCapacity: ['heaviestPanel', 'heaviestPackedPanel'],
  lashingCapacity: ['panelWeightAsForce'],
  ratedPersons: ['personsPerCrew'],
};

const MANY = { from: 0, to: 100 };
const KEY_SHAPE = { shape: /^[a-z][A-Za-z]*$/, advice: "write a key such as 'strapsRoundWidth'" };
const MARGIN_SHAPE = {
  shape: /^0\.\d+$/,
  advice: "write a share below 1 in quotes, as in '0.10' for ten per cent",
};
const SHARE_SHAPE = {
  shape: /^(1|0\.\d*[1-9]\d*)$/,
  advice: "write a share above 0 and up to 1 in quotes, as in '0.5'",
};

/** Reads `config/methods/<method>.yaml`. `method` is the name of the file, and the file must say the same. */
export function readMethod(reader: Reader, method: string, known: KnownToMethods): MethodDefinition {
  reader.expectKeys(['method', 'name', 'summary', 'estimateMargin', 'perCrew', 'lines', 'cautions']);
  reader.at('method').readOneOf([method], 'method of this file name');
  const margin = reader.at('estimateMargin').expectKeys(['value', 'source']);
  const perCrew = reader.at('perCrew').expectKeys(['lifters', 'personsAloft', 'source']);
  const keys = new Set<string>();
  return {
    method,
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
      const line = readLine(entry, known);
      if (keys.has(line.key))
        entry.at('key').refuse(`'${line.key}' is used twice`, 'give each line its own key');
      keys.add(line.key);
      return line;
    }),
    cautions: reader.at('cautions').readList((caution) => readCitedText(caution, known.sources)),
  };
}

function readLine(reader: Reader, { sources, kinds }: KnownToMethods): MethodLine {
  reader.expectKeys(
    [
      'key',
      'label',
      'kind',
      'duty',
      'per',
      'quantityPer',
      'spares',
      'ratingBasis',
      'share',
      'fits',
      'source',
    ],
    ['caution'],
  );
  const kindName = reader.at('kind').readOneOf(
    kinds.map(({ kind }) => kind),
    'kind',
  );
  const kind = kinds.find((known) => known.kind === kindName);
  const bases = kind?.rating ? BASES_FOR[kind.rating.measure] : kind ? (['none'] as const) : RATING_BASES;
  return {
    key: reader.at('key').readText(KEY_SHAPE),
    label: reader.at('label').readText(),
    kind: kindName,
    duty: reader.at('duty').readOneOf(kind?.duties ?? DUTIES, `duty of ${kindName}`),
    per: reader.at('per').readOneOf(COUNTED_BY, 'count'),
    quantityPer: reader.at('quantityPer').readWhole({ from: 1, to: 100 }),
    spares: reader.at('spares').readWhole(MANY),
    ratingBasis: reader.at('ratingBasis').readOneOf(bases, `rating basis for ${kindName}`),
    share: reader.at('share').readText(SHARE_SHAPE),
    fits: reader.at('fits').readList((fit) => readFit(fit, kind, sources), { mayBeEmpty: true }),
    ...(reader.has('caution') && { caution: reader.at('caution').readText() }),
    source: readCitation(reader.at('source'), sources),
  };
}

function readFit(reader: Reader, kind: KindDefinition | undefined, sources: Sources): FitRequirement {
  const names = kind?.dimensions.map(({ name }) => name) ?? [];
  const rule =
    (['atLeast', 'equals', 'atLeastPanelThickness'] as const).find((word) => reader.has(word)) ?? 'atLeast';
  reader.expectKeys(['dimension', rule, 'source']);
  const shared = {
    dimension: reader.at('dimension').readOneOf(names, `dimension of ${kind?.kind ?? 'the kind'}`),
    source: readCitation(reader.at('source'), sources),
  };
  if (rule !== 'atLeastPanelThickness') {
    const value = reader.at(rule).readDecimal();
    return rule === 'equals' ? { ...shared, equals: value } : { ...shared, atLeast: value };
  }
  if (!reader.at(rule).readBoolean())
    reader.at(rule).refuse('false says nothing', 'write true, or leave the entry out');
  if (!shared.dimension.endsWith('Mm'))
    reader.at('dimension').refuse('thickness is in mm', 'name a dimension in Mm');
  return { ...shared, atLeastPanelThickness: true };
}
