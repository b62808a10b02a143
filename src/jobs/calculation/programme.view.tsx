import type { AlternativeRow, Programme, TruckTimes } from '../../rules/programme/programme-figures.js';
import { Scroll } from '../../web/components/scroll.js';
import { StateMark } from '../../web/components/state-mark.js';
import { count, day, localTime } from '../../web/sentences/words.js';
import { OnWheelsPlot } from '../on-wheels-plot.js';

const CHANGES: Readonly<Record<AlternativeRow['change'], string>> = {
  asPlanned: 'As planned',
  oneMoreCrew: 'One more crew',
  fiveMoreOnWheels: 'Ten more trolleys',
};

/** The days, trucks, people and trolleys of the work, and what more hands or trolleys would buy. */
export function ProgrammeTables({ programme }: { programme: Programme }) {
  const { trucks, people, trolleys, trolleysBeforeFirstTruck, finishes, workingDays, alternatives } =
    programme;
  const pairs: readonly (readonly [string, string])[] = [
    ['Trolleys ready before the first truck', String(trolleysBeforeFirstTruck)],
    ['Trolleys in use at the most', String(trolleys)],
    ['Truckloads', String(trucks.length)],
    ['Work ends', localTime(finishes)],
    ['Days with panels', count(workingDays, 'working day', 'working days')],
    ['On the ground', String(people.ground)],
    ['Aloft', String(people.aloft)],
    ['Driving', String(people.drivers)],
    ['Unloading', String(people.unloading)],
  ];
  return (
    <>
      <WindowNote programme={programme} />
      <dl class="pairs">
        {pairs.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <OnWheelsPlot id="on-wheels" programme={programme} />
      <Trucks trucks={trucks} />
      <Alternatives rows={alternatives} />
      <p class="caution-line">
        Times are an estimate to plan trucks by. Weather, deliveries and the crew’s own pace decide; nobody
        hurries a lift to keep them.
      </p>
    </>
  );
}

function WindowNote({ programme: { window } }: { programme: Programme }) {
  const { fits, neededDays, hasDays, startsOn, endsOn } = window;
  return (
    <p>
      <StateMark state={fits ? 'ok' : 'refused'} word={fits ? 'the days are enough' : 'too few days'} />: the
      work takes {count(neededDays, 'working day', 'working days')}, from {day(startsOn)} to {day(endsOn)};
      the job has {hasDays}.
    </p>
  );
}

function Trucks({ trucks }: { trucks: readonly TruckTimes[] }) {
  return (
    <Scroll label="Trucks">
      <table class="stacked">
        <caption>Trucks in order</caption>
        <thead>
          <tr>
            <th scope="col">Truck</th>
            <th scope="col">Word</th>
            <th scope="col" class="num">
              Panels
            </th>
            <th scope="col">Arrives</th>
            <th scope="col">Empty</th>
            <th scope="col" class="num">
              Most on wheels
            </th>
          </tr>
        </thead>
        <tbody>
          {trucks.map(({ truck, panels, arrives, empty, mostOnWheels, stated, exceedsLimit }) => (
            <tr key={truck}>
              <th scope="row">{truck}</th>
              <td data-label="Word">
                {exceedsLimit ? (
                  <StateMark state="refused" word="too early for the trolleys" />
                ) : stated ? (
                  'as ordered'
                ) : (
                  'the earliest possible'
                )}
              </td>
              <td class="num" data-label="Panels">
                {panels}
              </td>
              <td data-label="Arrives">{localTime(arrives)}</td>
              <td data-label="Empty">{localTime(empty)}</td>
              <td class="num" data-label="Most on wheels">
                {mostOnWheels}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Alternatives({ rows }: { rows: readonly AlternativeRow[] }) {
  return (
    <Scroll label="What more would buy">
      <table>
        <caption>What one more crew or ten more trolleys would buy</caption>
        <thead>
          <tr>
            <th scope="col">With</th>
            <th scope="col">Work ends</th>
            <th scope="col">Last truck</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ change, finishes, lastTruckArrives }) => (
            <tr key={change}>
              <th scope="row">{CHANGES[change]}</th>
              <td>{localTime(finishes)}</td>
              <td>{localTime(lastTruckArrives)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
