import { useEffect, useState } from 'preact/hooks';
import { CheckView } from './check-view.js';
import { JobList } from './job-list.js';
import { JobSet } from './job-set.js';
import { placeOf, type Place } from './place.js';
import { SendBar } from './send-bar.js';
import type { ViewProps } from './view-props.js';
import { WaitingView } from './waiting-view.js';

/** The whole page: what waits, always in sight, and the view of the place one is at. */
export function App({ phone, send }: ViewProps) {
  const [, redraw] = useState(0);
  const [place, setPlace] = useState(() => placeOf(location.hash));
  useEffect(() => phone.onChange(() => redraw((count) => count + 1)), [phone]);
  useEffect(() => {
    const onMove = () => setPlace(placeOf(location.hash));
    addEventListener('hashchange', onMove);
    return () => removeEventListener('hashchange', onMove);
  }, []);
  useEffect(() => {
    scrollTo(0, 0);
    document.querySelector<HTMLElement>('h1')?.focus();
  }, [place]);
  return (
    <>
      <SendBar phone={phone} send={send} />
      <View place={place} phone={phone} send={send} />
    </>
  );
}

function View({ place, phone, send }: ViewProps & { place: Place }) {
  switch (place.at) {
    case 'jobs':
      return <JobList phone={phone} />;
    case 'job':
      return <JobSet key={place.jobId} phone={phone} jobId={place.jobId} />;
    case 'item':
      return (
        <CheckView key={place.itemId} phone={phone} send={send} jobId={place.jobId} itemId={place.itemId} />
      );
    case 'waiting':
      return <WaitingView phone={phone} send={send} />;
  }
}
