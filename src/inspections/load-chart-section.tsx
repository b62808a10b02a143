import type { ItemView } from '../register/register.dto.js';
import { Scroll } from '../web/components/scroll.js';
import { StateMark } from '../web/components/state-mark.js';
import { figure } from '../web/sentences/words.js';

/** What a host machine carries at which height and distance, and what covers a lifter on it. */
export function LoadChartSection({ item: { loadChart } }: { item: ItemView }) {
  if (loadChart === null) {
    return (
      <section>
        <h2>Load chart</h2>
        <p>
          <StateMark state="refused" word="none on record" /> No lifter is hung on it until its chart is
          entered.
        </p>
      </section>
    );
  }
  const { distanceBasis, points, axleToForkFaceMm, axleToCarriageMm } = loadChart;
  const distance = distanceBasis === 'reach' ? 'Reach' : 'Load centre';
  return (
    <section>
      <h2>Load chart</h2>
      <Scroll label="Load chart">
        <table>
          <caption>What it carries, without an attachment</caption>
          <thead>
            <tr>
              {['Lift height', distance, 'Capacity'].map((title) => (
                <th scope="col" class="num" key={title}>
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {points.map(({ heightMm, distanceMm, capacityKg }) => (
              <tr key={`${heightMm} ${distanceMm}`}>
                <td class="num">{figure(heightMm, 'mm')}</td>
                <td class="num">{figure(distanceMm, 'mm')}</td>
                <td class="num">{figure(capacityKg, 'kg')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <dl class="pairs">
        <Length name="Front axle to fork face" value={axleToForkFaceMm} />
        <Length name="Front axle to carriage face" value={axleToCarriageMm} />
        <div>
          <dt>Lifter as its attachment</dt>
          <dd>
            <Cover cover={loadChart.attachmentCover} />
          </dd>
        </div>
      </dl>
      <p class="caution-line">
        The lifter counts as load. The maker's plate for this machine with this attachment governs.
      </p>
    </section>
  );
}

function Cover({ cover }: { cover: NonNullable<ItemView['loadChart']>['attachmentCover'] }) {
  if (!cover) return <StateMark state="refused" word="not covered" />;
  const by = cover.by === 'plate' ? 'listed on the plate' : 'by letter of the maker';
  return (
    <>
      <StateMark state="ok" word={by} />: {cover.reference}
    </>
  );
}

function Length({ name, value }: { name: string; value: string | undefined }) {
  if (value === undefined) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>{figure(value, 'mm')}</dd>
    </div>
  );
}
