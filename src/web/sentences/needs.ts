import type { GearLine } from '../../rules/lines/need.js';
import type { SizeRule } from '../../rules/lines/method.js';
import { figure, needFigure, sizeName } from './words.js';

const RULE_WORDS: Readonly<Record<SizeRule, string>> = {
  atLeast: 'at least',
  atMost: 'at most',
  equals: 'exactly',
};

/** What a gear line asks of each item: `rated at least 478 kg; jaw maximum at least 112 mm`. */
export function needsSentence({ rating, dimensions, unsettled }: GearLine): string {
  if (unsettled) return 'not settled yet';
  const rated = rating ? [`rated at least ${needFigure(rating.value, rating.unit)}`] : [];
  const sized = dimensions.map(
    ({ dimension, rule, value }) =>
      `${sizeName(dimension)} ${RULE_WORDS[rule]} ${figure(value, dimension.endsWith('Mm') ? 'mm' : 'm')}`,
  );
  return [...rated, ...sized].join('; ') || 'as its maker says';
}
