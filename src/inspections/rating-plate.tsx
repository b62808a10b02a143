import type { KindDefinition } from '../rules/gear/kind.js';
import { batchAddress, markingText } from '../register/item-words.js';
import type { ItemView } from '../register/register.dto.js';
import { day, figure, MEASURE_NAMES, SHORT_MEASURES } from '../web/sentences/words.js';

/** The item as its plate would show it: tag, kind, rating as marked, maker, serial number, sizes. */
export function RatingPlate({ item, kind }: { item: ItemView; kind: KindDefinition }) {
  const sizes = kind.dimensions.flatMap(({ name, label, unit }) => {
    const value = item.dimensions[name];
    return value === undefined ? [] : [{ label, text: figure(value, unit) }];
  });
  return (
    <section class="plate" aria-label="Rating plate">
      <h1>{item.tag}</h1>
      <p class="plate-kind">{kind.name}</p>
      {item.markings.map((marking, number) => (
        <p class="plate-rating" key={number}>
          <span class="visually-hidden">{MEASURE_NAMES[marking.measure]} </span>
          <abbr aria-hidden="true">{SHORT_MEASURES[marking.measure]}</abbr> {markingText(marking)}
        </p>
      ))}
      {kind.rating && item.markings.length === 0 ? <p class="plate-rating">no rating on record</p> : null}
      <dl class="pairs">
        <Pair name="Maker" value={item.maker} />
        <Pair name="Serial number" value={item.serial ?? 'not known'} />
        {item.batch === null ? null : <BatchPair maker={item.maker} batch={item.batch} />}
        {sizes.map(({ label, text }) => (
          <Pair key={label} name={`${label[0]?.toUpperCase()}${label.slice(1)}`} value={text} />
        ))}
        {item.owner === null ? null : <Pair name="Owner" value={item.owner} />}
        {item.hiredFrom === null ? null : <Pair name="On hire from" value={day(item.hiredFrom)} />}
        {item.hiredTo === null ? null : <Pair name="On hire through" value={day(item.hiredTo)} />}
        {item.manufacturedOn === null ? null : <Pair name="Made on" value={day(item.manufacturedOn)} />}
        {item.firstUsedOn === null ? null : <Pair name="First used on" value={day(item.firstUsedOn)} />}
        {item.labelLegible ? null : <Pair name="Label" value="cannot be read" />}
        <Pair name="Report or certificate" value={item.certificateOnFile ? 'on file' : 'not on file'} />
      </dl>
    </section>
  );
}

/** The way to everything that the maker made with it. */
function BatchPair({ maker, batch }: { maker: string; batch: string }) {
  return (
    <div>
      <dt>Batch</dt>
      <dd>
        <a href={batchAddress(batch, maker)}>{batch}</a>
      </dd>
    </div>
  );
}

function Pair({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
}
