import { useEffect, useRef, useState } from 'preact/hooks';
import { chooseDecoder } from './scan.js';

const PAUSE_MS = 120;

/** The picture of the camera, read again and again until a QR code is in it. */
export function Camera({ onFound, onStop }: { onFound: (text: string) => void; onStop: () => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const [trouble, setTrouble] = useState<string>();
  const [lamp, setLamp] = useState<MediaStreamTrack>();
  useEffect(() => {
    const stop = new AbortController();
    const watch = async () => {
      const stream = await openCamera(stop.signal);
      const [track] = stream.getVideoTracks();
      if (track && 'torch' in track.getCapabilities()) setLamp(track);
      if (video.current) onFound(await lookFor(video.current, stream, stop.signal));
    };
    watch().catch((error: unknown) => {
      if (!stop.signal.aborted) setTrouble(troubleWords(error));
    });
    return () => stop.abort();
  }, []);
  if (trouble)
    return (
      <p class="note note-due" role="alert">
        {trouble} Type the tag instead.
      </p>
    );
  return (
    <div class="camera">
      <video ref={video} playsInline muted aria-label="Picture of the camera" />
      <p role="status">Hold the label into the picture.</p>
      <div class="row">
        {lamp ? <LampButton track={lamp} /> : null}
        <button type="button" class="quiet" onClick={onStop}>
          Stop the camera
        </button>
      </div>
    </div>
  );
}

function LampButton({ track }: { track: MediaStreamTrack }) {
  const [isOn, setOn] = useState(false);
  const turn = async () => {
    // `torch` is of the image capture draft, which the types of the language do not know.
    const wish: object = { advanced: [{ torch: !isOn }] };
    await track.applyConstraints(wish);
    setOn(!isOn);
  };
  return (
    <button type="button" class="quiet" aria-pressed={isOn} onClick={() => void turn()}>
      Lamp
    </button>
  );
}

async function openCamera(signal: AbortSignal): Promise<MediaStream> {
  const stream = await navigator.mediaDevices.getUserMedia({
    // So that the smallest label is read from as far as a hand reaches.
    video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
  });
  const end = () => stream.getTracks().forEach((track) => track.stop());
  if (signal.aborted) end();
  signal.addEventListener('abort', end);
  return stream;
}

async function lookFor(video: HTMLVideoElement, stream: MediaStream, signal: AbortSignal): Promise<string> {
  video.srcObject = stream;
  const [decode] = await Promise.all([chooseDecoder(), video.play()]);
  for (;;) {
    signal.throwIfAborted();
    const text = await decode(video);
    if (text) return text;
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
}

function troubleWords(error: unknown): string {
  if (!isSecureContext) return 'The camera works on a secure address (https) only.';
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError') return 'The browser may not use the camera: allow it in its settings.';
  if (name === 'NotFoundError') return 'This device has no camera.';
  return 'The camera cannot be used now.';
}
