import { DUTIES } from '../rules/gear/gear.js';
import type { DimensionDefinition, KindDefinition } from '../rules/gear/kind.js';
import { MEASURES } from '../rules/quantities/marking.js';
import { DIMENSION_OF_MEASURE } from '../rules/quantities/measure-unit.js';
import { dimensionOf, UNIT_SYMBOLS } from '../rules/quantities/units.js';
import { readChecklist } from './read-checklist.js';
import { readHitches } from './read-hitches.js';
import { readCitation, readCitedText, type Sources } from './read-source.js';
import type { Reader } from './reader.js';

const PREFIX_SHAPE = { shape: /^[A-Z]{2,3}$/, advice: "write two or three capitals, as in 'RS'" };
const DIMENSION_SHAPE = {
  shape: /^[a-z][A-Za-z]*(M|Mm)$/,
  advice: "end the name in its unit, as in 'lengthM' or 'jawMaximumMm'",
};

/** Reads `config/kinds/<kind>.yaml`. `kind` is the name of the file, and the file must say the same. */
export function readKind(reader: Reader, kind: string, sources: Sources): KindDefinition {
  reader.expectKeys(
    ['kind', 'name', 'plural', 'tagPrefix', 'alsoCalled', 'duties', 'dimensions', 'checklist', 'cautions'],
    ['rating', 'loadChart', 'serviceLife', 'hitches'],
  );
  reader.at('kind').readOneOf([kind], 'kind of this file name');
  return {
    kind,
    name: reader.at('name').readText(),
    plural: reader.at('plural').readText(),
    tagPrefix: reader.at('tagPrefix').readText(PREFIX_SHAPE),
    alsoCalled: reader.at('alsoCalled').readList((word) => word.readText()),
    duties: reader.at('duties').readList((duty) => duty.readOneOf(DUTIES, 'duty')),
    ...(reader.has('rating') && { rating: readRating(reader.at('rating'), sources) }),
    dimensions: reader.at('dimensions').readList(readDimension, { mayBeEmpty: true }),
    ...(reader.has('loadChart') && { loadChart: reader.at('loadChart').readBoolean() }),
    ...(reader.has('serviceLife') && { serviceLife: readServiceLife(reader.at('serviceLife'), sources) }),
    ...(reader.has('hitches') && { hitches: readHitches(reader.at('hitches'), sources) }),
    checklist: readChecklist(reader.at('checklist'), sources),
    cautions: reader.at('cautions').readList((caution) => readCitedText(caution, sources)),
  };
}

function readRating(reader: Reader, sources: Sources): NonNullable<KindDefinition['rating']> {
  reader.expectKeys(['measure', 'units', 'required', 'source']);
  const measure = reader.at('measure').readOneOf(MEASURES, 'measure');
  const units = UNIT_SYMBOLS.filter((unit) => dimensionOf(unit) === DIMENSION_OF_MEASURE[measure]);
  return {
    measure,
    units: reader.at('units').readList((unit) => unit.readOneOf(units, `unit of ${measure}`)),
    required: reader.at('required').readBoolean(),
    source: readCitation(reader.at('source'), sources),
  };
}

function readDimension(reader: Reader): DimensionDefinition {
  reader.expectKeys(['name', 'label', 'unit', 'required']);
  const name = reader.at('name').readText(DIMENSION_SHAPE);
  const unit = name.endsWith('Mm') ? 'mm' : 'm';
  reader.at('unit').readOneOf([unit], `unit of '${name}'`);
  return { name, label: reader.at('label').readText(), unit, required: reader.at('required').readBoolean() };
}

function readServiceLife(reader: Reader, sources: Sources): NonNullable<KindDefinition['serviceLife']> {
  reader.expectKeys(['years', 'from', 'source']);
  return {
    years: reader.at('years').readWhole({ from: 1, to: 50 }),
    from: reader.at('from').readOneOf(['manufacturedOn', 'firstUsedOn'], 'start of service life'),
    source: readCitation(reader.at('source'), sources),
  };
}

/** Notes words that two kinds claim: a tag prefix, a name or another word, read without regard to capitals. */
export function refuseSharedWords(
  kinds: readonly { readonly definition: KindDefinition; readonly reader: Reader }[],
): void {
  const owners = new Map<string, string>();
  for (const { definition, reader } of kinds) {
    const { name, plural, tagPrefix, alsoCalled } = definition;
    const claims = [
      { claim: `tag prefix ${tagPrefix}`, at: reader.at('tagPrefix') },
      ...[name, plural, ...alsoCalled]
        .filter(Boolean)
        .map((word) => ({ claim: `word ${word.toLowerCase()}`, at: reader.at('alsoCalled') })),
    ];
    for (const { claim, at } of claims) {
      const owner = owners.get(claim);
      if (owner !== undefined)
        at.refuse(`the ${claim} is claimed by ${owner} already`, 'give each word to one kind, once');
      else owners.set(claim, definition.kind);
    }
  }
}
