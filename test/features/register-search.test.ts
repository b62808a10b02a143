import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENGINES } from '../support/engines.js';
import { startGearServer, type GearServer } from '../support/gear-server.js';

interface Found {
  readonly items: readonly { readonly tag: string }[];
  readonly next?: string;
}

describe.each(ENGINES)('finding in the register on %s', (engine) => {
  let server: GearServer;
  const tags: string[] = [];

  beforeAll(async () => {
    server = await startGearServer(engine);
    for (let number = 1; number <= 23; number += 1) {
      // Tags whose order differs between languages and code points: capitals, digits, hyphens, accents.
      const tag = `${['Q', 'q-1', 'É', 'Z'][number % 4]}${number}`;
      await server.newItem({ tag, serial: `FIND/${tag}`, maker: number % 2 ? 'Even Odd' : 'Odd Even' });
      tags.push(tag);
    }
    await server.newItem({ tag: 'STRAP', kind: 'ratchetStrap', markings: [], maker: 'Other' });
  });
  afterAll(() => server.close());

  async function find(query: Record<string, string>): Promise<Found> {
    return (await server.crew.get('/api/items').query(query).expect(200)).body;
  }

  async function allPages(query: Record<string, string>): Promise<string[]> {
    const found: string[] = [];
    for (let after: string | undefined = ''; after !== undefined;) {
      const page: Found = await find({ ...query, ...(after ? { after } : {}) });
      found.push(...page.items.map(({ tag }) => tag));
      after = page.next;
    }
    return found;
  }

  it('gives every item once, a page at a time, whatever the size of the page', async () => {
    const whole = await allPages({ limit: '200' });
    expect([...whole].sort()).toEqual([...tags, 'STRAP'].sort());
    for (const limit of ['1', '5', '8', '24']) expect(await allPages({ limit })).toEqual(whole);
  });

  it('stays complete when items come and go between pages', async () => {
    const first = await find({ limit: '5', kind: 'panelLifter' });
    await server.newItem({ tag: '0-BEFORE', maker: 'Late' });
    await server.newItem({ tag: 'ZZ-AFTER', maker: 'Late' });
    const rest = await allPages({ limit: '5', kind: 'panelLifter', after: first.next ?? '' });
    expect(rest).toContain('ZZ-AFTER');
    expect(rest).not.toContain('0-BEFORE');
    const seen = [...first.items.map(({ tag }) => tag), ...rest.filter((tag) => tag !== 'ZZ-AFTER')];
    expect([...new Set(seen)].sort()).toEqual([...tags].sort());
  });

  it('finds by the beginning of tag, serial number or maker, without regard to capitals', async () => {
    expect((await find({ text: 'q-1' })).items.map(({ tag }) => tag)).toEqual(
      expect.arrayContaining(['q-11', 'q-121']),
    );
    expect(await allPages({ text: 'find/é' })).toEqual(tags.filter((tag) => tag.startsWith('É')).sort());
    expect(await allPages({ text: 'even ODD' })).toHaveLength(12);
    expect(await allPages({ text: '%' })).toEqual([]);
    expect(await allPages({ text: 'even_odd' })).toEqual([]);
  });

  it('finds by kind, store, condition and dates together', async () => {
    expect(await allPages({ kind: 'ratchetStrap' })).toEqual(['STRAP']);
    expect(
      await allPages({ storeId: String(server.storeId), kind: 'ratchetStrap', condition: 'inService' }),
    ).toEqual(['STRAP']);
    expect(await allPages({ condition: 'scrapped' })).toEqual([]);
    const unexamined = await allPages({ kind: 'panelLifter', currency: 'neverExamined', limit: '7' });
    expect(unexamined).toEqual(await allPages({ kind: 'panelLifter' }));
    expect(await allPages({ kind: 'panelLifter', currency: 'inDate' })).toEqual([]);
  });

  it('finds what a scanner reads off a label, on whatever host it was printed', async () => {
    const { tag } = await server.newItem();
    const text = `https://some-older-name.of-the-firm.example:8443/t/${encodeURIComponent(tag)}?from=an-old-label`;
    const { body } = await server.crew.get('/api/items').query({ text }).expect(200);
    expect(body.items.map((item: { tag: string }) => item.tag)).toContain(tag);
    expect((await server.crew.get('/register').query({ text }).expect(200)).text).toContain(`value="${tag}"`);
  });

  it('refuses what cannot be asked, in words', async () => {
    const wrong = [
      { limit: '0' },
      { limit: '201' },
      { limit: 'many' },
      { after: '!!' },
      { after: 'AA' },
      { currency: 'soon' },
      { condition: 'lost' },
      { text: 'a\u0000' },
      { storeId: '1e20' },
      { colour: 'red' },
    ];
    for (const query of wrong) {
      const refused = await server.crew.get('/api/items').query(query).expect(400);
      expect(refused.body.errors[0].field).toBe(Object.keys(query)[0]);
    }
  });

  it('shows the same on its page, with the way to the next', async () => {
    const page = await server.crew
      .get('/register')
      .query({ text: '', kind: 'panelLifter', limit: '3' })
      .expect(200);
    expect(page.text).toContain('rel="next"');
    expect(page.text).toContain('never examined');
    expect(page.text).not.toContain('Enter an item');
    expect((await server.storeman.get('/register').expect(200)).text).toContain('Enter an item');
  });
});
