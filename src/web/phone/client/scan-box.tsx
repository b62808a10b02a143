import { useState } from 'preact/hooks';
import { Camera } from './camera.js';
import { tagFrom } from './scan.js';

/** What was read off a label or typed. */
export interface ReadTag {
  readonly text: string;
  readonly isScanned: boolean;
}

/** Picks an item: the camera on its label, or its tag typed. */
export function ScanBox({ onTag }: { onTag: (read: ReadTag) => void }) {
  const [isScanning, setScanning] = useState(false);
  const [text, setText] = useState('');
  const choose = (event: SubmitEvent) => {
    event.preventDefault();
    if (text.trim() !== '') onTag({ text: tagFrom(text), isScanned: false });
    setText('');
  };
  const onFound = (found: string) => {
    setScanning(false);
    onTag({ text: tagFrom(found), isScanned: true });
  };
  return (
    <section class="scan" aria-label="Pick an item">
      {isScanning ? (
        <Camera onFound={onFound} onStop={() => setScanning(false)} />
      ) : (
        <button type="button" class="big" onClick={() => setScanning(true)}>
          Scan the label
        </button>
      )}
      <form class="typed" onSubmit={choose}>
        <label for="tag">or type the tag</label>
        <div class="row">
          <input
            id="tag"
            value={text}
            onInput={({ currentTarget }) => setText(currentTarget.value)}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            enterkeyhint="go"
          />
          <button type="submit">Open</button>
        </div>
      </form>
    </section>
  );
}
