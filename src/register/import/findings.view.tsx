import { Scroll } from '../../web/components/scroll.js';
import { count } from '../../web/sentences/words.js';
import type { CheckedRows } from './check-rows.js';
import type { Notice } from './finding.js';
import { faultWords, noticeWords } from './finding-words.js';
import { likeFaults, rowWords, type LikeFaults } from './like-faults.js';

/** A page of more rows helps nobody; the file to mend has all of them. */
const ROWS_SHOWN = 300;

/** Every fault by row and cell, with what to do about it; what many rows share is said once. */
export function FaultTable({ faulty, toMend }: { faulty: CheckedRows['faulty']; toMend: string }) {
  if (faulty.length === 0) return null;
  const groups = likeFaults(faulty.flatMap(({ faults }) => faults));
  const shown = groups.slice(0, ROWS_SHOWN);
  return (
    <section class="sheet">
      <h2>What is wrong</h2>
      <p>
        <a href={toMend}>All faulty rows as a file to mend</a>
      </p>
      <Scroll label="Faults">
        <table class="stacked">
          <caption>
            {count(faulty.length, 'faulty row', 'faulty rows')}
            {groups.length > shown.length ? `, the first ${shown.length} faults` : ''}
          </caption>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Column</th>
              <th scope="col">The cell says</th>
              <th scope="col">What is wrong</th>
              <th scope="col">What to do</th>
            </tr>
          </thead>
          <tbody>{shown.map(FaultRow)}</tbody>
        </table>
      </Scroll>
    </section>
  );
}

function FaultRow({ fault, rows }: LikeFaults) {
  const { wrong, remedy } = faultWords(fault);
  return (
    <tr>
      <th scope="row" data-label="Row">
        {rowWords(rows)}
      </th>
      <td data-label="Column">{fault.column ?? 'the row'}</td>
      <td data-label="The cell says">{fault.cell ? fault.cell : <em>blank</em>}</td>
      <td data-label="What is wrong">{wrong}</td>
      <td data-label="What to do">{remedy}</td>
    </tr>
  );
}

/** What the storeman should know besides, folded away. What is about the whole file comes first. */
export function NoticeList({ notices }: { notices: readonly Notice[] }) {
  if (notices.length === 0) return null;
  const ofFile = notices.filter(({ row }) => row === undefined);
  const ofRows = notices.filter(({ row }) => row !== undefined);
  return (
    <section class="sheet">
      <h2>Good to know</h2>
      {ofFile.length > 0 ? (
        <ul>
          {ofFile.map((notice) => (
            <li>
              {notice.column ? <strong>{notice.column}: </strong> : null}
              {noticeWords(notice)}
            </li>
          ))}
        </ul>
      ) : null}
      {ofRows.length > 0 ? <RowNotices notices={ofRows} /> : null}
    </section>
  );
}

function RowNotices({ notices }: { notices: readonly Notice[] }) {
  const shown = notices.slice(0, ROWS_SHOWN);
  return (
    <details>
      <summary>{count(notices.length, 'remark about a row', 'remarks about rows')}</summary>
      <Scroll label="Findings">
        <table>
          <caption>
            {shown.length < notices.length ? `The first ${shown.length} remarks` : 'Remarks about rows'}
          </caption>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Column</th>
              <th scope="col">The cell says</th>
              <th scope="col">Remark</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((notice) => (
              <tr>
                <th scope="row" class="num">
                  {notice.row}
                </th>
                <td>{notice.column ?? 'the row'}</td>
                <td>{notice.cell ? notice.cell : <em>blank</em>}</td>
                <td>{noticeWords(notice)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
