import { Scroll } from '../web/components/scroll.js';
import type { ComponentChildren } from 'preact';
import { StateMark } from '../web/components/state-mark.js';
import { day, EVENT_NAMES, INSPECTION_NAMES } from '../web/sentences/words.js';
import type { DefectView, EventView, HistoryLineView, InspectionView } from './inspections.dto.js';
import { actionWords, SEVERITY_NAMES } from './record-words.js';

/** Every defect, open ones first. */
export function DefectTable({ defects }: { defects: readonly DefectView[] }) {
  return (
    <section>
      <h2>Defects</h2>
      {defects.length === 0 ? <p>None was ever reported.</p> : null}
      <Table
        caption="Defects, open ones first"
        titles={['Reported', 'How bad', 'What', 'Now']}
        isEmpty={defects.length === 0}
      >
        {defects.map((defect) => (
          <tr key={defect.id}>
            <td>{day(defect.recordedAt.slice(0, 10))}</td>
            <td>
              {SEVERITY_NAMES[defect.severity]}
              {defect.lastDayOfUse === null ? null : ` after ${day(defect.lastDayOfUse)}`}
            </td>
            <td>
              {defect.description}{' '}
              <a href={`/trace/defects/${defect.id}`} aria-label={`Trace defect ${defect.id} back`}>
                Trace it back
              </a>
            </td>
            <td>
              {defect.closedByInspectionId === null ? (
                <StateMark state={defect.severity === 'observation' ? 'due' : 'refused'} word="open" />
              ) : (
                <StateMark state="plain" word={`closed by record ${defect.closedByInspectionId}`} />
              )}
            </td>
          </tr>
        ))}
      </Table>
    </section>
  );
}

/** Every inspection, newest first. A competent person finds the way to correct a record here. */
export function InspectionTable({
  inspections,
  itemId,
  mayCorrect,
}: {
  inspections: readonly InspectionView[];
  itemId: number;
  mayCorrect: boolean;
}) {
  return (
    <section>
      <h2>Inspections</h2>
      {inspections.length === 0 ? <p>None is on record.</p> : null}
      <Table
        caption="Inspections, newest first"
        titles={['Record', 'Done on', 'What', 'Outcome', 'By', 'Report', 'Remarks']}
        isEmpty={inspections.length === 0}
      >
        {inspections.map((record) => (
          <tr key={record.id} class={record.superseded ? 'faded' : undefined}>
            <td>
              {record.id}
              {record.supersedesId === null ? null : ` corrects ${record.supersedesId}`}
            </td>
            <td>{day(record.doneOn)}</td>
            <td>{INSPECTION_NAMES[record.type]}</td>
            <td>
              <Outcome record={record} />
            </td>
            <td>{record.doneBy}</td>
            <td>
              {record.examinationId === null ? (
                (record.reportNumber ?? '–')
              ) : (
                <a href={`/examinations/${record.examinationId}`}>{record.reportNumber}</a>
              )}
            </td>
            <td>
              {record.remarks}{' '}
              {mayCorrect && !record.superseded && record.type !== 'preUseCheck' ? (
                <a href={correctionPath(itemId, record)} aria-label={`Correct record ${record.id}`}>
                  Correct
                </a>
              ) : null}
            </td>
          </tr>
        ))}
      </Table>
    </section>
  );
}

/** Where a record is corrected: a report by a report, any other record by a record. */
export function correctionPath(itemId: number, { id, type, examinationId }: InspectionView): string {
  return examinationId === null
    ? `/register/${itemId}/inspection?supersedesId=${id}&type=${type}`
    : `/register/${itemId}/examination?supersedesId=${id}`;
}

function Outcome({ record }: { record: InspectionView }) {
  if (record.superseded) return <StateMark state="plain" word={`${record.outcome}, corrected since`} />;
  const next = record.nextDueOn === null ? '' : `, next by ${day(record.nextDueOn)}`;
  return <StateMark state={record.outcome === 'fit' ? 'ok' : 'refused'} word={`${record.outcome}${next}`} />;
}

/** What happened to the item; nothing at all when nothing did. */
export function EventTable({ events }: { events: readonly EventView[] }) {
  if (events.length === 0) return null;
  return (
    <section>
      <h2>Events</h2>
      <Table caption="Events, newest first" titles={['Day', 'What', 'Remarks']} isEmpty={false}>
        {events.map((event) => (
          <tr key={event.id}>
            <td>{day(event.happenedOn)}</td>
            <td>{EVENT_NAMES[event.type]}</td>
            <td>{event.remarks}</td>
          </tr>
        ))}
      </Table>
    </section>
  );
}

/** The item's lines of the ledger. */
export function HistoryTable({ history }: { history: readonly HistoryLineView[] }) {
  return (
    <details>
      <summary>History</summary>
      <Table
        caption="Lines of the ledger, newest first; times in UTC"
        titles={['Line', 'When', 'Who', 'What']}
        isEmpty={history.length === 0}
      >
        {history.map((line) => (
          <tr key={line.number}>
            <td class="num">{line.number}</td>
            <td>{line.at.slice(0, 16).replace('T', ' ')}</td>
            <td>{line.actorName}</td>
            <td>{actionWords(line.action)}</td>
          </tr>
        ))}
      </Table>
    </details>
  );
}

function Table({
  caption,
  titles,
  isEmpty,
  children,
}: {
  caption: string;
  titles: readonly string[];
  isEmpty: boolean;
  children: ComponentChildren;
}) {
  if (isEmpty) return null;
  return (
    <Scroll label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {titles.map((title) => (
              <th scope="col" key={title}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </Scroll>
  );
}
