import type { Programme } from '../../rules/programme/programme-figures.js';
import { count, day, localTime } from '../../web/sentences/words.js';

/** What of a programme cannot go as planned, and what to do about it; none when all is well. */
export function programmeWarnings({ window, trucks, mostOnWheels, pace }: Programme): readonly string[] {
  const tooEarly = trucks.filter(({ exceedsLimit }) => exceedsLimit);
  return [
    ...(window.fits
      ? []
      : [
          `The days are too few: the work takes ${count(window.neededDays, 'working day', 'working days')}, from ${day(window.startsOn)} to ${day(window.endsOn)}, and the job has ${window.hasDays}. Move the back day, add a crew, or split the job.`,
        ]),
    ...tooEarly.map(
      ({ truck, arrives, mostOnWheels: most }) =>
        `Truck ${truck} at ${localTime(arrives)} comes too early: ${count(most, 'panel', 'panels')} would stand on wheels, and the job has trolleys for ${pace.limit}. Order it later, or bring ${(mostOnWheels - pace.limit) * 2} more trolleys.`,
    ),
  ];
}
