import { encode } from 'uqr';
import type { BrowserContext, Page } from 'playwright-core';
import { DEMO_ACCOUNTS } from '../../src/people/demo-accounts.js';
import { ApiClient } from './api-client.js';

/** The crew member of the demo. */
export const CREW = demoAccount('tomas');

/** Signs someone in and opens the phone page at the one job of the demo, kept for offline when this returns. */
export async function openPhone(
  context: BrowserContext,
  address: string,
  person: { signInName: string; password: string },
): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  await page.goto(`${address}/sign-in?then=/phone`);
  await page.getByLabel('Sign-in name').fill(person.signInName);
  await page.getByLabel('Password').fill(person.password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.locator('.progress').waitFor();
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  return page;
}

/** The tags of a kind that the list of the job says are to be checked. */
export async function tagsToCheck(page: Page, plural: string): Promise<readonly string[]> {
  const group = page.locator('.group', { hasText: plural });
  return group.locator('.tile-plain .tile-name').allInnerTexts();
}

/** Opens an item of the job that is shown, by its tag. */
export async function openItem(page: Page, tag: string): Promise<void> {
  await page.getByLabel('or type the tag').fill(tag);
  await page.getByRole('button', { name: 'Open' }).click();
  await page.getByRole('heading', { level: 1, name: tag }).waitFor();
}

/** Answers every point Good. */
export async function answerGood(page: Page): Promise<void> {
  for (const good of await page.getByRole('radio', { name: 'Good' }).all()) await good.check();
}

/** Saves the check and waits for the list that follows. */
export async function saveCheck(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Save the check' }).click();
  await page.locator('.progress').waitFor();
}

/** Checks an item, every point good. */
export async function checkItem(page: Page, tag: string): Promise<void> {
  await openItem(page, tag);
  await answerGood(page);
  await saveCheck(page);
}

/** Makes a photo of 4000 x 3000 px and some MB in the page, and gives it to the first photo field; gives its size. */
export function giveBigPhoto(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [4000, 3000];
    const pencil = canvas.getContext('2d');
    const picture = pencil?.createImageData(canvas.width, canvas.height);
    const input = document.querySelector<HTMLInputElement>('input[type=file]');
    if (!pencil || !picture || !input) throw new Error('The page takes no photo now.');
    const words = new Uint32Array(picture.data.buffer);
    for (let index = 0, seed = 1; index < words.length; index += 1)
      words[index] = (seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0) | 0xff000000;
    pencil.putImageData(picture, 0, 0);
    const blob = await new Promise<Blob | null>((give) => canvas.toBlob(give, 'image/jpeg', 0.92));
    if (!blob) throw new Error('The browser made no photo.');
    const files = new DataTransfer();
    files.items.add(new File([blob], 'IMG 1.jpg', { type: 'image/jpeg' }));
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
    return blob.size;
  });
}

/** Puts a label before the camera: whoever asks for its picture sees this QR code. */
export async function holdLabelUp(page: Page, text: string): Promise<void> {
  await page.evaluate(
    (rows) => {
      const canvas = document.createElement('canvas');
      const scale = 8;
      canvas.width = canvas.height = rows.length * scale;
      const pencil = canvas.getContext('2d');
      const draw = () =>
        rows.forEach((row, y) =>
          row.forEach((isDark, x) => {
            if (pencil) pencil.fillStyle = isDark ? '#000' : '#fff';
            pencil?.fillRect(x * scale, y * scale, scale, scale);
          }),
        );
      draw();
      setInterval(draw, 50);
      navigator.mediaDevices.getUserMedia = async () => canvas.captureStream(20);
    },
    encode(text, { border: 4 }).data,
  );
}

/** The tags of all checks that the server has, in the order it took them. */
export async function recordedChecks(address: string): Promise<readonly string[]> {
  const manager = await ApiClient.signIn(address, demoAccount('piet'));
  const entries = await manager.get<{ action: string; detail: { tag: string } }[]>('/api/ledger');
  return entries
    .filter(({ action }) => action === 'check.recorded')
    .map(({ detail }) => detail.tag)
    .reverse();
}

/** How many photos the server has of the item with this tag. */
export async function photosOnServer(address: string, tag: string): Promise<number> {
  const manager = await ApiClient.signIn(address, demoAccount('piet'));
  const { items } = await manager.get<{ items: { id: number; tag: string }[] }>(`/api/items?text=${tag}`);
  const item = items.find((each) => each.tag === tag);
  const documents = await manager.get<{ kind: string }[]>(`/api/items/${item?.id}/documents`);
  return documents.filter(({ kind }) => kind === 'photo').length;
}

function demoAccount(name: string): { signInName: string; password: string } {
  const found = DEMO_ACCOUNTS.find(({ signInName }) => signInName === name);
  if (!found) throw new Error(`There is no demo account ${name}.`);
  return { signInName: found.signInName, password: found.password };
}
