import { useEffect, useMemo, useState } from 'preact/hooks';
import { PhotoRefused, shrinkPhoto, type SmallPhoto } from './photos.js';

interface PhotoFieldProps {
  readonly id: string;
  readonly photos: readonly SmallPhoto[];
  readonly onChange: (photos: readonly SmallPhoto[]) => void;
  /** Told when a photo begins to be made, and when it is there or refused: until then nothing may be saved. */
  readonly onMaking: (isMaking: boolean) => void;
}

/** Takes photos with the camera, shrinks them at once, and shows what will be kept. */
export function PhotoField({ id, photos, onChange, onMaking }: PhotoFieldProps) {
  const [words, setWords] = useState('');
  const [isRefused, setRefused] = useState(false);
  const [isMaking, setMaking] = useState(false);
  const tell = (isMakingNow: boolean) => {
    setMaking(isMakingNow);
    onMaking(isMakingNow);
  };
  const take = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (!file) return;
    setWords('Making the photo smaller …');
    tell(true);
    try {
      onChange([...photos, await shrinkPhoto(file)]);
      setWords('');
      setRefused(false);
    } catch (error) {
      if (!(error instanceof PhotoRefused)) throw error;
      setWords(`${error.message} Nothing of it was kept.`);
      setRefused(true);
    } finally {
      tell(false);
    }
    input.value = '';
  };
  return (
    <div class="photos">
      <label class="button quiet" for={id}>
        Take a photo
      </label>
      <input
        class="visually-hidden"
        id={id}
        type="file"
        accept="image/*"
        capture="environment"
        disabled={isMaking}
        onChange={({ currentTarget }) => void take(currentTarget)}
      />
      <p class={isRefused ? 'field-error' : 'faded'} role="status">
        {words}
      </p>
      {photos.map((photo, index) => (
        <Photo key={index} photo={photo} onRemove={() => onChange(photos.filter((each) => each !== photo))} />
      ))}
    </div>
  );
}

function Photo({ photo, onRemove }: { photo: SmallPhoto; onRemove: () => void }) {
  const address = useMemo(() => URL.createObjectURL(photo.image), [photo]);
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  return (
    <figure>
      <img src={address} alt="The photo as it will be sent" />
      <figcaption>
        {Math.ceil(photo.image.size / 1000)} kB{' '}
        <button type="button" class="quiet" onClick={onRemove}>
          Leave it out
        </button>
      </figcaption>
    </figure>
  );
}
